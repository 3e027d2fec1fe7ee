// Clearing part of a layout so that it can be filled otherwise: whole strips here and there, or inside a few
// sheets, or every piece of one sheet.
import { eachPiece, type Forest, isPlaced, NONE, removePiece, rootOf } from './guillotine-forest.ts';
import type { LayoutProblem } from './layout-problem.ts';
import type { SeededRandom } from './seeded-random.ts';

/** Pieces taken at once: 1 to twice this. Ten of thirty to a hundred changes a layout without losing it. */
const MEAN_TAKEN = 10;
/** Chance to take the strip round a piece rather than the piece, and again round that. */
const CLIMB_CHANCE = 0.5;
/** Chance to stay within one to three sheets. */
const NEARBY_CHANCE = 0.3;
const MOST_NEARBY_SHEETS = 3;
/** Chance, where there are several sizes of sheet, to clear one wholly and so to change its size. */
const WHOLE_SHEET_CHANCE = 0.1;

/** Takes pieces off the forest and returns them. */
export function takeSome(forest: Forest, problem: LayoutProblem, random: SeededRandom): readonly number[] {
  const pieceCount = problem.pieces.length;
  if (problem.stocks.length > 1 && random.next() < WHOLE_SHEET_CHANCE) {
    const piece = random.below(pieceCount);
    return isPlaced(forest, piece) ? takeAll(forest, pieceCount, rootOf(forest, piece)) : [];
  }
  const candidates = random.next() < NEARBY_CHANCE ? nearby(forest, pieceCount, random) : [];
  if (candidates.length === 0) {
    for (let piece = 0; piece < pieceCount; piece++) if (isPlaced(forest, piece)) candidates.push(piece);
  }
  return takeStrips(forest, pieceCount, candidates, random);
}

/** Clears a node with everything under it. */
export function takeAll(forest: Forest, pieceCount: number, node: number): readonly number[] {
  const taken: number[] = [];
  eachPiece(forest, node, pieceCount, (piece) => taken.push(piece));
  for (const piece of taken) removePiece(forest, piece);
  return taken;
}

function nearby(forest: Forest, pieceCount: number, random: SeededRandom): number[] {
  const roots = new Set<number>();
  const wanted = 1 + random.below(MOST_NEARBY_SHEETS);
  for (let draw = 0; draw < wanted; draw++) {
    const piece = random.below(pieceCount);
    if (isPlaced(forest, piece)) roots.add(rootOf(forest, piece));
  }
  const pieces: number[] = [];
  for (const root of roots) eachPiece(forest, root, pieceCount, (piece) => pieces.push(piece));
  return pieces;
}

function takeStrips(
  forest: Forest,
  pieceCount: number,
  candidates: readonly number[],
  random: SeededRandom,
): readonly number[] {
  const taken: number[] = [];
  if (candidates.length === 0) return taken;
  const target = 1 + random.below(Math.min(candidates.length, 2 * MEAN_TAKEN));
  for (let draw = 0; draw < 4 * target && taken.length < target; draw++) {
    let node = candidates[random.below(candidates.length)] ?? NONE;
    if (node === NONE || !isPlaced(forest, node)) continue;
    while (forest.parent[node] !== NONE && random.next() < CLIMB_CHANCE) node = forest.parent[node] ?? node;
    taken.push(...takeAll(forest, pieceCount, node));
  }
  return taken;
}
