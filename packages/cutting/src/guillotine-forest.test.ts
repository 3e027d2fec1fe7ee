import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findSpot } from './best-spot.ts';
import {
  eachPiece,
  emptyForest,
  type Forest,
  insertPiece,
  isPlaced,
  LIVE,
  NONE,
  openSheet,
  removePiece,
  rootOf,
  type Spot,
} from './guillotine-forest.ts';
import { type LayoutProblem, layoutProblem } from './layout-problem.ts';
import { seededRandom } from './seeded-random.ts';

const BOARD = { materialId: 'mdf', thicknessMm: 18, grain: 'none' } as const;

function problemOf(seed: number, count: number): LayoutProblem {
  const random = seededRandom(seed);
  return layoutProblem({
    parts: Array.from({ length: count }, (_, index) => ({
      ...BOARD,
      id: `p${index}`,
      lengthMm: 1 + random.below(20),
      widthMm: 1 + random.below(20),
      mayTurn: true,
    })),
    sheets: [
      {
        ...BOARD,
        id: 's',
        name: 's',
        lengthMm: 40,
        widthMm: 30,
        count: null,
        costMinor: null,
        isOffcut: false,
      },
    ],
    settings: { kerfMm: 0, trimMm: 0, keepLengthMm: 0, keepWidthMm: 0 },
    aim: 'fewest-sheets',
  });
}

/** Every rule of the tree, checked node by node. */
function faultsOf(forest: Forest, problem: LayoutProblem): string[] {
  const faults: string[] = [];
  for (const node of forest.live.subarray(0, forest.head[LIVE])) {
    const isUpright = forest.axis[node] === 0;
    const along = isUpright ? forest.width : forest.height;
    const across = isUpright ? forest.height : forest.width;
    let sum = forest.left[node] ?? 0;
    if (sum < 0) faults.push(`node ${node} is overfull`);
    if (forest.firstChild[node] === NONE) faults.push(`node ${node} is empty`);
    for (
      let child = forest.firstChild[node] ?? NONE;
      child !== NONE;
      child = forest.nextSibling[child] ?? NONE
    ) {
      sum += along[child] ?? 0;
      if (across[child] !== across[node]) faults.push(`strip ${child} is not as long as node ${node}`);
      if (forest.parent[child] !== node) faults.push(`strip ${child} hangs elsewhere`);
      const isInner = child >= problem.pieces.length;
      if (isInner && forest.axis[child] === forest.axis[node])
        faults.push(`strip ${child} is cut the same way`);
    }
    if (sum !== along[node]) faults.push(`strips and leftover of node ${node} do not add up`);
  }
  return faults;
}

describe('a forest', () => {
  it('keeps strips and leftovers adding up whatever is put in and taken out', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const problem = problemOf(seed, 25);
        const random = seededRandom(seed);
        const forest = emptyForest(problem);
        const spot: Spot = { node: NONE, turned: false, cutFirst: 0 };
        const search = { rule: 'large-leftovers', blink: 0.3, random } as const;
        for (let turn = 0; turn < 200; turn++) {
          const piece = random.below(25);
          if (isPlaced(forest, piece)) removePiece(forest, piece);
          else {
            const everywhere = { ...search, blink: 0 };
            const hasRoom =
              findSpot(forest, problem, piece, search, spot) ||
              findSpot(forest, problem, piece, everywhere, spot);
            if (!hasRoom) {
              openSheet(forest, problem, 0);
              expect(findSpot(forest, problem, piece, everywhere, spot)).toBe(true);
            }
            insertPiece(forest, problem, piece, spot);
          }
          expect(faultsOf(forest, problem)).toEqual([]);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('closes a sheet with its last piece', () => {
    const problem = problemOf(1, 1);
    const forest = emptyForest(problem);
    insertPiece(forest, problem, 0, { node: openSheet(forest, problem, 0), turned: false, cutFirst: 0 });
    expect(forest.open[0]).toBe(1);
    removePiece(forest, 0);
    expect([forest.open[0], forest.head[LIVE]]).toEqual([0, 0]);
  });

  it('finds every piece of a sheet under its root', () => {
    const problem = problemOf(2, 3);
    const forest = emptyForest(problem);
    const root = openSheet(forest, problem, 0);
    const search = { rule: 'least-area', blink: 0, random: seededRandom(1) } as const;
    for (const piece of [0, 1, 2]) {
      const spot: Spot = { node: root, turned: false, cutFirst: 0 };
      if (findSpot(forest, problem, piece, search, spot)) insertPiece(forest, problem, piece, spot);
    }
    const found: number[] = [];
    eachPiece(forest, rootOf(forest, 1), 3, (piece) => found.push(piece));
    expect(found.toSorted()).toEqual([0, 1, 2]);
  });
});
