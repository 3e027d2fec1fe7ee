// The app's own pages, for the search dialog: found without asking the server.

import { PART_KINDS } from '@gusset/contracts/records';
import { capital, KIND_WORDS, kindSlug } from '../catalogue-kinds.ts';
import { paths } from '../paths.ts';
import type { SearchHit } from './search-dialog.tsx';

export const APP_PLACES: readonly SearchHit[] = [
  { id: 'today', title: 'Today in the bays', href: paths.today() },
  { id: 'jobs', title: 'Jobs', href: paths.jobs() },
  { id: 'new-job', title: 'Open a job', href: paths.newJob() },
  { id: 'customers', title: 'Customers', href: paths.customers() },
  { id: 'vehicles', title: 'Vehicles', href: paths.vehicles() },
  { id: 'models', title: 'Vehicle models', href: paths.vehicleModels() },
  ...PART_KINDS.map((kind) => ({
    id: `parts-${kind}`,
    title: capital(KIND_WORDS[kind].many),
    detail: 'Parts',
    href: paths.catalogue(kindSlug(kind)),
  })),
  { id: 'suppliers', title: 'Suppliers', detail: 'Parts', href: paths.suppliers() },
  { id: 'shop-details', title: 'Details and letterhead', detail: 'Shop', href: paths.shop('details') },
  { id: 'shop-units', title: 'Units and paper', detail: 'Shop', href: paths.shop('units') },
  { id: 'shop-hours', title: 'Hours and closed days', detail: 'Shop', href: paths.shop('hours') },
  { id: 'shop-rates', title: 'Rates and margins', detail: 'Shop', href: paths.shop('rates') },
  { id: 'shop-taxes', title: 'Taxes', detail: 'Shop', href: paths.shop('taxes') },
  { id: 'shop-terms', title: 'Terms', detail: 'Shop', href: paths.shop('terms') },
  { id: 'shop-saw', title: 'Clearances and saw', detail: 'Shop', href: paths.shop('saw') },
  { id: 'shop-people', title: 'People and invitations', detail: 'Shop', href: paths.shop('people') },
  { id: 'shop-bays', title: 'Bays', detail: 'Shop', href: paths.shop('bays') },
  { id: 'shop-leave', title: 'Leave', detail: 'Shop', href: paths.shop('leave') },
  { id: 'shop-record', title: 'Record of changes', detail: 'Shop', href: paths.shop('record') },
  { id: 'shop-calendar', title: 'My calendar', detail: 'Shop', href: paths.shop('calendar') },
  { id: 'shop-account', title: 'My account', detail: 'Shop', href: paths.shop('account') },
];
