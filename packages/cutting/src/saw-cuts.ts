// From the search's trees to sheets that a person can cut: where each blank lies, which cuts in which order,
// what is left, and where every square millimetre went.
import type { Placement, SawCut, SheetLayout, SheetRectangle } from '@gusset/contracts/cutting';
import { type Forest, NONE } from './guillotine-forest.ts';
import type { LayoutProblem, Stock } from './layout-problem.ts';

export type OffcutRule = { readonly keepLengthMm: number; readonly keepWidthMm: number };

/** Worth racking: both sides long enough, either way round. */
export function isWorthKeeping(rectangle: SheetRectangle, rule: OffcutRule): boolean {
  const long = Math.max(rectangle.lengthMm, rectangle.widthMm);
  const short = Math.min(rectangle.lengthMm, rectangle.widthMm);
  return (
    short > 0 &&
    long >= Math.max(rule.keepLengthMm, rule.keepWidthMm) &&
    short >= Math.min(rule.keepLengthMm, rule.keepWidthMm)
  );
}

/** One open sheet of the forest, written out as the first of its stock. */
export function sheetLayout(
  forest: Forest,
  problem: LayoutProblem,
  root: number,
  rule: OffcutRule,
): SheetLayout | null {
  const stock = problem.stocks[forest.stock[root] ?? NONE];
  if (stock === undefined) return null;
  const sheet = writeOut(forest, problem, root, trimCuts(stock, problem));
  const offcuts = sheet.leftovers
    .filter((leftover) => isWorthKeeping(leftover, rule))
    .toSorted((one, two) => areaMm2(two) - areaMm2(one) || one.xMm - two.xMm || one.yMm - two.yMm);
  const { lengthMm, widthMm } = stock.sheet;
  const partKerfs = sheet.cuts.filter((cut) => cut.kind === 'part').map((cut) => cut.kerf);
  const offcutsMm2 = totalMm2(offcuts);
  return {
    stockId: stock.sheet.id,
    copy: 1,
    isOffcut: stock.isOffcut,
    lengthMm,
    widthMm,
    costMinor: stock.sheet.costMinor,
    placements: sheet.placements,
    cuts: sheet.cuts,
    offcuts,
    sheetMm2: lengthMm * widthMm,
    partsMm2: totalMm2(sheet.placements),
    kerfMm2: totalMm2(partKerfs),
    trimMm2: lengthMm * widthMm - usableMm2(stock, problem),
    offcutsMm2,
    wasteMm2: Math.max(0, totalMm2(sheet.leftovers) - offcutsMm2),
  };
}

export function areaMm2(rectangle: { readonly lengthMm: number; readonly widthMm: number }): number {
  return rectangle.lengthMm * rectangle.widthMm;
}

function totalMm2(rectangles: readonly SheetRectangle[]): number {
  return rectangles.reduce((sum, rectangle) => sum + areaMm2(rectangle), 0);
}

function usableMm2(stock: Stock, { kerf, units }: LayoutProblem): number {
  return ((stock.width - kerf) / units.perUnit) * ((stock.height - kerf) / units.perUnit);
}

/** Left, right, lower, upper edge of the whole sheet; the strip that comes off is as wide as the trim. */
function trimCuts(stock: Stock, { trim, kerf, units }: LayoutProblem): readonly SawCut[] {
  if (trim === 0) return [];
  const { lengthMm: fullLength, widthMm: fullWidth } = stock.sheet;
  const trimMm = trim / units.perUnit;
  const bladeMm = Math.min(trim, kerf) / units.perUnit;
  const usableLength = fullLength - 2 * trimMm;
  const usableWidth = fullWidth - 2 * trimMm;
  const upright = { order: 0, kind: 'trim', along: 'width', depth: 0 } as const;
  const lying = { order: 0, kind: 'trim', along: 'length', depth: 0 } as const;
  const near = trimMm - bladeMm;
  const far = trimMm + usableLength;
  const top = trimMm + usableWidth;
  const cuts: readonly Omit<SawCut, 'order'>[] = [
    {
      ...upright,
      piece: box(0, 0, fullLength, fullWidth),
      fenceMm: near,
      kerf: box(near, 0, bladeMm, fullWidth),
    },
    {
      ...upright,
      piece: box(trimMm, 0, fullLength - trimMm, fullWidth),
      fenceMm: usableLength,
      kerf: box(far, 0, bladeMm, fullWidth),
    },
    {
      ...lying,
      piece: box(trimMm, 0, usableLength, fullWidth),
      fenceMm: near,
      kerf: box(trimMm, near, usableLength, bladeMm),
    },
    {
      ...lying,
      piece: box(trimMm, trimMm, usableLength, fullWidth - trimMm),
      fenceMm: usableWidth,
      kerf: box(trimMm, top, usableLength, bladeMm),
    },
  ];
  return cuts.map((cut, index) => ({ ...cut, order: index + 1 }));
}

function box(xMm: number, yMm: number, lengthMm: number, widthMm: number): SheetRectangle {
  return { xMm, yMm, lengthMm, widthMm };
}

type WrittenSheet = {
  readonly placements: Placement[];
  readonly cuts: SawCut[];
  readonly leftovers: SheetRectangle[];
};

type Strip = { readonly node: number; readonly x: number; readonly y: number; readonly depth: number };

/** Walks the tree: all cuts of a rectangle, then its strips, widest first, each with the cuts inside it. */
function writeOut(
  forest: Forest,
  problem: LayoutProblem,
  root: number,
  before: readonly SawCut[],
): WrittenSheet {
  const sheet: WrittenSheet = { placements: [], cuts: [...before], leftovers: [] };
  const todo: Strip[] = [{ node: root, x: 0, y: 0, depth: 0 }];
  for (let strip = todo.pop(); strip !== undefined; strip = todo.pop()) {
    const piece = problem.pieces[strip.node];
    if (piece !== undefined) {
      sheet.placements.push({
        partId: piece.id,
        ...realBox(problem, strip.x, strip.y, sizeOf(forest, strip.node)),
        turned: forest.turned[strip.node] === 1,
      });
    } else {
      todo.push(...cutIntoStrips(forest, problem, strip, sheet).toReversed());
    }
  }
  return sheet;
}

type Size = { readonly width: number; readonly height: number };

function sizeOf(forest: Forest, node: number): Size {
  return { width: forest.width[node] ?? 0, height: forest.height[node] ?? 0 };
}

/** A rectangle of the search (kerf added, from the usable corner) as it lies on the sheet. */
function realBox({ kerf, trim, units }: LayoutProblem, x: number, y: number, size: Size): SheetRectangle {
  return box(
    (trim + x) / units.perUnit,
    (trim + y) / units.perUnit,
    Math.max(0, size.width - kerf) / units.perUnit,
    Math.max(0, size.height - kerf) / units.perUnit,
  );
}

function cutIntoStrips(
  forest: Forest,
  problem: LayoutProblem,
  strip: Strip,
  sheet: WrittenSheet,
): readonly Strip[] {
  const isUpright = forest.axis[strip.node] === 0;
  let { x, y } = strip;
  let rest = sizeOf(forest, strip.node);
  const strips: Strip[] = [];
  for (const child of childrenWidestFirst(forest, strip.node, isUpright)) {
    const size = sizeOf(forest, child);
    strips.push({ node: child, x, y, depth: strip.depth + 1 });
    const beyond = isUpright ? rest.width - size.width : rest.height - size.height;
    if (beyond > 0) {
      const order = sheet.cuts.length + 1;
      sheet.cuts.push(sawCut(problem, { x, y, rest, size, beyond, isUpright, depth: strip.depth, order }));
    }
    rest = isUpright ? { width: beyond, height: rest.height } : { width: rest.width, height: beyond };
    if (isUpright) x += size.width;
    else y += size.height;
  }
  const leftover = realBox(problem, x, y, rest);
  if (areaMm2(leftover) > 0) sheet.leftovers.push(leftover);
  return strips;
}

type CutPlan = {
  readonly x: number;
  readonly y: number;
  readonly rest: Size;
  readonly size: Size;
  readonly beyond: number;
  readonly isUpright: boolean;
  readonly depth: number;
  readonly order: number;
};

function sawCut(problem: LayoutProblem, plan: CutPlan): SawCut {
  const piece = realBox(problem, plan.x, plan.y, plan.rest);
  const strip = realBox(problem, plan.x, plan.y, plan.size);
  const bladeMm = Math.min(problem.kerf, plan.beyond) / problem.units.perUnit;
  const fenceMm = plan.isUpright ? strip.lengthMm : strip.widthMm;
  return {
    order: plan.order,
    kind: 'part',
    along: plan.isUpright ? 'width' : 'length',
    depth: plan.depth,
    piece,
    fenceMm,
    kerf: plan.isUpright
      ? box(piece.xMm + fenceMm, piece.yMm, bladeMm, piece.widthMm)
      : box(piece.xMm, piece.yMm + fenceMm, piece.lengthMm, bladeMm),
  };
}

function childrenWidestFirst(forest: Forest, node: number, isUpright: boolean): readonly number[] {
  const children: number[] = [];
  for (
    let child = forest.firstChild[node] ?? NONE;
    child !== NONE;
    child = forest.nextSibling[child] ?? NONE
  ) {
    children.push(child);
  }
  const thickness = isUpright ? forest.width : forest.height;
  return children.sort((one, two) => (thickness[two] ?? 0) - (thickness[one] ?? 0) || one - two);
}
