// Searching the shop's own drivers for a design: progress while it runs, then the winners by name.
import { refuseBrief } from '@gusset/acoustics';
import { may } from '@gusset/contracts/access';
import type {
  DriverSearchInput,
  FoundDesign,
  SearchAnswer,
  SearchCounts,
  SearchProgress,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal } from '@gusset/units';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, refusedByEngine, toTrpcError } from '../errors.ts';
import { streamProgress } from './progress-stream.ts';
import { type Catalogue, toCatalogue } from './search-catalogue.ts';
import { driversVisibleTo } from './sound-search.queries.ts';

/** The whole front may have a thousand designs; a chart has room for so many marks. */
const MOST_SHOWN_OF_FRONT = 160;

export type NamedDesign = FoundDesign & { readonly driverName: string; readonly inStock: number };

export type DriverSearchLine =
  | {
      readonly kind: 'progress';
      readonly counts: SearchCounts;
      readonly best: NamedDesign | null;
    }
  | {
      readonly kind: 'answer';
      readonly counts: SearchCounts;
      /** In the catalogue, and of those not tried by the reason. */
      readonly drivers: number;
      readonly leftOut: SearchAnswer['leftOut'] & { readonly sheetsIncomplete: number };
      readonly ranked: readonly NamedDesign[];
      readonly front: readonly NamedDesign[];
      /** How many stand on the front; more than are listed. */
      readonly frontCount: number;
    };

/**
 * NOT_ACCEPTED for a budget from somebody who sees no costs (one could be found out by asking again and again);
 * REFUSED_BY_ENGINE for a brief that can't be; while it runs, BUSY.
 */
export async function searchCatalogue(
  { doors, compute }: Deps,
  actor: Actor,
  { brief, inStockOnly }: DriverSearchInput,
  signal: AbortSignal | undefined,
): Promise<AsyncIterable<DriverSearchLine>> {
  if (brief.budgetMinor !== null && !may(actor.role, 'money.read'))
    throw notAccepted('brief.budgetMinor', 'Prices are not part of your role, so leave the budget empty.');
  const refusal = refuseBrief(brief);
  if (refusal !== null) throw refusedByEngine([inBrief(refusal)]);
  const rows = await doors.inShop(actor.shopId, (tx) => driversVisibleTo(tx, actor));
  const catalogue = toCatalogue(rows, actor, inStockOnly);
  const { drivers } = catalogue;
  const lines = streamProgress<SearchProgress, SearchAnswer | Refusal>(
    (tools) => compute.run('driver-search', { brief, drivers }, tools),
    signal,
  );
  return named(lines, catalogue);
}

async function* named(
  lines: ReturnType<typeof streamProgress<SearchProgress, SearchAnswer | Refusal>>,
  catalogue: Catalogue,
): AsyncGenerator<DriverSearchLine, void, void> {
  const name = (design: FoundDesign): NamedDesign => {
    const known = catalogue.names.get(design.driverId);
    return { ...design, driverName: known?.name ?? '', inStock: known?.inStock ?? 0 };
  };
  try {
    for await (const line of lines) {
      if (line.kind === 'progress') {
        const { counts, best } = line.progress;
        yield { kind: 'progress', counts, best: best && name(best) };
      } else {
        yield namedAnswer(line.answer, catalogue, name);
      }
    }
  } catch (error) {
    throw toTrpcError(error) ?? error; // the middleware that does this has long returned
  }
}

function namedAnswer(
  answer: SearchAnswer | Refusal,
  { names, sheetsIncomplete }: Catalogue,
  name: (design: FoundDesign) => NamedDesign,
): DriverSearchLine {
  if (isRefusal(answer)) throw refusedByEngine([inBrief(answer)]);
  const { counts, leftOut, ranked, front } = answer;
  return {
    kind: 'answer',
    counts,
    drivers: names.size,
    leftOut: { ...leftOut, sheetsIncomplete },
    ranked: ranked.map(name),
    front: thinned(front, MOST_SHOWN_OF_FRONT).map(name),
    frontCount: front.length,
  };
}

/** Evenly along its order, both ends kept. */
export function thinned<T>(list: readonly T[], most: number): T[] {
  if (list.length <= most) return [...list];
  return list.filter(
    (_, i) =>
      Math.floor((i * (most - 1)) / (list.length - 1)) !==
      Math.floor(((i - 1) * (most - 1)) / (list.length - 1)),
  );
}

function inBrief({ refusal }: Refusal) {
  return { ...refusal, field: `brief.${refusal.field}` };
}
