// The API's search answer as the search dialog shows it. Pure.

import { kindSlug } from '../catalogue-kinds.ts';
import type { ApiOutputs } from '../data/api-types.ts';
import { paths } from '../paths.ts';
import type { SearchGroup } from './search-dialog.tsx';

type SearchAnswer = ApiOutputs['search']['everything'];
type Row = { readonly id: string; readonly title: string; readonly detail: string };

const group = <Found extends Row>(
  kind: string,
  rows: readonly Found[],
  hrefOf: (row: Found) => string,
): SearchGroup => ({
  kind,
  hits: rows.map((row) => ({
    id: `${kind} ${row.id}`,
    title: row.title,
    detail: row.detail,
    href: hrefOf(row),
  })),
});

/** Kinds without a hit are left out; within a kind the API's order stays. */
export function searchGroups(answer: SearchAnswer): readonly SearchGroup[] {
  return [
    group('Jobs', answer.jobs.map(withNumber), (job) => paths.job(job.number)),
    group('Customers', answer.customers, (customer) => paths.customer(customer.id)),
    group('Vehicles', answer.vehicles, (vehicle) => paths.vehicle(vehicle.id)),
    group('Vehicle models', answer.models, (model) => paths.vehicleModel(model.id)),
    group('Parts', answer.parts, (part) => paths.cataloguePart(kindSlug(part.kind), part.id)),
  ].filter(({ hits }) => hits.length > 0);
}

/** A job goes by its number in the shop. */
function withNumber<Job extends SearchAnswer['jobs'][number]>(job: Job): Job {
  return { ...job, title: `${job.number} ${job.title}` };
}
