// One driver array in one box: ruled out by a bound, impossible to build, or solved.
import type { FoundDesign, SearchBrief } from '@gusset/contracts/acoustics';
import { type AimFigures, type BandFigures, bandMeanDb, cornerBoundHz, scoreFor } from './aims.ts';
import { enclosureFor } from './box-enclosure.ts';
import type { Box } from './box-grid.ts';
import { boundLevels } from './level-bounds.ts';
import { cabinGainsDb } from './levels.ts';
import {
  type Curves,
  makeCurves,
  networkFor,
  outletLimitOf,
  solveDesign,
  systemFor,
} from './solve-design.ts';
import type { Trial } from './trial.ts';

/** A design with the box of the search that it came from, so that it can be refined. */
export type Candidate = FoundDesign & { readonly box: Box };

/** The best that a design can be, before it is solved. */
export type Best = AimFigures & {
  readonly score: number;
  readonly netLitres: number;
  readonly costMinor: number | null;
};

/** `beaten-in-band`: only the band was solved, and that showed it. */
export type Tried = Candidate | 'unbuildable' | 'ruled-out' | 'beaten-in-band' | 'too-soft';

/** What is shared by all candidates of one brief. */
export type Bench = {
  readonly brief: SearchBrief;
  readonly cabinDb: Float64Array;
  readonly curves: Curves;
  readonly mostDb: Float64Array;
};

export function openBench(brief: SearchBrief): Bench {
  const cabinDb = cabinGainsDb(brief.cabin);
  return { brief, cabinDb, curves: makeCurves(), mostDb: new Float64Array(cabinDb.length) };
}

/**
 * `isBeaten` is asked with what the design can at best be; where it says yes nothing is solved. A design softer than the
 * brief asks is ruled out too, solved or not.
 */
export function tryBox(
  { brief, cabinDb, curves, mostDb }: Bench,
  trial: Trial,
  { box, key }: { readonly box: Box; readonly key: string },
  isBeaten: ((best: Best) => boolean) | null,
): Tried {
  const built = enclosureFor(box, { parameters: trial.driver.parameters, count: trial.count }, brief);
  if (built === null) return 'unbuildable';
  const system = systemFor(trial, built);
  const least = brief.leastOutputDb;
  const { aim } = brief;
  const fixed = { netLitres: box.netLitres, costMinor: trial.costMinor };
  const bestOf = (figures: AimFigures): Best => ({ score: scoreFor(aim, figures), ...figures, ...fixed });
  if (isBeaten !== null) {
    const network = networkFor(system);
    boundLevels(trial, network.network, outletLimitOf(system, network), cabinDb, mostDb);
    const outputDb = bandMeanDb(mostDb);
    if (least !== null && outputDb < least) return 'ruled-out';
    if (isBeaten(bestOf({ outputDb, lowCornerHz: cornerBoundHz(mostDb, least), deviationDb: 0 })))
      return 'ruled-out';
  }
  const isBeatenInBand =
    isBeaten === null
      ? null
      : ({ outputDb, deviationDb, loudestDb }: BandFigures) =>
          (least !== null && outputDb < least) ||
          isBeaten(bestOf({ outputDb, deviationDb, lowCornerHz: cornerBoundHz(mostDb, loudestDb) }));
  const figures = solveDesign(system, cabinDb, curves, isBeatenInBand);
  if (figures === null) return 'beaten-in-band';
  if (least !== null && figures.outputDb < least) return 'too-soft';
  const { array, loadOhm, watts } = trial.wired;
  return {
    key,
    driverId: trial.driver.id,
    kind: box.kind,
    count: trial.count,
    seriesPerString: array.seriesPerString,
    coilWiring: array.coilWiring,
    loadOhm,
    watts,
    enclosure: built.enclosure,
    netLitres: box.netLitres,
    costMinor: trial.costMinor,
    tuningHz: box.tuningHz,
    port: built.port,
    ...figures,
    box,
  };
}
