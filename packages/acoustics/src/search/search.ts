// The search: every driver, count and box that the brief allows, each either solved or shown to be beaten.
//
// A design is left unsolved only where a bound proves that it can take no place in the ranking (or is softer than asked) and
// can't stand on the front; so the answer is that of solving them all (proved in the tests and in bench/search.bench.ts).
// Nothing is drawn at random: the same brief and drivers give the same answer, whatever their order.
import {
  firstRefusal,
  type SearchAnswer,
  type SearchBrief,
  type SearchCounts,
  type SearchDriver,
  type SearchKind,
  type SearchProgress,
  searchBriefSchema,
} from '@gusset/contracts/acoustics';
import type { Refusal } from '@gusset/units';
import { REFERENCE_AIR } from '../air.ts';
import { refuseCabin } from '../cabin.ts';
import { type Admitted, admitDrivers } from './admit-drivers.ts';
import { scoreFor } from './aims.ts';
import { type Box, boxesOf, FULL_GRID } from './box-grid.ts';
import { type Bench, type Best, type Candidate, openBench, type Tried, tryBox } from './candidate.ts';
import {
  finishSearch,
  NOTHING,
  PLACES,
  type SearchPart,
  type SearchSetting,
  withoutBox,
} from './finish-search.ts';
import { type Front, makeFront } from './front.ts';
import { compareDesigns, makeRanking, type Ranking } from './ranking.ts';
import { trialOf } from './trial.ts';

/** Between two reports: some milliseconds of either. */
const REPORT_EVERY = { solved: 64, considered: 1_024 };

/**
 * Looks through `drivers`; each step of the generator is some milliseconds of work, so that a caller may report, wait or
 * stop. Refused where the brief can't be.
 */
export function* searchDrivers(
  brief: SearchBrief,
  drivers: readonly SearchDriver[],
  setting: SearchSetting = {},
): Generator<SearchProgress, SearchAnswer | Refusal, void> {
  const refusal = refuseBrief(brief);
  if (refusal !== null) return refusal;
  const part = yield* searchPart(brief, drivers, setting);
  return finishSearch(brief, drivers, [part], setting);
}

export function refuseBrief(brief: SearchBrief): Refusal | null {
  const parsed = searchBriefSchema.safeParse(brief);
  if (!parsed.success) return firstRefusal(parsed.error, brief);
  return brief.cabin === null ? null : refuseCabin(brief.cabin, REFERENCE_AIR);
}

/** The steps of the grid for some of the drivers, not refined yet. */
export function* searchPart(
  brief: SearchBrief,
  drivers: readonly SearchDriver[],
  { grid = FULL_GRID, places = PLACES, usesBounds = true }: SearchSetting = {},
): Generator<SearchProgress, SearchPart, void> {
  const { admitted, leftOut } = admitDrivers(brief, drivers);
  const kinds = [...new Set(brief.kinds)].sort();
  const boxes = kinds.map((kind) => boxesOf(kind, brief, grid));
  const counts = { ...NOTHING, designs: admitted.length * boxes.flat().length };
  const state: State = {
    bench: openBench(brief),
    front: makeFront(),
    ranking: makeRanking(brief.aim, places),
    usesBounds,
    counts,
  };
  for (const entry of admitted) {
    for (const ofKind of boxes) yield* searchGroup(state, entry, ofKind);
  }
  return { counts, leftOut, ranked: state.ranking.designs(), front: state.front.points() };
}

type State = {
  readonly bench: Bench;
  readonly front: Front;
  readonly ranking: Ranking<Candidate>;
  readonly usesBounds: boolean;
  readonly counts: { -readonly [Key in keyof SearchCounts]: number };
};

/** One driver, count and kind of box: all its volumes and tunings; its best one goes into the ranking. */
function* searchGroup(
  state: State,
  entry: Admitted,
  boxes: readonly Box[],
): Generator<SearchProgress, void, void> {
  const { bench, front, ranking, counts } = state;
  const { aim } = bench.brief;
  const trial = trialOf(entry.driver, entry.wired, entry.limits);
  let best: Candidate | null = null;
  const isBeaten = ({ score, ...figures }: Best) =>
    (ranking.rulesOut(score) || (best !== null && score > scoreFor(aim, best))) && front.rulesOut(figures);
  for (const [place, box] of boxes.entries()) {
    const key = keyOf(trial.driver.id, trial.count, box.kind, place);
    const tried = tryBox(bench, trial, { box, key }, state.usesBounds ? isBeaten : null);
    counts.considered += 1;
    if (tried === 'unbuildable') counts.unbuildable += 1;
    else if (tried === 'ruled-out') counts.ruledOut += 1;
    else if (tried === 'beaten-in-band') counts.beatenInBand += 1;
    else counts.evaluated += 1;
    if (typeof tried !== 'string') {
      front.offer(withoutBox(tried));
      if (best === null || compareDesigns(aim, tried, best) < 0) best = tried;
    }
    if (isDue(counts, tried)) {
      const first = ranking.designs()[0] ?? best;
      yield { counts: { ...counts }, best: first && withoutBox(first) };
    }
  }
  if (best !== null) ranking.offer(best);
}

function isDue({ evaluated, beatenInBand, considered }: SearchCounts, tried: Tried): boolean {
  const wasSolved = tried !== 'unbuildable' && tried !== 'ruled-out';
  return (
    (wasSolved && (evaluated + beatenInBand) % REPORT_EVERY.solved === 0) ||
    considered % REPORT_EVERY.considered === 0
  );
}

function keyOf(driverId: string, count: number, kind: SearchKind, place: number): string {
  return `${driverId}/${count}/${kind}/${String(place).padStart(4, '0')}`;
}
