// The API's answer to a search as the dialog lists it. Pure.

import { kindSlug } from '../catalogue-kinds.ts';
import type { ApiOutputs } from '../data/api-types.ts';
import { paths } from '../paths.ts';
import type { SearchGroup } from './search-dialog.tsx';

type Answer = ApiOutputs['search']['everything'];

export function searchGroups({ jobs, customers, vehicles, models, parts }: Answer): readonly SearchGroup[] {
  const groups: readonly SearchGroup[] = [
    {
      kind: 'Jobs',
      hits: jobs.map(({ id, number, title, detail }) => ({
        id: `job-${id}`,
        title: `${number} ${title}`,
        detail,
        href: paths.job(number),
      })),
    },
    {
      kind: 'Customers',
      hits: customers.map(({ id, title, detail }) => ({
        id: `customer-${id}`,
        title,
        detail,
        href: paths.customer(id),
      })),
    },
    {
      kind: 'Vehicles',
      hits: vehicles.map(({ id, title, detail }) => ({
        id: `vehicle-${id}`,
        title,
        detail,
        href: paths.vehicle(id),
      })),
    },
    {
      kind: 'Vehicle models',
      hits: models.map(({ id, title, detail }) => ({
        id: `model-${id}`,
        title,
        detail,
        href: paths.vehicleModel(id),
      })),
    },
    {
      kind: 'Parts',
      hits: parts.map(({ id, kind, title, detail }) => ({
        id: `part-${id}`,
        title,
        detail,
        href: paths.cataloguePart(kindSlug(kind), id),
      })),
    },
  ];
  return groups.filter(({ hits }) => hits.length > 0);
}
