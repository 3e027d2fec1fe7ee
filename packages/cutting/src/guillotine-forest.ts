// The state of a layout while it is being searched: one guillotine tree per open sheet.
//
// An inner node is a rectangle cut across one axis into strips, one after the other; whatever is left of it is
// one leftover strip (order among strips does not matter, so leftovers of one node are always together).
// A leaf is a piece. Strips are themselves pieces, or inner nodes cut across the other axis.
//
//   axis 0 (strips side by side)       axis 1 (strips one above the other)
//   +----+------+--------+             +-----------------+
//   |    |      |  left  |             |      left       |
//   | s0 |  s1  |        |             +-----------------+
//   |    |      |        |             |       s0        |
//   +----+------+--------+             +-----------------+
//
// Sizes are whole units with the kerf already added to pieces and sheets (see layout-problem.ts), so strips that
// touch here lie one kerf apart on the sheet. All fields are views on one block: a state is copied in one call.
import type { LayoutProblem } from './layout-problem.ts';

export const NONE = -1;

export type Forest = {
  readonly block: Int32Array;
  /** Size of a node as placed (a turned piece has its sides exchanged). */
  readonly width: Int32Array;
  readonly height: Int32Array;
  /** 0: strips side by side along x; 1: strips stacked along y. Inner nodes only. */
  readonly axis: Int32Array;
  /** Thickness of the leftover strip of an inner node. */
  readonly left: Int32Array;
  /** NONE for roots and for pieces not placed. */
  readonly parent: Int32Array;
  readonly firstChild: Int32Array;
  readonly nextSibling: Int32Array;
  readonly previousSibling: Int32Array;
  /** Index of the stock sheet that the node lies on. */
  readonly stock: Int32Array;
  /** 1 where the piece is turned by a quarter. */
  readonly turned: Int32Array;
  /** Inner nodes in use, in the first `head[LIVE]` places. */
  readonly live: Int32Array;
  readonly livePlace: Int32Array;
  /** Inner nodes not in use, in the first `head[FREE]` places. */
  readonly free: Int32Array;
  /** Sheets open, per stock. */
  readonly open: Int32Array;
  readonly head: Int32Array;
};

/** Places in `head`. */
export const LIVE = 0;
export const FREE = 1;
export const OPEN_TOTAL = 2;
const HEAD_SIZE = 3;
const NODE_FIELDS = 13;

/** Pieces take nodes 0..n-1; inner nodes follow. Each insertion makes at most two inner nodes, plus a root. */
export function emptyForest(problem: LayoutProblem): Forest {
  const pieceCount = problem.pieces.length;
  const capacity = pieceCount * 4 + 1;
  const block = new Int32Array(capacity * NODE_FIELDS + problem.stocks.length + HEAD_SIZE);
  let offset = 0;
  const view = (length: number): Int32Array => {
    const field = block.subarray(offset, offset + length);
    offset += length;
    return field;
  };
  const forest: Forest = {
    block,
    width: view(capacity),
    height: view(capacity),
    axis: view(capacity),
    left: view(capacity),
    parent: view(capacity).fill(NONE),
    firstChild: view(capacity).fill(NONE),
    nextSibling: view(capacity).fill(NONE),
    previousSibling: view(capacity).fill(NONE),
    stock: view(capacity),
    turned: view(capacity),
    live: view(capacity),
    livePlace: view(capacity),
    free: view(capacity),
    open: view(problem.stocks.length),
    head: view(HEAD_SIZE),
  };
  const innerCount = capacity - pieceCount;
  for (let index = 0; index < innerCount; index++) forest.free[index] = capacity - 1 - index;
  forest.head[FREE] = innerCount;
  return forest;
}

export function copyForest(from: Forest, to: Forest): void {
  to.block.set(from.block);
}

const at = (field: Int32Array, index: number): number => field[index] as number; // every index is a live node

function takeNode(forest: Forest, stock: number, width: number, height: number, axis: number): number {
  const { head, free, live, livePlace } = forest;
  const freeCount = at(head, FREE) - 1;
  head[FREE] = freeCount;
  const node = at(free, freeCount);
  const place = at(head, LIVE);
  live[place] = node;
  livePlace[node] = place;
  head[LIVE] = place + 1;
  forest.width[node] = width;
  forest.height[node] = height;
  forest.axis[node] = axis;
  forest.left[node] = axis === 0 ? width : height;
  forest.parent[node] = NONE;
  forest.firstChild[node] = NONE;
  forest.nextSibling[node] = NONE;
  forest.previousSibling[node] = NONE;
  forest.stock[node] = stock;
  return node;
}

function giveNode(forest: Forest, node: number): void {
  const { head, free, live, livePlace } = forest;
  const place = at(livePlace, node);
  const lastPlace = at(head, LIVE) - 1;
  const last = at(live, lastPlace);
  live[place] = last;
  livePlace[last] = place;
  head[LIVE] = lastPlace;
  free[at(head, FREE)] = node;
  head[FREE] = at(head, FREE) + 1;
}

/** Hangs `child` (already sized) under `node` and takes its thickness from the leftover. */
function attach(forest: Forest, node: number, child: number): void {
  const next = at(forest.firstChild, node);
  forest.nextSibling[child] = next;
  forest.previousSibling[child] = NONE;
  if (next !== NONE) forest.previousSibling[next] = child;
  forest.firstChild[node] = child;
  forest.parent[child] = node;
  const thickness = at(forest.axis, node) === 0 ? at(forest.width, child) : at(forest.height, child);
  forest.left[node] = at(forest.left, node) - thickness;
}

function detach(forest: Forest, child: number): void {
  const node = at(forest.parent, child);
  const next = at(forest.nextSibling, child);
  const previous = at(forest.previousSibling, child);
  if (previous === NONE) forest.firstChild[node] = next;
  else forest.nextSibling[previous] = next;
  if (next !== NONE) forest.previousSibling[next] = previous;
  forest.parent[child] = NONE;
  const thickness = at(forest.axis, node) === 0 ? at(forest.width, child) : at(forest.height, child);
  forest.left[node] = at(forest.left, node) + thickness;
}

/** Opens an empty sheet and returns its root. */
export function openSheet(forest: Forest, problem: LayoutProblem, stockIndex: number): number {
  const stock = problem.stocks[stockIndex];
  if (stock === undefined) return NONE;
  forest.open[stockIndex] = at(forest.open, stockIndex) + 1;
  forest.head[OPEN_TOTAL] = at(forest.head, OPEN_TOTAL) + 1;
  return takeNode(forest, stockIndex, stock.width, stock.height, 0);
}

export type Spot = {
  node: number;
  turned: boolean;
  /** Direction of the cut made first through the leftover: 0 parts it along x, 1 along y. */
  cutFirst: 0 | 1;
};

/** Places a piece in the leftover of `spot.node`; it must fit there. */
export function insertPiece(forest: Forest, problem: LayoutProblem, piece: number, spot: Spot): void {
  const { node } = spot;
  const stock = at(forest.stock, node);
  const size = problem.pieces[piece];
  if (size === undefined) return;
  const width = spot.turned ? size.height : size.width;
  const height = spot.turned ? size.width : size.height;
  forest.width[piece] = width;
  forest.height[piece] = height;
  forest.turned[piece] = spot.turned ? 1 : 0;
  forest.stock[piece] = stock;
  if (at(forest.firstChild, node) === NONE) setRootAxis(forest, node, width, height, spot.cutFirst);
  const along = at(forest.axis, node);
  const regionWidth = along === 0 ? at(forest.left, node) : at(forest.width, node);
  const regionHeight = along === 0 ? at(forest.height, node) : at(forest.left, node);
  const thickness = along === 0 ? width : height;
  const room = along === 0 ? regionWidth : regionHeight;
  const fillsAcross = along === 0 ? height === regionHeight : width === regionWidth;
  if (fillsAcross) {
    attach(forest, node, piece);
    return;
  }
  if (spot.cutFirst === along || thickness === room) {
    const strip = takeNode(
      forest,
      stock,
      along === 0 ? width : regionWidth,
      along === 0 ? regionHeight : height,
      1 - along,
    );
    attach(forest, node, strip);
    attach(forest, strip, piece);
    return;
  }
  const strip = takeNode(forest, stock, regionWidth, regionHeight, 1 - along);
  const course = takeNode(
    forest,
    stock,
    along === 0 ? regionWidth : width,
    along === 0 ? height : regionHeight,
    along,
  );
  attach(forest, node, strip);
  attach(forest, strip, course);
  attach(forest, course, piece);
}

/** The first piece decides which way its sheet is cut; a piece as long as the sheet leaves one way only. */
function setRootAxis(forest: Forest, root: number, width: number, height: number, wanted: number): void {
  const axis = width === at(forest.width, root) ? 1 : height === at(forest.height, root) ? 0 : wanted;
  forest.axis[root] = axis;
  forest.left[root] = axis === 0 ? at(forest.width, root) : at(forest.height, root);
}

/** Takes a piece off its sheet; strips and sheets that held nothing else go with it. */
export function removePiece(forest: Forest, piece: number): void {
  let child = piece;
  for (;;) {
    const node = at(forest.parent, child);
    detach(forest, child);
    if (child !== piece) giveNode(forest, child);
    if (at(forest.firstChild, node) !== NONE) {
      shortenChain(forest, node);
      return;
    }
    if (at(forest.parent, node) === NONE) {
      closeSheet(forest, node);
      return;
    }
    child = node;
  }
}

/** The only child of an inner node, if that is an inner node too. */
function onlyStrip(forest: Forest, node: number): number {
  const child = at(forest.firstChild, node);
  if (child === NONE || at(forest.nextSibling, child) !== NONE || at(forest.firstChild, child) === NONE) {
    return NONE;
  }
  return child;
}

/** Where a strip holds one strip that holds one strip, the innermost takes the outer one's full length. */
function shortenChain(forest: Forest, start: number): void {
  let outer = start;
  while (at(forest.parent, outer) !== NONE && onlyStrip(forest, at(forest.parent, outer)) === outer) {
    outer = at(forest.parent, outer);
  }
  for (;;) {
    const middle = onlyStrip(forest, outer);
    const inner = middle === NONE ? NONE : onlyStrip(forest, middle);
    if (inner === NONE) return;
    outer = mergeChain(forest, outer, middle, inner);
  }
}

function mergeChain(forest: Forest, outer: number, middle: number, inner: number): number {
  detach(forest, inner);
  detach(forest, middle);
  giveNode(forest, middle);
  const across = 1 - at(forest.axis, outer);
  const lengthOfInner = across === 0 ? forest.height : forest.width;
  const full = at(lengthOfInner, outer);
  forest.left[inner] = at(forest.left, inner) + full - at(lengthOfInner, inner);
  lengthOfInner[inner] = full;
  const above = at(forest.parent, outer);
  if (above === NONE) {
    forest.axis[outer] = across;
    forest.left[outer] = across === 0 ? at(forest.width, outer) : at(forest.height, outer);
    attach(forest, outer, inner);
    return outer;
  }
  detach(forest, outer);
  giveNode(forest, outer);
  attach(forest, above, inner);
  return inner;
}

function closeSheet(forest: Forest, root: number): void {
  const stock = at(forest.stock, root);
  forest.open[stock] = at(forest.open, stock) - 1;
  forest.head[OPEN_TOTAL] = at(forest.head, OPEN_TOTAL) - 1;
  giveNode(forest, root);
}

export function isPlaced(forest: Forest, piece: number): boolean {
  return at(forest.parent, piece) !== NONE;
}

/** Root of the sheet that a placed piece lies on. */
export function rootOf(forest: Forest, node: number): number {
  let root = node;
  while (at(forest.parent, root) !== NONE) root = at(forest.parent, root);
  return root;
}

/** Calls `visit` for every piece at or under `node`. The walk tolerates no removal while it runs. */
export function eachPiece(
  forest: Forest,
  node: number,
  pieceCount: number,
  visit: (piece: number) => void,
): void {
  if (node < pieceCount) {
    visit(node);
    return;
  }
  for (let child = at(forest.firstChild, node); child !== NONE; child = at(forest.nextSibling, child)) {
    eachPiece(forest, child, pieceCount, visit);
  }
}
