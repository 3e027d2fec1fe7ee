// Fewer sheets by ruin and recreate: take some pieces out of the layout, put them back in another order, keep
// the result unless it lost much. While it runs, the layout is allowed less than the best complete one spent, so
// some pieces are left over; the search drives their area to nothing, and then the allowance falls again.
//
// Ruin and recreate: G. Schrimpf et al., J. Computational Physics 159, 2000; with blinks as in J. Christiaens,
// G. Vanden Berghe, Transportation Science 54, 2020. Accepting by the value some steps back: E. K. Burke,
// Y. Bykov, European J. Operational Research 258, 2017. Weights that grow on what stays out: C. Voudouris,
// E. Tsang, European J. Operational Research 113, 1999.
import type { SpotRule } from './best-spot.ts';
import type { FirstLayout } from './first-layout.ts';
import { copyForest, emptyForest, type Forest, isPlaced, rootOf } from './guillotine-forest.ts';
import type { LayoutProblem } from './layout-problem.ts';
import type { LowerBound } from './lower-bound.ts';
import { ORDER_COUNT, type Placer, type PlacingStyle, piecePlacer, stockOrder } from './place-pieces.ts';
import { type SeededRandom, seededRandom } from './seeded-random.ts';
import { type Budget, type Usage, usageOf } from './sheet-usage.ts';
import { takeAll, takeSome } from './take-pieces.ts';

/** Steps back that a new layout is compared with. */
const HISTORY_LENGTH = 10;
/** Share of spots passed over while filling. */
const BLINK = 0.01;
/** Pieces' sizes stray this much at most when they are sorted. */
const MOST_NOISE = 0.2;
/** How often leftovers are judged by their squares; else by one of the other rules. */
const LARGE_LEFTOVERS_CHANCE = 0.9;
/** Steps after which pieces still left over weigh more. */
const STEPS_PER_WEIGHING = 1_000;
const WEIGHT_GROWTH = 1.2;
/** Above this a weight no longer says area at all: all of them are halved toward 1. */
const MOST_WEIGHT = 20;

export type SearchLimits = {
  readonly seed: number;
  readonly maxIterations: number;
  readonly shouldStop: () => boolean;
  readonly onImproved: (usage: Usage, iterations: number) => void;
};

export type SearchOutcome = {
  readonly forest: Forest;
  /** Pieces for which the stock has no room. */
  readonly unplaced: readonly number[];
  readonly iterations: number;
};

export function searchSheets(
  problem: LayoutProblem,
  first: FirstLayout,
  bound: LowerBound,
  limits: SearchLimits,
): SearchOutcome {
  const random = seededRandom(limits.seed);
  const placer = piecePlacer(problem, random);
  const best = first.forest;
  let leftOut: readonly number[] = first.unplaced;
  const state = startState(problem, best, leftOut);
  let iterations = 0;
  if (leftOut.length === 0) limits.onImproved(usageOf(best, problem), 0);
  for (;;) {
    if (leftOut.length === 0 && !lowerAllowance(state, problem, bound, best)) break;
    const isBetter = (): boolean => leftOut.length > 0 && state.areaLeft() < areaOf(problem, leftOut);
    while (iterations < limits.maxIterations && !limits.shouldStop() && state.pending.length > 0) {
      iterations += 1;
      step(state, problem, placer, random, iterations);
      if (state.pending.length > 0 && isBetter()) {
        leftOut = [...state.pending];
        copyForest(state.current, best);
      }
    }
    if (state.pending.length > 0) break;
    copyForest(state.current, best);
    leftOut = [];
    limits.onImproved(usageOf(best, problem), iterations);
  }
  return { forest: best, unplaced: leftOut, iterations };
}

type SearchState = {
  readonly current: Forest;
  readonly trial: Forest;
  readonly weights: Float64Array;
  readonly history: Float64Array;
  budget: Budget | null;
  pending: number[];
  /** Weighted area of `pending`. */
  lost: number;
  readonly areaLeft: () => number;
};

function startState(problem: LayoutProblem, from: Forest, pending: readonly number[]): SearchState {
  const state: SearchState = {
    current: emptyForest(problem),
    trial: emptyForest(problem),
    weights: new Float64Array(problem.pieces.length).fill(1),
    history: new Float64Array(HISTORY_LENGTH),
    budget: null,
    pending: [...pending],
    lost: 0,
    areaLeft: () => areaOf(problem, state.pending),
  };
  copyForest(from, state.current);
  weigh(state, problem);
  return state;
}

/** One layout tried. */
function step(
  state: SearchState,
  problem: LayoutProblem,
  placer: Placer,
  random: SeededRandom,
  iteration: number,
): void {
  copyForest(state.current, state.trial);
  const taken = takeSome(state.trial, problem, random);
  const unplaced = placer.place(
    state.trial,
    [...state.pending, ...taken],
    drawStyle(problem, random),
    state.budget,
  );
  const lost = weightedArea(problem, state.weights, unplaced);
  const slot = iteration % HISTORY_LENGTH;
  if (lost <= state.lost || lost <= (state.history[slot] ?? 0)) {
    state.lost = lost;
    state.pending = unplaced;
    copyForest(state.trial, state.current);
  }
  state.history[slot] = state.lost;
  if (iteration % STEPS_PER_WEIGHING === 0) reweigh(state, problem);
}

const OTHER_RULES: readonly SpotRule[] = ['short-side', 'least-area'];

export function drawStyle(problem: LayoutProblem, random: SeededRandom): PlacingStyle {
  const other = OTHER_RULES[random.below(OTHER_RULES.length)] ?? 'large-leftovers';
  return {
    order: random.below(ORDER_COUNT),
    noise: MOST_NOISE * random.next(),
    rule: random.next() < LARGE_LEFTOVERS_CHANCE ? 'large-leftovers' : other,
    blink: BLINK,
    stockOrder: stockOrder(problem, random.below(problem.stocks.length)),
  };
}

/** Pieces that stay out weigh more, so that the search pays for bringing them in. */
function reweigh(state: SearchState, problem: LayoutProblem): void {
  const { weights, pending } = state;
  for (const piece of pending) weights[piece] = (weights[piece] ?? 1) * WEIGHT_GROWTH;
  if (pending.some((piece) => (weights[piece] ?? 1) > MOST_WEIGHT)) {
    weights.forEach((weight, piece) => {
      weights[piece] = Math.max(1, weight / 2);
    });
  }
  weigh(state, problem);
}

function weigh(state: SearchState, problem: LayoutProblem): void {
  state.lost = weightedArea(problem, state.weights, state.pending);
  state.history.fill(state.lost);
}

/**
 * Clears the emptiest full sheet and forbids to spend as much again. False where the bound says that nothing
 * can be saved, or no full sheet is in use.
 */
function lowerAllowance(
  state: SearchState,
  problem: LayoutProblem,
  bound: LowerBound,
  complete: Forest,
): boolean {
  const usage = usageOf(complete, problem);
  if (usage.fullSheets === 0) return false;
  const fewest = usage.fullSheets <= bound.fullSheets;
  const cheapest = usage.costMinor <= bound.costMinor;
  if (cheapest && fewest) return false;
  copyForest(complete, state.current);
  state.budget = { limit: usage, inclusive: false };
  state.pending = [...takeAll(state.current, problem.pieces.length, emptiestFullSheet(complete, problem))];
  weigh(state, problem);
  return true;
}

function emptiestFullSheet(forest: Forest, problem: LayoutProblem): number {
  const filled = new Map<number, number>();
  problem.pieces.forEach((piece, index) => {
    const stock = problem.stocks[forest.stock[index] ?? 0];
    if (!isPlaced(forest, index) || stock === undefined || stock.isOffcut) return;
    const root = rootOf(forest, index);
    filled.set(root, (filled.get(root) ?? 0) + piece.area);
  });
  const sorted = [...filled].sort((one, two) => one[1] - two[1] || one[0] - two[0]);
  return sorted[0]?.[0] ?? 0;
}

function areaOf(problem: LayoutProblem, pieces: readonly number[]): number {
  return pieces.reduce((sum, piece) => sum + (problem.pieces[piece]?.area ?? 0), 0);
}

function weightedArea(problem: LayoutProblem, weights: Float64Array, pieces: readonly number[]): number {
  let sum = 0;
  for (const piece of pieces) sum += (problem.pieces[piece]?.area ?? 0) * (weights[piece] ?? 1);
  return sum;
}
