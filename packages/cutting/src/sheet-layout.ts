// The engine's door: blanks and sheets in, a layout that can be sawn out.
import type { LayoutInput, LayoutResult, LayoutTotals, SheetLayout } from '@gusset/contracts/cutting';
import type { Refusal } from '@gusset/units';
import { firstLayout } from './first-layout.ts';
import { growOffcut } from './grow-offcut.ts';
import { type Forest, LIVE, NONE } from './guillotine-forest.ts';
import { type LayoutProblem, layoutProblem } from './layout-problem.ts';
import { type LowerBound, lowerBound } from './lower-bound.ts';
import {
  refuseKerf,
  refuseNoParts,
  refuseRepeatedIds,
  refuseTooManyParts,
  refuseUncuttable,
} from './refuse-layout.ts';
import { sheetLayout } from './saw-cuts.ts';
import { searchSheets } from './sheet-search.ts';
import { usageOf } from './sheet-usage.ts';

/** Layouts tried where the caller sets neither iterations nor seconds: well under a second for thirty parts. */
export const DEFAULT_ITERATIONS = 10_000;
/** Asking the clock costs as much as a tenth of a layout. */
const ITERATIONS_PER_CLOCK_READING = 16;

export type LayoutProgress = {
  readonly fullSheets: number;
  readonly costMinor: number;
  readonly lowerBoundSheets: number;
  readonly iterations: number;
};

export type LayoutOptions = {
  /** Same seed and same number of layouts tried, same answer. */
  readonly seed: number;
  /** Layouts to try; without it DEFAULT_ITERATIONS, or as many as `seconds` allow. */
  readonly maxIterations?: number;
  /** Time allowed; counts only with `now`. */
  readonly seconds?: number;
  /** Milliseconds of any clock. It decides when to stop, nothing else. */
  readonly now?: () => number;
  readonly shouldStop?: () => boolean;
  /** Called at each layout that spends less than the last. */
  readonly onProgress?: (progress: LayoutProgress) => void;
};

/** Lays out one material and thickness. Refuses what no sheet can take; too few sheets is an answer. */
export function layoutSheets(input: LayoutInput, options: LayoutOptions): LayoutResult | Refusal {
  return (
    refuseKerf(input.settings.kerfMm) ?? refuseTooManyParts(input.parts) ?? layoutRectangles(input, options)
  );
}

/** The same without the shop's limits on kerf and number, for callers whose unit is not the millimetre. */
export function layoutRectangles(input: LayoutInput, options: LayoutOptions): LayoutResult | Refusal {
  const unclear = refuseNoParts(input.parts) ?? refuseRepeatedIds(input);
  if (unclear !== null) return unclear;
  const problem = layoutProblem(input);
  const refused = refuseUncuttable(input, problem);
  if (refused !== null) return refused;
  const shouldStop = stopRule(options);
  const first = firstLayout(problem, options.seed);
  const bound = lowerBound(problem, usageOf(first.forest, problem).fullSheets);
  const outcome = searchSheets(problem, first, bound, {
    seed: options.seed,
    maxIterations: iterationLimit(options),
    shouldStop,
    onImproved: ({ fullSheets, costMinor }, iterations) =>
      options.onProgress?.({ fullSheets, costMinor, lowerBoundSheets: bound.fullSheets, iterations }),
  });
  if (outcome.unplaced.length === 0) growOffcut(outcome.forest, problem, options.seed, shouldStop);
  return toResult(input, problem, bound, outcome.forest, outcome.unplaced, outcome.iterations);
}

function iterationLimit({ maxIterations, seconds, now }: LayoutOptions): number {
  if (maxIterations !== undefined) return maxIterations;
  return seconds !== undefined && now !== undefined ? Number.POSITIVE_INFINITY : DEFAULT_ITERATIONS;
}

function stopRule({ seconds, now, shouldStop }: LayoutOptions): () => boolean {
  const endsAt = seconds === undefined || now === undefined ? null : now() + seconds * 1_000;
  let calls = 0;
  let isOver = false;
  return () => {
    calls += 1;
    if (isOver || calls % ITERATIONS_PER_CLOCK_READING !== 1) return isOver;
    isOver = (shouldStop?.() ?? false) || (endsAt !== null && now !== undefined && now() >= endsAt);
    return isOver;
  };
}

function toResult(
  input: LayoutInput,
  problem: LayoutProblem,
  bound: LowerBound,
  forest: Forest,
  unplaced: readonly number[],
  iterations: number,
): LayoutResult {
  const sheets = writeSheets(input, problem, forest);
  const totals = sumUp(sheets);
  return {
    sheets,
    unplacedPartIds: unplaced.flatMap((piece) => problem.pieces[piece]?.id ?? []).toSorted(),
    totals,
    lowerBoundSheets: bound.fullSheets,
    provenFewest: unplaced.length === 0 && totals.fullSheets <= bound.fullSheets,
    iterations,
  };
}

/** Offcuts first, then full sheets; within a stock the fullest first. */
function writeSheets(input: LayoutInput, problem: LayoutProblem, forest: Forest): SheetLayout[] {
  const roots = [...forest.live.subarray(0, forest.head[LIVE] ?? 0)].filter(
    (node) => forest.parent[node] === NONE,
  );
  const written = roots.flatMap((root) => sheetLayout(forest, problem, root, input.settings) ?? []);
  const place = new Map(input.sheets.map((sheet, index) => [sheet.id, index]));
  written.sort(
    (one, two) =>
      Number(two.isOffcut) - Number(one.isOffcut) ||
      (place.get(one.stockId) ?? 0) - (place.get(two.stockId) ?? 0) ||
      two.partsMm2 - one.partsMm2 ||
      (firstPartId(one) < firstPartId(two) ? -1 : 1),
  );
  const copies = new Map<string, number>();
  return written.map((sheet) => {
    const copy = (copies.get(sheet.stockId) ?? 0) + 1;
    copies.set(sheet.stockId, copy);
    return { ...sheet, copy };
  });
}

function firstPartId(sheet: SheetLayout): string {
  return sheet.placements[0]?.partId ?? '';
}

/** The sums that a quote and a cutting ticket need; also used over several materials. */
export function sumUp(sheets: readonly SheetLayout[]): LayoutTotals {
  const sum = (pick: (sheet: SheetLayout) => number): number =>
    sheets.reduce((total, sheet) => total + pick(sheet), 0);
  const hasPrices = sheets.every((sheet) => sheet.isOffcut || sheet.costMinor !== null);
  return {
    fullSheets: sheets.filter((sheet) => !sheet.isOffcut).length,
    offcutsUsed: sheets.filter((sheet) => sheet.isOffcut).length,
    costMinor: hasPrices ? sum((sheet) => sheet.costMinor ?? 0) : null,
    sheetMm2: sum((sheet) => sheet.sheetMm2),
    partsMm2: sum((sheet) => sheet.partsMm2),
    kerfMm2: sum((sheet) => sheet.kerfMm2),
    trimMm2: sum((sheet) => sheet.trimMm2),
    offcutsMm2: sum((sheet) => sheet.offcutsMm2),
    wasteMm2: sum((sheet) => sheet.wasteMm2),
  };
}
