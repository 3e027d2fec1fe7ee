// One driver array in one box: ruled out by a bound, impossible to build, or solved.
import type { FoundDesign, SearchBrief } from '@gusset/contracts/acoustics';
import { bandMeanDb, cornerBoundHz, scoreFor } from './aims.ts';
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
export type Best = {
  readonly score: number;
  readonly lowCornerHz: number;
  readonly outputDb: number;
  readonly netLitres: number;
  readonly costMinor: number | null;
};

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
): Candidate | 'unbuildable' | 'ruled-out' | 'too-soft' {
  const built = enclosureFor(box, { parameters: trial.driver.parameters, count: trial.count }, brief);
  if (built === null) return 'unbuildable';
  const system = systemFor(trial, built);
  const least = brief.leastOutputDb;
  if (isBeaten !== null) {
    const network = networkFor(system);
    boundLevels(trial, network.network, outletLimitOf(system, network), cabinDb, mostDb);
    const outputDb = bandMeanDb(mostDb);
    if (least !== null && outputDb < least) return 'ruled-out';
    const figures = { outputDb, lowCornerHz: cornerBoundHz(mostDb, least), deviationDb: 0 };
    const { netLitres } = box;
    const score = scoreFor(brief.aim, figures);
    if (isBeaten({ score, ...figures, netLitres, costMinor: trial.costMinor })) return 'ruled-out';
  }
  const figures = solveDesign(system, cabinDb, curves);
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
