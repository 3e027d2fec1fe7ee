// The outside of a box as a ring of walls, and what moving them in or out does to the corners.
//
//          top
//   (0,H) ←──── (Dt,H)        counter-clockwise from the lower back corner;
//   back ↓        ↖ front     `along` follows the ring, `out` points away from the air
//   (0,0) ────→ (Db,0)
//         bottom
import type { BoxShape, WallFace } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { cross, type Direction, meetOfLines, moved, polygonExtent } from './plane.ts';
import { ringAt } from './ring.ts';

/** One wall by its line on the outside of the carcass. */
export type Wall = {
  readonly face: WallFace;
  readonly from: PointMm;
  readonly to: PointMm;
  readonly along: Direction;
  readonly out: Direction;
  readonly lengthMm: number;
};

type Corner = PointMm & { readonly face: WallFace };

const corner = (face: WallFace, xMm: number, yMm: number): Corner => ({ face, xMm, yMm });

/** Corners counter-clockwise, each with the wall that starts there. */
function cornersOf(shape: BoxShape): readonly Corner[] {
  switch (shape.kind) {
    case 'rectangular':
      return uprightCorners(shape.depthMm, shape.depthMm, shape.heightMm, 'front');
    case 'wedge':
      return uprightCorners(shape.depthBottomMm, shape.depthTopMm, shape.heightMm, shape.slopedFace);
    case 'clipped-wedge':
      return clippedCorners(shape);
    case 'profile':
      return atOrigin(shape.walls);
  }
}

function uprightCorners(bottomMm: number, topMm: number, heightMm: number, slopedFace: 'front' | 'back') {
  const topBackXMm = slopedFace === 'back' ? bottomMm - topMm : 0;
  return [
    corner('bottom', 0, 0),
    corner('front', bottomMm, 0),
    corner('top', topBackXMm + topMm, heightMm),
    corner('back', topBackXMm, heightMm),
  ];
}

function clippedCorners(shape: Extract<BoxShape, { kind: 'clipped-wedge' }>) {
  const { depthBottomMm, depthTopMm, heightMm, kneeHeightMm } = shape;
  if (shape.slopedFace === 'front') {
    return [
      corner('bottom', 0, 0),
      corner('front', depthBottomMm, 0),
      corner('slope-1', depthBottomMm, kneeHeightMm),
      corner('top', depthTopMm, heightMm),
      corner('back', 0, heightMm),
    ];
  }
  return [
    corner('bottom', 0, 0),
    corner('front', depthBottomMm, 0),
    corner('top', depthBottomMm, heightMm),
    corner('slope-1', depthBottomMm - depthTopMm, heightMm),
    corner('back', 0, kneeHeightMm),
  ];
}

/** A free profile may be drawn anywhere; the box's own frame starts at its lower back. */
function atOrigin(corners: readonly Corner[]): readonly Corner[] {
  const { xMinMm, yMinMm } = polygonExtent(corners);
  return corners.map(({ face, xMm, yMm }) => corner(face, xMm - xMinMm, yMm - yMinMm));
}

/** The walls round the carcass, in the order in which the contract gives a profile. */
export function wallRing(shape: BoxShape): readonly Wall[] {
  const corners = cornersOf(shape);
  return corners.map((start, index) => {
    const { xMm, yMm } = ringAt(corners, index + 1);
    const lengthMm = Math.hypot(xMm - start.xMm, yMm - start.yMm);
    const along = { x: (xMm - start.xMm) / lengthMm, y: (yMm - start.yMm) / lengthMm };
    return {
      face: start.face,
      from: { xMm: start.xMm, yMm: start.yMm },
      to: { xMm, yMm },
      along,
      out: { x: along.y, y: -along.x },
      lengthMm,
    };
  });
}

/** Inside angle of the corner where wall `index` starts. */
export function cornerAngleRad(walls: readonly Wall[], index: number): number {
  const before = ringAt(walls, index - 1).along;
  const after = ringAt(walls, index).along;
  return Math.PI - Math.atan2(cross(before, after), before.x * after.x + before.y * after.y);
}

/** Crossing of two walls' lines, each moved inward by its own inset (negative = outward). */
export function insetMeet(a: Wall, insetAMm: number, b: Wall, insetBMm: number): PointMm {
  return meetOfLines(moved(a.from, a.out, -insetAMm), a.along, moved(b.from, b.out, -insetBMm), b.along);
}

/** The ring's corners after every wall moved inward by its own inset; corner i is where wall i starts. */
export function insetRing(walls: readonly Wall[], insetsMm: readonly number[]): PointMm[] {
  return walls.map((wall, index) =>
    insetMeet(ringAt(walls, index - 1), ringAt(insetsMm, index - 1), wall, ringAt(insetsMm, index)),
  );
}

/** Clear length of wall `index` in a ring made by `insetRing`; negative once its neighbours have crossed. */
export function insetLengthMm(walls: readonly Wall[], ring: readonly PointMm[], index: number): number {
  const start = ringAt(ring, index);
  const end = ringAt(ring, index + 1);
  const { along } = ringAt(walls, index);
  return (end.xMm - start.xMm) * along.x + (end.yMm - start.yMm) * along.y;
}

export type FaceAxis = {
  /** Lower end of the wall's outer line; of a level wall, its front end (top) or back end (bottom). */
  readonly foot: PointMm;
  /** Up along the face from there. */
  readonly up: Direction;
  /** True where `up` follows the ring. */
  readonly runsUp: boolean;
};

/** The axis along which a face is measured, so that what is up in the box is up on the panel. */
export function upTheFace(wall: Wall): FaceAxis {
  const runsUp = wall.along.y > -1e-9; // a level wall's y is 0 up to rounding
  return runsUp
    ? { foot: wall.from, up: wall.along, runsUp }
    : { foot: wall.to, up: { x: -wall.along.x, y: -wall.along.y }, runsUp };
}
