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
  const sides = sidesOf(result);
  const pose = isInCar ? (result.place?.pose ?? AT_ORIGIN) : AT_ORIGIN;
  const { heightMm, bottomMm, topMm, kneeMm, leansFront } = sides;
  const hasTop = topMm !== null;
  const topDepthMm = topMm ?? bottomMm;
  // Below a knee the front stands upright; without one it leans from the floor on.
  const gripMm = kneeMm === null ? heightMm * FRONT_GRIP_AT : kneeMm / 2;
  const leanMm = hasTop && leansFront && kneeMm === null ? (topDepthMm - bottomMm) * FRONT_GRIP_AT : 0;
  const topFromMm = hasTop && !leansFront ? bottomMm - topDepthMm : 0;
  const handles: FaceHandle[] = [
    handle('front', { xMm: bottomMm + leanMm, yMm: gripMm }, { xMm: 1, yMm: 0 }, bottomMm, [
      { key: 'depth', by: 1 },
      ...(hasTop ? [{ key: 'depthTop' as const, by: 1 }] : []),
    ]),
    handle(
      'top',
      { xMm: topFromMm + topDepthMm * TOP_GRIP_AT, yMm: heightMm },
      { xMm: 0, yMm: 1 },
      heightMm,
      [{ key: 'height', by: 1 }],
    ),
  ];
  if (hasTop) {
    const corner = { xMm: leansFront ? topDepthMm : topFromMm, yMm: heightMm };
    const outward = { xMm: leansFront ? 1 : -1, yMm: 0 };
    handles.push(handle('corner', corner, outward, topDepthMm, [{ key: 'depthTop', by: 1 }]));
  }
  if (kneeMm !== null) {
    const knee = { xMm: leansFront ? bottomMm : 0, yMm: kneeMm };
    handles.push(handle('knee', knee, { xMm: 0, yMm: 1 }, kneeMm, [{ key: 'kneeHeight', by: 1 }]));
  }
  return handles.map((each) => stood(each, pose));
}

type Sides = {
  readonly heightMm: number;
  readonly bottomMm: number;
  /** Null where it is as deep as the bottom. */
  readonly topMm: number | null;
  readonly kneeMm: number | null;
  readonly leansFront: boolean;
};

function sidesOf({ design: { shape } }: BoxSheetResult): Sides {
  if (shape.kind === 'rectangular') {
    return {
      heightMm: shape.heightMm,
      bottomMm: shape.depthMm,
      topMm: null,
      kneeMm: null,
      leansFront: false,
    };
  }
  if (shape.kind === 'profile') {
    const bottomMm = Math.max(...shape.walls.map(({ xMm }) => xMm));
    const upright = shape.walls.find(({ face }) => face === 'slope-1');
    const foot = shape.walls.find(({ face }) => face === 'slope-2');
    // The step toward the front begins at the foot's front edge.
    const leansFront = foot?.xMm === bottomMm;
    const uprightMm = upright?.xMm ?? bottomMm;
    return {
      heightMm: Math.max(...shape.walls.map(({ yMm }) => yMm)),
      bottomMm,
      topMm: leansFront ? uprightMm : bottomMm - uprightMm,
      kneeMm: foot?.yMm ?? null,
      leansFront,
    };
  }
  return {
    heightMm: shape.heightMm,
    bottomMm: shape.depthBottomMm,
    topMm: shape.depthTopMm,
    kneeMm: shape.kind === 'clipped-wedge' ? shape.kneeHeightMm : null,
    leansFront: shape.slopedFace === 'front',
  };
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
  knee: 'Drag the knee',
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
