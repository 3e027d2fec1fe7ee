// The invented shop of the style page: Quarry Road Sound and its people, vehicles and makers exist nowhere else.

import { SHEET_KINDS, SHEETS, type SheetKind } from '@gusset/contracts/sheet';
import type { IndexedSheet, SheetState } from '../../shared/sheet/sheet-state.ts';
import type { JobTitle } from '../../shared/sheet/title-block.tsx';
import type { ShopFacts } from '../../shared/shell/shop-facts.ts';

export const SAMPLE_SHOP: ShopFacts = {
  name: 'Quarry Road Sound',
  locale: 'en-GB',
  currency: 'GBP',
  lengthUnit: 'mm',
  inchDenominator: 16,
  timeZone: 'Europe/London',
};

export const SAMPLE_PERSON = 'M. Ilves';

const MARKS: Readonly<Record<SheetKind, SheetState>> = {
  brief: 'issued',
  survey: 'issued',
  sound: 'issued',
  box: 'draft',
  cutting: 'issued',
  parts: 'draft',
  price: 'issued',
  plan: 'empty',
};

const CHANGES: Partial<Readonly<Record<SheetKind, IndexedSheet['changes']>>> = {
  cutting: [
    { source: '02 Survey', label: 'Opening, square to the way in', before: '604 mm', after: '597 mm' },
    { source: '04 Box', label: 'Top panel, depth', before: '341 mm', after: '334 mm' },
  ],
  price: [{ source: '05 Cutting', label: 'Sheets of 18 mm birch plywood', before: '2', after: '1.5' }],
};

export const SAMPLE_SHEETS: readonly IndexedSheet[] = SHEET_KINDS.map((kind) => ({
  kind,
  number: SHEETS[kind].number,
  title: SHEETS[kind].title,
  href: '/style',
  mark: MARKS[kind],
  changes: CHANGES[kind] ?? [],
}));

export const SAMPLE_TITLE: JobTitle = {
  shopName: SAMPLE_SHOP.name,
  vehicle: 'Halden Brisk hatch, 2021',
  customer: 'R. Okafor',
  jobNumber: '2417',
  revision: 'C',
  drawnBy: SAMPLE_PERSON,
  checkedBy: null,
  units: 'mm',
  scale: '1:8',
  sheet: { number: '04', of: '09' },
};

export type SampleJob = {
  readonly number: number;
  readonly vehicle: string;
  readonly customer: string;
  readonly sheet: string;
  readonly promised: string;
  readonly promisedDay: number;
  readonly pounds: number | null;
  readonly isLate: boolean;
  readonly isHeld: boolean;
};

const VEHICLES = ['Halden Brisk hatch', 'Merle estate', 'Orrin van', 'Tern coupe', 'Halden Ridge pickup'];
const CUSTOMERS = ['R. Okafor', 'J. Sato', 'P. Lindqvist', 'A. Bello', 'S. Marchetti', 'T. Nwosu', 'E. Ruiz'];
const ON_SHEET = ['02 Survey', '04 Box', '05 Cutting', '07 Price', '08 Plan'];
const DAYS = ['Tue 24 Nov', 'Wed 25 Nov', 'Thu 26 Nov', 'Fri 27 Nov', 'Mon 30 Nov', 'Tue 1 Dec', 'Wed 2 Dec'];

/** As many jobs as asked for, alike on every machine. */
export function sampleJobs(count: number): readonly SampleJob[] {
  return Array.from({ length: count }, (_, index) => {
    const day = (index * 5) % DAYS.length;
    return {
      number: 2417 - index,
      vehicle: VEHICLES[(index * 3) % VEHICLES.length] ?? '',
      customer: CUSTOMERS[(index * 5) % CUSTOMERS.length] ?? '',
      sheet: ON_SHEET[(index * 2) % ON_SHEET.length] ?? '',
      promised: DAYS[day] ?? '',
      promisedDay: day,
      pounds: index % 6 === 4 ? null : 420 + ((index * 137) % 1900),
      isLate: index % 9 === 3,
      isHeld: index % 7 === 2,
    };
  });
}
