import { type PartKind, partKindSchema } from '@gusset/contracts/records';
import type { Actor, Deps } from '../deps.ts';
import {
  closest,
  customersLike,
  type HitRow,
  jobsLike,
  modelsLike,
  partsLike,
  vehiclesLike,
} from './search.queries.ts';
import { searchText } from './search-text.ts';

export type SearchAnswer = {
  readonly jobs: readonly (HitRow & { readonly number: number })[];
  readonly customers: readonly HitRow[];
  readonly vehicles: readonly HitRow[];
  readonly models: readonly HitRow[];
  readonly parts: readonly (HitRow & { readonly kind: PartKind })[];
};

const NOTHING: SearchAnswer = { jobs: [], customers: [], vehicles: [], models: [], parts: [] };

/** At most six of each kind, the likeliest first. Prices are in none of it. */
export async function searchEverything({ doors }: Deps, actor: Actor, typed: string): Promise<SearchAnswer> {
  const search = searchText(typed);
  if (search === null) return NOTHING;
  return doors.inShop(actor.shopId, async (tx) => {
    const parts = await closest(tx, actor, search, partsLike);
    return {
      jobs: await closest(tx, actor, search, jobsLike),
      customers: await closest(tx, actor, search, customersLike),
      vehicles: await closest(tx, actor, search, vehiclesLike),
      models: await closest(tx, actor, search, modelsLike),
      parts: parts.map((part) => ({ ...part, kind: partKindSchema.parse(part.kind) })),
    };
  });
}
