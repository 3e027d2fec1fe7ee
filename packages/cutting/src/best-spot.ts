// Where a piece goes next: the leftover strip, the way round and the first cut that cost least.
import { type Forest, FREE, LIVE, NONE, type Spot } from './guillotine-forest.ts';
import { AS_GIVEN, type LayoutProblem, TURNED } from './layout-problem.ts';
import type { SeededRandom } from './seeded-random.ts';

/**
 * `large-leftovers`: least loss of the sum of squared leftover areas, so that what is left stays in few large
 * pieces. `short-side`: the tightest fit on one side. `least-area`: the smallest leftover that takes the piece.
 */
export type SpotRule = 'large-leftovers' | 'short-side' | 'least-area';

export type SpotSearch = {
  readonly rule: SpotRule;
  /** Share of candidates passed over at random, so that one order gives different layouts. */
  readonly blink: number;
  readonly random: SeededRandom;
};

/** A root, a strip and a course: what one insertion may need. */
const INNER_NODES_PER_INSERTION = 3;

/** Finds the best spot on the open sheets and writes it to `spot`; false where the piece fits nowhere. */
export function findSpot(
  forest: Forest,
  problem: LayoutProblem,
  piece: number,
  search: SpotSearch,
  spot: Spot,
): boolean {
  const size = problem.pieces[piece];
  spot.node = NONE;
  if (size === undefined || (forest.head[FREE] as number) < INNER_NODES_PER_INSERTION) return false;
  const { rule, blink, random } = search;
  const { live, left, axis, width: nodeWidth, height: nodeHeight, stock } = forest;
  const { ways } = problem;
  const { width: givenWidth, height: givenHeight } = size;
  const shortSide = Math.min(givenWidth, givenHeight);
  const wayBase = piece * problem.stocks.length;
  const liveCount = forest.head[LIVE] as number; // here and below: every index is a node in use
  let bestCost = Number.POSITIVE_INFINITY;
  for (let place = 0; place < liveCount; place++) {
    const node = live[place] as number;
    const room = left[node] as number;
    if (room < shortSide) continue;
    const isUpright = axis[node] === 0;
    const regionWidth = isUpright ? room : (nodeWidth[node] as number);
    const regionHeight = isUpright ? (nodeHeight[node] as number) : room;
    const allowed = ways[wayBase + (stock[node] as number)] as number;
    for (let way = AS_GIVEN; way <= TURNED; way++) {
      if ((allowed & way) === 0) continue;
      const width = way === AS_GIVEN ? givenWidth : givenHeight;
      const height = way === AS_GIVEN ? givenHeight : givenWidth;
      if (width > regionWidth || height > regionHeight) continue;
      if (blink > 0 && random.next() < blink) continue;
      const upright = keptSquares(regionWidth, regionHeight, width, height);
      const lying = keptSquares(regionHeight, regionWidth, height, width);
      const cost = spotCost(rule, regionWidth, regionHeight, width, height, Math.max(upright, lying));
      if (cost >= bestCost) continue;
      bestCost = cost;
      spot.node = node;
      spot.turned = way === TURNED;
      spot.cutFirst = upright >= lying ? 0 : 1;
    }
  }
  return bestCost < Number.POSITIVE_INFINITY;
}

/** Sum of squares of the two leftovers when the first cut runs across, a piece's `along` from the edge. */
function keptSquares(regionAlong: number, regionAcross: number, along: number, across: number): number {
  const beside = (regionAlong - along) * regionAcross;
  const over = along * (regionAcross - across);
  return beside * beside + over * over;
}

function spotCost(
  rule: SpotRule,
  regionWidth: number,
  regionHeight: number,
  width: number,
  height: number,
  kept: number,
): number {
  const region = regionWidth * regionHeight;
  if (rule === 'large-leftovers') return region * region - kept;
  if (rule === 'short-side') return Math.min(regionWidth - width, regionHeight - height);
  return region;
}
