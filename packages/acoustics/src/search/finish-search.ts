// From the parts of a search to its answer: one ranking, one front, the winners adjusted finely.
import type {
  FoundDesign,
  LeftOut,
  SearchAnswer,
  SearchBrief,
  SearchCounts,
  SearchDriver,
} from '@gusset/contracts/acoustics';
import { addLeftOut, admitDrivers, NOBODY } from './admit-drivers.ts';
import type { BoxGrid } from './box-grid.ts';
import { type Bench, type Candidate, openBench } from './candidate.ts';
import { makeFront } from './front.ts';
import { compareDesigns, makeRanking } from './ranking.ts';
import { refineDesign } from './refine.ts';
import { trialOf } from './trial.ts';

export type SearchSetting = {
  readonly grid?: BoxGrid;
  /** How many designs are ranked. */
  readonly places?: number;
  /** False solves every design: what the bounds are proved against. */
  readonly usesBounds?: boolean;
};

/** What a part of the drivers gave; parts of one brief are put together by `finishSearch`. Plain data. */
export type SearchPart = {
  readonly counts: SearchCounts;
  readonly leftOut: LeftOut;
  readonly ranked: readonly Candidate[];
  readonly front: readonly FoundDesign[];
};

export const PLACES = 12;
export const NOTHING: SearchCounts = {
  designs: 0,
  considered: 0,
  evaluated: 0,
  beatenInBand: 0,
  ruledOut: 0,
  unbuildable: 0,
};

/** `drivers` holds at least those of the winners; the parts together held each driver once. */
export function finishSearch(
  brief: SearchBrief,
  drivers: readonly SearchDriver[],
  parts: readonly SearchPart[],
  { places = PLACES }: SearchSetting = {},
): SearchAnswer {
  const ranking = makeRanking<Candidate>(brief.aim, places);
  const front = makeFront();
  for (const part of parts) {
    for (const candidate of part.ranked) ranking.offer(candidate);
    for (const point of part.front) front.offer(point);
  }
  const bench = openBench(brief);
  return {
    counts: parts.reduce((sum, { counts }) => addCounts(sum, counts), NOTHING),
    leftOut: parts.reduce((sum, { leftOut }) => addLeftOut(sum, leftOut), NOBODY),
    ranked: ranking
      .designs()
      .map((winner) => refined(bench, drivers, winner))
      .sort((a, b) => compareDesigns(brief.aim, a, b)),
    front: front.points(),
  };
}

function refined(bench: Bench, drivers: readonly SearchDriver[], winner: Candidate): FoundDesign {
  const driver = drivers.find(({ id }) => id === winner.driverId);
  const { admitted } = admitDrivers(bench.brief, driver === undefined ? [] : [driver]);
  const entry = admitted.find(({ wired }) => wired.array.count === winner.count);
  if (entry === undefined) return withoutBox(winner);
  return withoutBox(refineDesign(bench, trialOf(entry.driver, entry.wired, entry.limits), winner));
}

/** As it is told to others: the box of the search is its own affair. */
export function withoutBox({ box: _, ...design }: Candidate): FoundDesign {
  return design;
}

function addCounts(a: SearchCounts, b: SearchCounts): SearchCounts {
  return {
    designs: a.designs + b.designs,
    considered: a.considered + b.considered,
    evaluated: a.evaluated + b.evaluated,
    beatenInBand: a.beatenInBand + b.beatenInBand,
    ruledOut: a.ruledOut + b.ruledOut,
    unbuildable: a.unbuildable + b.unbuildable,
  };
}
