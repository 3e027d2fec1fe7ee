// Among layouts that spend the same, the one that leaves the largest single offcut: a short search of its own,
// after the sheets are settled.
import { copyForest, emptyForest, type Forest, LIVE } from './guillotine-forest.ts';
import type { LayoutProblem } from './layout-problem.ts';
import { piecePlacer } from './place-pieces.ts';
import { seededRandom } from './seeded-random.ts';
import { drawStyle } from './sheet-search.ts';
import { compareUsage, usageOf } from './sheet-usage.ts';
import { takeSome } from './take-pieces.ts';

/** Layouts tried; about 30 ms for a hundred pieces. */
const OFFCUT_ITERATIONS = 1_500;

/** Rearranges `forest` in place; every piece stays placed, and neither sheets nor cost rise. */
export function growOffcut(
  forest: Forest,
  problem: LayoutProblem,
  seed: number,
  shouldStop: () => boolean,
): void {
  const random = seededRandom(seed);
  const placer = piecePlacer(problem, random);
  const trial = emptyForest(problem);
  const limit = usageOf(forest, problem);
  let largest = largestLeftover(forest, problem);
  for (let iteration = 0; iteration < OFFCUT_ITERATIONS && !shouldStop(); iteration++) {
    copyForest(forest, trial);
    const taken = takeSome(trial, problem, random);
    const unplaced = placer.place(trial, taken, drawStyle(problem, random), { limit, inclusive: true });
    if (unplaced.length > 0) continue;
    const leftover = largestLeftover(trial, problem);
    const spendsLess = compareUsage(problem.aim, usageOf(trial, problem), usageOf(forest, problem)) < 0;
    if (leftover < largest && !spendsLess) continue;
    largest = leftover;
    copyForest(trial, forest);
  }
}

/** Area of the largest leftover strip, kerf taken off. */
function largestLeftover(forest: Forest, problem: LayoutProblem): number {
  let largest = 0;
  for (const node of forest.live.subarray(0, forest.head[LIVE] ?? 0)) {
    const across = forest.axis[node] === 0 ? forest.height[node] : forest.width[node];
    const along = (forest.left[node] ?? 0) - problem.kerf;
    if (along > 0) largest = Math.max(largest, along * ((across ?? 0) - problem.kerf));
  }
  return largest;
}
