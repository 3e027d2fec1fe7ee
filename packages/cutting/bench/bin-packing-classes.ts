// The ten classical classes of two-dimensional bin packing, generated from their published definitions.
// Classes I-VI: J. O. Berkey, P. Y. Wang, J. Operational Research Society 38, 1987. Classes VII-X: S. Martello,
// D. Vigo, Management Science 44, 1998. Sizes are whole and uniform in the ranges given there; n = 20 to 100.
import type { LayoutInput } from '@gusset/contracts/cutting';
import { seededRandom } from '../src/seeded-random.ts';

export const CLASS_NAMES = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII', 'VIII', 'IX', 'X'] as const;
export const INSTANCE_SIZES = [20, 40, 60, 80, 100] as const;

export type ClassInstance = { readonly className: string; readonly n: number; readonly input: LayoutInput };

type Range = readonly [least: number, most: number];
type Kind = { readonly width: Range; readonly height: Range };

/** Classes I-VI: both sides in one range. */
const UNIFORM: readonly { readonly binSide: number; readonly side: Range }[] = [
  { binSide: 10, side: [1, 10] },
  { binSide: 30, side: [1, 10] },
  { binSide: 40, side: [1, 35] },
  { binSide: 100, side: [1, 35] },
  { binSide: 100, side: [1, 100] },
  { binSide: 300, side: [1, 100] },
];

/** Classes VII-X: bins of 100 x 100, seven parts in ten of the class's own kind, the rest of the other three. */
const MIXED_BIN_SIDE = 100;
const OWN_KIND_SHARE = 0.7;
const KINDS: readonly Kind[] = [
  { width: [67, 100], height: [1, 50] }, // wide: 2/3 of the bin and more
  { width: [1, 50], height: [67, 100] }, // tall
  { width: [50, 100], height: [50, 100] }, // large
  { width: [1, 50], height: [1, 50] }, // small
];

/** Instance `index` of a class; the same arguments give the same instance. */
export function classInstance(classIndex: number, n: number, index: number, rotate: boolean): ClassInstance {
  const random = seededRandom(1 + classIndex * 1_000_003 + n * 1_009 + index * 7_919);
  const between = ([least, most]: Range): number => least + random.below(most - least + 1);
  const uniform = UNIFORM[classIndex];
  const binSide = uniform?.binSide ?? MIXED_BIN_SIDE;
  const draw = (): readonly [number, number] => {
    if (uniform !== undefined) return [between(uniform.side), between(uniform.side)];
    const kind = drawKind(classIndex - UNIFORM.length, random.next(), random.below(KINDS.length - 1));
    return [between(kind.width), between(kind.height)];
  };
  const board = { materialId: 'board', thicknessMm: 18, grain: 'none' } as const;
  const parts = Array.from({ length: n }, (_, part) => {
    const [lengthMm, widthMm] = draw();
    return { ...board, id: `p${part + 1}`, lengthMm, widthMm, mayTurn: rotate };
  });
  const sheet = { ...board, id: 'bin', name: 'bin', lengthMm: binSide, widthMm: binSide };
  return {
    className: CLASS_NAMES[classIndex] ?? '',
    n,
    input: {
      parts,
      sheets: [{ ...sheet, count: null, costMinor: null, isOffcut: false }],
      settings: { kerfMm: 0, trimMm: 0, keepLengthMm: 0, keepWidthMm: 0 },
      aim: 'fewest-sheets',
    },
  };
}

function drawKind(own: number, share: number, other: number): Kind {
  const [fallback] = KINDS;
  const others = KINDS.filter((_, index) => index !== own);
  const kind = share < OWN_KIND_SHARE ? KINDS[own] : others[other];
  return kind ?? fallback ?? { width: [1, 1], height: [1, 1] }; // unreachable: indices are in range
}
