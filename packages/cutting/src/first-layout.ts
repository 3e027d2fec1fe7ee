// The layout that the search starts from: every order, every rule, every kind of sheet first, the best of them.
import type { SpotRule } from './best-spot.ts';
import { copyForest, emptyForest, type Forest } from './guillotine-forest.ts';
import type { LayoutProblem } from './layout-problem.ts';
import { ORDER_COUNT, piecePlacer, stockOrder } from './place-pieces.ts';
import { seededRandom } from './seeded-random.ts';
import { compareUsage, usageOf } from './sheet-usage.ts';

const RULES: readonly SpotRule[] = ['large-leftovers', 'short-side', 'least-area'];

export type FirstLayout = { readonly forest: Forest; readonly unplaced: readonly number[] };

export function firstLayout(problem: LayoutProblem, seed: number): FirstLayout {
  const placer = piecePlacer(problem, seededRandom(seed)); // one of the orders is random
  const empty = emptyForest(problem);
  const trial = emptyForest(problem);
  const best = emptyForest(problem);
  const pieces = problem.pieces.map((_, index) => index);
  let unplaced: readonly number[] | null = null;
  for (const stock of firstStocks(problem)) {
    for (let order = 0; order < ORDER_COUNT; order++) {
      for (const rule of RULES) {
        copyForest(empty, trial);
        const style = { order, noise: 0, rule, blink: 0, stockOrder: stockOrder(problem, stock) };
        const left = placer.place(trial, pieces, style, null);
        if (unplaced !== null && !isBetter(problem, trial, left, best, unplaced)) continue;
        copyForest(trial, best);
        unplaced = left;
      }
    }
  }
  return { forest: best, unplaced: unplaced ?? pieces };
}

function firstStocks(problem: LayoutProblem): readonly number[] {
  const full = problem.stocks.flatMap((stock, index) => (stock.isOffcut ? [] : [index]));
  return full.length === 0 ? [0] : full;
}

function isBetter(
  problem: LayoutProblem,
  trial: Forest,
  left: readonly number[],
  best: Forest,
  bestLeft: readonly number[],
): boolean {
  const area = (pieces: readonly number[]): number =>
    pieces.reduce((sum, piece) => sum + (problem.pieces[piece]?.area ?? 0), 0);
  const less = area(left) - area(bestLeft);
  if (less !== 0) return less < 0;
  return compareUsage(problem.aim, usageOf(trial, problem), usageOf(best, problem)) < 0;
}
