// Does a saw plan come out? Replays it from whole sheets with nothing but rectangles; shares no code with the planner.
import type {
  LayoutSettings,
  SawPlan,
  SawStep,
  SheetLayout,
  SheetRectangle,
} from '@gusset/contracts/cutting';

export type SawPlanFault =
  | {
      readonly code: 'no-such-sheet' | 'piece-not-in-hand' | 'edge-not-true' | 'kerf-outside';
      readonly order: number;
    }
  | {
      readonly code: 'wrong-setting';
      readonly order: number;
      readonly fenceMm: number;
      readonly isMm: number;
    }
  | { readonly code: 'blank-not-freed' | 'freed-too-early'; readonly partId: string };

const SLACK_MM = 1e-6;
/** What the scale of a fence shows. */
const SETTING_SLACK_MM = 0.051;

/** A piece in hand, and which of its four edges have been cut. */
type Piece = SheetRectangle & { readonly isTrue: Readonly<Record<Side, boolean>> };
type Side = 'left' | 'right' | 'lower' | 'upper';

/** Empty where every cut can be made as told and every blank lies loose at the end, at its size. */
export function replayPlan(
  sheets: readonly SheetLayout[],
  plan: SawPlan,
  { trimMm }: Pick<LayoutSettings, 'trimMm'>,
): readonly SawPlanFault[] {
  const faults: SawPlanFault[] = [];
  const hands = new Map(sheets.map((sheet) => [keyOf(sheet), [wholeSheet(sheet, trimMm === 0)]]));
  for (const setUp of plan.setUps) {
    for (const step of setUp.steps) {
      const hand = hands.get(keyOf(step.sheet));
      if (hand === undefined) faults.push({ code: 'no-such-sheet', order: step.order });
      else faults.push(...cut(hand, step, setUp.fenceMm));
    }
  }
  for (const sheet of sheets) {
    const hand = hands.get(keyOf(sheet)) ?? [];
    for (const blank of sheet.placements) {
      if (!hand.some((piece) => same(piece, blank))) {
        faults.push({ code: 'blank-not-freed', partId: blank.partId });
      }
    }
  }
  return faults;
}

function keyOf({ stockId, copy }: { readonly stockId: string; readonly copy: number }): string {
  return `${stockId} ${copy}`;
}

function wholeSheet({ lengthMm, widthMm }: SheetLayout, isTrue: boolean): Piece {
  return {
    xMm: 0,
    yMm: 0,
    lengthMm,
    widthMm,
    isTrue: { left: isTrue, right: isTrue, lower: isTrue, upper: isTrue },
  };
}

function cut(hand: Piece[], step: SawStep, settingMm: number | null): readonly SawPlanFault[] {
  const { order } = step;
  const index = hand.findIndex((piece) => same(piece, step.piece));
  const piece = hand[index];
  if (piece === undefined) return [{ code: 'piece-not-in-hand', order }];
  const isUpright = step.along === 'width';
  const start = isUpright ? piece.xMm : piece.yMm;
  const end = start + (isUpright ? piece.lengthMm : piece.widthMm);
  const from = isUpright ? step.kerf.xMm : step.kerf.yMm;
  const to = from + (isUpright ? step.kerf.lengthMm : step.kerf.widthMm);
  if (from < start - SLACK_MM || to > end + SLACK_MM) return [{ code: 'kerf-outside', order }];
  const faults: SawPlanFault[] = [];
  if (settingMm !== null) {
    const low: Side = isUpright ? 'left' : 'lower';
    const high: Side = isUpright ? 'right' : 'upper';
    if (!piece.isTrue[step.against === 'low' ? low : high]) faults.push({ code: 'edge-not-true', order });
    const isMm = step.against === 'low' ? from - start : end - to;
    for (const fenceMm of [step.fenceMm, settingMm]) {
      if (Math.abs(fenceMm - isMm) > SETTING_SLACK_MM)
        faults.push({ code: 'wrong-setting', order, fenceMm, isMm });
    }
  }
  hand.splice(index, 1, ...parts(piece, isUpright, from, to));
  for (const partId of step.freesPartIds) {
    if (settingMm === null) faults.push({ code: 'freed-too-early', partId });
  }
  return faults;
}

function parts(piece: Piece, isUpright: boolean, from: number, to: number): readonly Piece[] {
  const low: Piece = isUpright
    ? { ...piece, lengthMm: from - piece.xMm, isTrue: { ...piece.isTrue, right: true } }
    : { ...piece, widthMm: from - piece.yMm, isTrue: { ...piece.isTrue, upper: true } };
  const high: Piece = isUpright
    ? {
        ...piece,
        xMm: to,
        lengthMm: piece.xMm + piece.lengthMm - to,
        isTrue: { ...piece.isTrue, left: true },
      }
    : {
        ...piece,
        yMm: to,
        widthMm: piece.yMm + piece.widthMm - to,
        isTrue: { ...piece.isTrue, lower: true },
      };
  return [low, high].filter(({ lengthMm, widthMm }) => lengthMm > SLACK_MM && widthMm > SLACK_MM);
}

function same(one: SheetRectangle, two: SheetRectangle): boolean {
  return (
    Math.abs(one.xMm - two.xMm) < SLACK_MM &&
    Math.abs(one.yMm - two.yMm) < SLACK_MM &&
    Math.abs(one.lengthMm - two.lengthMm) < SLACK_MM &&
    Math.abs(one.widthMm - two.widthMm) < SLACK_MM
  );
}
