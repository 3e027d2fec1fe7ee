// Which panel runs past the other at each corner of the side view, and where that makes a panel end.
import type { ButtJoints, WallFace } from '@gusset/contracts/enclosure';
import { MITRE_FROM_RAD } from './limits.ts';
import { ringAt } from './ring.ts';
import { cornerAngleRad, type Wall } from './wall-ring.ts';

/** At the corner where a wall starts: the wall before it runs through, this one does, or both are mitred. */
export type CornerJoint = 'before' | 'this' | 'mitre';

/** How one end of a panel meets the wall there; `rabbeted`: covered, and let into the other's rabbet. */
export type EndJoint = 'through' | 'covered' | 'rabbeted' | 'mitre';

/** Off square by less than this a corner is square: rounding of typed points, far below any saw. */
const SQUARE_RAD = 1e-6;

type CornerKind = ButtJoints['kinds']['others'];

function kindOf({ kinds }: ButtJoints, a: WallFace, b: WallFace): CornerKind {
  const pair = (one: WallFace, other: WallFace) => (a === one && b === other) || (a === other && b === one);
  if (pair('bottom', 'front')) return kinds.bottomFront;
  if (pair('bottom', 'back')) return kinds.bottomBack;
  if (pair('top', 'front')) return kinds.topFront;
  if (pair('top', 'back')) return kinds.topBack;
  return kinds.others;
}

/** Whether the corner where wall `index` starts is rabbeted: asked for, and square. */
export function isRabbeted(walls: readonly Wall[], index: number, joints: ButtJoints): boolean {
  const isSquare = Math.abs(cornerAngleRad(walls, index) - Math.PI / 2) < SQUARE_RAD;
  const kind = kindOf(joints, ringAt(walls, index - 1).face, ringAt(walls, index).face);
  return isSquare && kind === 'rabbet';
}

/** Depth of a rabbet in a board that runs through. */
export function rabbetDepthMm(joints: ButtJoints, thicknessMm: number): number {
  return joints.rabbetDepthMm ?? thicknessMm / 2;
}

/** The face that runs through at a named pair; null for pairs with a slope. */
function namedThrough(joints: ButtJoints, a: WallFace, b: WallFace): WallFace | null {
  const pair = (one: WallFace, other: WallFace) => (a === one && b === other) || (a === other && b === one);
  if (pair('bottom', 'front')) return joints.bottomFront;
  if (pair('bottom', 'back')) return joints.bottomBack;
  if (pair('top', 'front')) return joints.topFront;
  if (pair('top', 'back')) return joints.topBack;
  return null;
}

/**
 * The joint where wall `index` starts. Corners flatter than 135° are mitred whatever was asked for: a butt joint
 * there would end in a feather. Pairs without a choice of their own: bottom and top run through, and between two
 * others the one that comes first round the ring.
 */
export function cornerJoint(walls: readonly Wall[], index: number, joints: ButtJoints): CornerJoint {
  if (cornerAngleRad(walls, index) > MITRE_FROM_RAD) return 'mitre';
  const before = ringAt(walls, index - 1).face;
  const here = ringAt(walls, index).face;
  if (kindOf(joints, before, here) === 'mitre') return 'mitre';
  const through = namedThrough(joints, before, here);
  if (through !== null) return through === here ? 'this' : 'before';
  return here === 'bottom' || here === 'top' ? 'this' : 'before';
}

/** How wall `index` ends at both of its corners. */
export function endJoints(
  walls: readonly Wall[],
  index: number,
  joints: ButtJoints,
): { readonly start: EndJoint; readonly end: EndJoint } {
  const seen = (corner: number, mine: CornerJoint): EndJoint => {
    const joint = cornerJoint(walls, corner, joints);
    if (joint === 'mitre') return 'mitre';
    if (joint === mine) return 'through';
    return isRabbeted(walls, corner, joints) ? 'rabbeted' : 'covered';
  };
  return { start: seen(index, 'this'), end: seen(index + 1, 'before') };
}
