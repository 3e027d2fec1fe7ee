// The through cuts of a sheet as levels: a piece cut into strips by parallel cuts, each strip a piece of the next level.
import type { SawCut, SheetLayout, SheetRectangle } from '@gusset/contracts/cutting';

/** Coordinates that a layout computed twice agree to well within this, mm. */
const SAME_MM = 1e-6;

export type CutLevel = {
  readonly sheet: SheetLayout;
  readonly along: SawCut['along'];
  readonly base: SheetRectangle;
  /** Lines of the level from low to high, and the strips that they leave, one more. */
  readonly lines: readonly SawCut[];
  readonly strips: readonly SheetRectangle[];
  /** True where something is cut out of the strip, or it is a blank: worth a setting of its own. */
  readonly isWanted: readonly boolean[];
  /** Level and strip that this level's base is; null = the trimmed sheet. */
  readonly parent: { readonly level: number; readonly strip: number } | null;
};

/** All parting cuts of these layouts, parents before children. */
export function cutLevels(sheets: readonly SheetLayout[]): readonly CutLevel[] {
  const levels: CutLevel[] = [];
  for (const sheet of sheets) {
    const first = levels.length;
    for (const group of parallelRuns(sheet.cuts.filter((cut) => cut.kind === 'part'))) {
      levels.push(toLevel(sheet, group, levels, first));
    }
  }
  return levels;
}

/** Cuts that take strip after strip off the same piece, in the order of the layout. */
function parallelRuns(cuts: readonly SawCut[]): readonly (readonly SawCut[])[] {
  const runs: SawCut[][] = [];
  for (const cut of cuts) {
    const run = runs.find((one) => isRestOf(cut, one.at(-1)));
    if (run === undefined) runs.push([cut]);
    else run.push(cut);
  }
  return runs;
}

function isRestOf(cut: SawCut, before: SawCut | undefined): boolean {
  return (
    before !== undefined &&
    before.along === cut.along &&
    before.depth === cut.depth &&
    isSame(cut.piece, restAfter(before))
  );
}

function restAfter({ along, piece, kerf }: Pick<SawCut, 'along' | 'piece' | 'kerf'>): SheetRectangle {
  if (along === 'width') {
    const xMm = kerf.xMm + kerf.lengthMm;
    return { ...piece, xMm, lengthMm: piece.xMm + piece.lengthMm - xMm };
  }
  const yMm = kerf.yMm + kerf.widthMm;
  return { ...piece, yMm, widthMm: piece.yMm + piece.widthMm - yMm };
}

function toLevel(
  sheet: SheetLayout,
  lines: readonly SawCut[],
  levels: readonly CutLevel[],
  first: number,
): CutLevel {
  const [line] = lines;
  const base = line?.piece ?? { xMm: 0, yMm: 0, lengthMm: 0, widthMm: 0 };
  const along = line?.along ?? 'length';
  const strips = stripsBetween(base, along, lines);
  return {
    sheet,
    along,
    base,
    lines,
    strips,
    isWanted: strips.map((strip) => sheet.placements.some((placement) => isWithin(placement, strip))),
    parent: parentOf(base, levels, first),
  };
}

function stripsBetween(
  base: SheetRectangle,
  along: SawCut['along'],
  lines: readonly SawCut[],
): readonly SheetRectangle[] {
  const strips: SheetRectangle[] = [];
  let rest = base;
  for (const { kerf } of lines) {
    strips.push(
      along === 'width'
        ? { ...rest, lengthMm: kerf.xMm - rest.xMm }
        : { ...rest, widthMm: kerf.yMm - rest.yMm },
    );
    rest = restAfter({ along, piece: rest, kerf });
  }
  return [...strips, rest];
}

function parentOf(base: SheetRectangle, levels: readonly CutLevel[], first: number): CutLevel['parent'] {
  for (let level = first; level < levels.length; level += 1) {
    const strip = levels[level]?.strips.findIndex((one) => isSame(one, base)) ?? -1;
    if (strip >= 0) return { level, strip };
  }
  return null;
}

export function isSame(one: SheetRectangle, two: SheetRectangle): boolean {
  return (
    Math.abs(one.xMm - two.xMm) < SAME_MM &&
    Math.abs(one.yMm - two.yMm) < SAME_MM &&
    Math.abs(one.lengthMm - two.lengthMm) < SAME_MM &&
    Math.abs(one.widthMm - two.widthMm) < SAME_MM
  );
}

function isWithin(inner: SheetRectangle, outer: SheetRectangle): boolean {
  return (
    inner.xMm > outer.xMm - SAME_MM &&
    inner.yMm > outer.yMm - SAME_MM &&
    inner.xMm + inner.lengthMm < outer.xMm + outer.lengthMm + SAME_MM &&
    inner.yMm + inner.widthMm < outer.yMm + outer.widthMm + SAME_MM
  );
}
