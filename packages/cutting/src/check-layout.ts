// Is a layout sound? Reads only the input and the answer, and shares no code with the search: every part once and
// at its size, inside the trimmed sheet, a kerf apart, grain kept, cuttable edge to edge, areas that add up.
import type {
  CutPart,
  LayoutInput,
  LayoutResult,
  Placement,
  SheetLayout,
  StockSheet,
} from '@gusset/contracts/cutting';

export type LayoutProblemFound =
  | { readonly code: 'part-missing' | 'part-twice' | 'part-unknown'; readonly partId: string }
  | { readonly code: 'sheet-unknown'; readonly stockId: string }
  | { readonly code: 'sheets-short'; readonly stockId: string; readonly used: number; readonly count: number }
  | { readonly code: 'wrong-size' | 'outside' | 'grain-crossed' | 'turned-unasked'; readonly partId: string }
  | { readonly code: 'too-close'; readonly partIds: readonly [string, string]; readonly gapMm: number }
  | { readonly code: 'no-through-cut'; readonly stockId: string; readonly partIds: readonly string[] }
  | { readonly code: 'areas-off'; readonly stockId: string; readonly offMm2: number };

/** Rounding of coordinates in binary; a hundredth of what a saw can follow is ten thousand times this. */
const CHECK_SLACK_MM = 1e-6;
/** The same, times the perimeter of a large sheet. */
const AREA_SLACK_MM2 = 0.1;

/** Empty where the layout is sound. */
export function checkLayout(input: LayoutInput, result: LayoutResult): readonly LayoutProblemFound[] {
  return [
    ...checkParts(input, result),
    ...checkStock(input, result),
    ...result.sheets.flatMap((sheet) => checkSheet(input, sheet)),
  ];
}

function checkParts(input: LayoutInput, result: LayoutResult): readonly LayoutProblemFound[] {
  const named = [
    ...result.sheets.flatMap((sheet) => sheet.placements.map((placement) => placement.partId)),
    ...result.unplacedPartIds,
  ];
  const counts = new Map(input.parts.map((part) => [part.id, 0]));
  const found: LayoutProblemFound[] = [];
  for (const partId of named) {
    const count = counts.get(partId);
    if (count === undefined) found.push({ code: 'part-unknown', partId });
    else counts.set(partId, count + 1);
  }
  for (const [partId, count] of counts) {
    if (count === 0) found.push({ code: 'part-missing', partId });
    if (count > 1) found.push({ code: 'part-twice', partId });
  }
  return found;
}

function checkStock(input: LayoutInput, result: LayoutResult): readonly LayoutProblemFound[] {
  const used = Map.groupBy(result.sheets, (sheet) => sheet.stockId);
  return [...used].flatMap(([stockId, sheets]): readonly LayoutProblemFound[] => {
    const stock = input.sheets.find((sheet) => sheet.id === stockId);
    if (stock === undefined) return [{ code: 'sheet-unknown', stockId }];
    if (stock.count === null || sheets.length <= stock.count) return [];
    return [{ code: 'sheets-short', stockId, used: sheets.length, count: stock.count }];
  });
}

function checkSheet(input: LayoutInput, sheet: SheetLayout): readonly LayoutProblemFound[] {
  const stock = input.sheets.find((one) => one.id === sheet.stockId);
  if (stock === undefined) return [];
  const { kerfMm, trimMm } = input.settings;
  const placed = sheet.placements.flatMap((placement) => {
    const part = input.parts.find((one) => one.id === placement.partId);
    return part === undefined ? [] : [{ part, placement }];
  });
  return [
    ...placed.flatMap(({ part, placement }) => checkPlacement(part, placement, stock, trimMm)),
    ...checkGaps(sheet.placements, kerfMm),
    ...checkThroughCuts(sheet, kerfMm),
    ...checkAreas(sheet),
  ];
}

function checkPlacement(
  part: CutPart,
  placement: Placement,
  stock: StockSheet,
  trimMm: number,
): readonly LayoutProblemFound[] {
  const partId = part.id;
  const found: LayoutProblemFound[] = [];
  const lengthMm = placement.turned ? part.widthMm : part.lengthMm;
  const widthMm = placement.turned ? part.lengthMm : part.widthMm;
  if (!isNear(placement.lengthMm, lengthMm) || !isNear(placement.widthMm, widthMm)) {
    found.push({ code: 'wrong-size', partId });
  }
  const inside =
    placement.xMm >= trimMm - CHECK_SLACK_MM &&
    placement.yMm >= trimMm - CHECK_SLACK_MM &&
    placement.xMm + placement.lengthMm <= stock.lengthMm - trimMm + CHECK_SLACK_MM &&
    placement.yMm + placement.widthMm <= stock.widthMm - trimMm + CHECK_SLACK_MM;
  if (!inside) found.push({ code: 'outside', partId });
  if (placement.turned && !part.mayTurn) found.push({ code: 'turned-unasked', partId });
  if (part.grain !== 'none' && stock.grain !== 'none') {
    const sideAlongX = placement.turned ? 'width' : 'length';
    const grainAlongX = stock.grain === 'length';
    if ((part.grain === sideAlongX) !== grainAlongX) found.push({ code: 'grain-crossed', partId });
  }
  return found;
}

/** Two parts are apart when a kerf lies between them along x or along y. */
function checkGaps(placements: readonly Placement[], kerfMm: number): readonly LayoutProblemFound[] {
  return placements.flatMap((one, index) =>
    placements.slice(index + 1).flatMap((two): readonly LayoutProblemFound[] => {
      const gapMm = Math.max(
        gapBetween(one.xMm, one.lengthMm, two.xMm, two.lengthMm),
        gapBetween(one.yMm, one.widthMm, two.yMm, two.widthMm),
      );
      if (gapMm >= kerfMm - CHECK_SLACK_MM) return [];
      return [{ code: 'too-close', partIds: [one.partId, two.partId], gapMm }];
    }),
  );
}

function gapBetween(startOne: number, sizeOne: number, startTwo: number, sizeTwo: number): number {
  return Math.max(startTwo - startOne - sizeOne, startOne - startTwo - sizeTwo);
}

function checkThroughCuts(sheet: SheetLayout, kerfMm: number): readonly LayoutProblemFound[] {
  const stuck = stuckTogether(sheet.placements, kerfMm);
  if (stuck === null) return [];
  return [
    { code: 'no-through-cut', stockId: sheet.stockId, partIds: stuck.map((placement) => placement.partId) },
  ];
}

/** A group that no straight cut from edge to edge parts; null where saw cuts free every part. */
function stuckTogether(group: readonly Placement[], kerfMm: number): readonly Placement[] | null {
  if (group.length <= 1) return null;
  const byX = splitBy(group, kerfMm, (one) => [one.xMm, one.lengthMm]);
  const groups = byX.length > 1 ? byX : splitBy(group, kerfMm, (one) => [one.yMm, one.widthMm]);
  if (groups.length === 1) return group;
  for (const part of groups) {
    const stuck = stuckTogether(part, kerfMm);
    if (stuck !== null) return stuck;
  }
  return null;
}

/**
 * Splits along one axis at every gap as wide as the kerf. Any cut that exists may be made first: what a later cut
 * would have freed from the whole it frees from a part as well.
 */
function splitBy(
  group: readonly Placement[],
  kerfMm: number,
  span: (placement: Placement) => readonly [number, number],
): readonly (readonly Placement[])[] {
  const sorted = group.toSorted((one, two) => span(one)[0] - span(two)[0]);
  const groups: Placement[][] = [];
  let endMm = Number.NEGATIVE_INFINITY;
  for (const placement of sorted) {
    const [startMm, sizeMm] = span(placement);
    const current = groups.at(-1);
    if (current === undefined || startMm >= endMm + kerfMm - CHECK_SLACK_MM) groups.push([placement]);
    else current.push(placement);
    endMm = Math.max(endMm, startMm + sizeMm);
  }
  return groups;
}

function checkAreas(sheet: SheetLayout): readonly LayoutProblemFound[] {
  const spentMm2 = sheet.partsMm2 + sheet.kerfMm2 + sheet.trimMm2 + sheet.offcutsMm2 + sheet.wasteMm2;
  const offMm2 = spentMm2 - sheet.lengthMm * sheet.widthMm;
  return Math.abs(offMm2) <= AREA_SLACK_MM2 ? [] : [{ code: 'areas-off', stockId: sheet.stockId, offMm2 }];
}

function isNear(oneMm: number, twoMm: number): boolean {
  return Math.abs(oneMm - twoMm) <= CHECK_SLACK_MM;
}
