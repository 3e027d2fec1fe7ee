// Which faces of the box can be dragged on a drawing: where to take hold, which way they move, what that changes.
import type { BoxInput, BoxSheetResult } from '@gusset/contracts/box';
import type { PointMm, Pose } from '@gusset/contracts/geometry';
import { posed } from '@gusset/drawings';
import { OUTSIDE_WORDS, type OutsideKey } from './box-types.ts';

export type FaceHandle = {
  readonly id: string;
  readonly label: string;
  /** In the drawing's own millimetres. */
  readonly at: PointMm;
  /** Unit vector: the way that makes the box larger. */
  readonly outward: PointMm;
  /** The dimension it is named by, and those that move with it; `by` = mm of the dimension for 1 mm of the hand. */
  readonly moves: readonly { readonly key: OutsideKey; readonly by: number }[];
  readonly valueMm: number;
};

const AT_ORIGIN: Pose = { xMm: 0, yMm: 0, thetaRad: 0, zMm: 0 };

/** Shares of the height and of the top: off the middle, where the figures stand. */
const FRONT_GRIP_AT = 0.28;
const TOP_GRIP_AT = 0.72;

/** On the side section: front, top, and the upper corner of a wedge. */
export function sectionHandles(result: BoxSheetResult, isInCar: boolean): readonly FaceHandle[] {
  const { shape } = result.design;
  if (shape.kind !== 'rectangular' && shape.kind !== 'wedge') return [];
  const pose = isInCar ? (result.place?.pose ?? AT_ORIGIN) : AT_ORIGIN;
  const { heightMm } = shape;
  const isWedge = shape.kind === 'wedge';
  const bottomMm = isWedge ? shape.depthBottomMm : shape.depthMm;
  const topMm = isWedge ? shape.depthTopMm : shape.depthMm;
  const leansFront = isWedge && shape.slopedFace === 'front';
  const frontMm = leansFront ? bottomMm + (topMm - bottomMm) * FRONT_GRIP_AT : bottomMm;
  const topFromMm = isWedge && !leansFront ? bottomMm - topMm : 0;
  const handles: FaceHandle[] = [
    handle('front', { xMm: frontMm, yMm: heightMm * FRONT_GRIP_AT }, { xMm: 1, yMm: 0 }, bottomMm, [
      { key: 'depth', by: 1 },
      ...(isWedge ? [{ key: 'depthTop' as const, by: 1 }] : []),
    ]),
    handle('top', { xMm: topFromMm + topMm * TOP_GRIP_AT, yMm: heightMm }, { xMm: 0, yMm: 1 }, heightMm, [
      { key: 'height', by: 1 },
    ]),
  ];
  if (isWedge) {
    const corner = { xMm: leansFront ? topMm : topFromMm, yMm: heightMm };
    const outward = { xMm: leansFront ? 1 : -1, yMm: 0 };
    handles.push(handle('corner', corner, outward, topMm, [{ key: 'depthTop', by: 1 }]));
  }
  return handles.map((each) => stood(each, pose));
}

/** From above: one side; the other moves with it, so that the box stays on its centre line. */
export function planHandles(result: BoxSheetResult, isInCar: boolean): readonly FaceHandle[] {
  const { section, sizes } = result.box;
  const pose = isInCar ? (result.place?.pose ?? AT_ORIGIN) : AT_ORIGIN;
  const xs = posed(section.wood, pose).map(({ xMm }) => xMm);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  const { widthMm } = sizes.carcass;
  const side = { xMm: middle, yMm: pose.zMm + widthMm / 2 };
  return [handle('side', side, { xMm: 0, yMm: 1 }, widthMm, [{ key: 'width', by: 2 }])];
}

const FACE_WORDS: Readonly<Record<string, string>> = {
  front: 'Drag the front',
  top: 'Drag the top',
  corner: 'Drag the upper corner',
  side: 'Drag the side',
};

function handle(
  id: string,
  at: PointMm,
  outward: PointMm,
  valueMm: number,
  moves: FaceHandle['moves'],
): FaceHandle {
  const key = moves[0]?.key ?? 'depth';
  return {
    id,
    label: `${FACE_WORDS[id] ?? 'Drag'}: ${OUTSIDE_WORDS[key].toLowerCase()}`,
    at,
    outward,
    valueMm,
    moves,
  };
}

function stood(each: FaceHandle, pose: Pose): FaceHandle {
  const [at] = posed([each.at], pose);
  const [outward] = posed([each.outward], { ...pose, xMm: 0, yMm: 0 });
  return { ...each, at: at ?? each.at, outward: outward ?? each.outward };
}

/** Outside dimensions after the hand has moved `handMm` outward, each rounded to a step of the rule. */
export function draggedOutside(
  start: BoxInput['outside'],
  { moves }: FaceHandle,
  handMm: number,
  rule: { readonly stepMm: number; readonly unit: 'mm' | 'in'; readonly write: (mm: number) => string },
): BoxInput['outside'] {
  const outside = { ...start };
  for (const { key, by } of moves) {
    const before = start[key];
    if (before === null) continue;
    const steps = Math.max(1, Math.round((before.mm + handMm * by) / rule.stepMm));
    const mm = Number((steps * rule.stepMm).toFixed(4));
    outside[key] = { mm, typed: rule.write(mm), unit: rule.unit };
  }
  return outside;
}
