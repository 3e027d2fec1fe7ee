// Cavity -> the scene in which the way in is looked for: space and free ground beyond as one outline, prisms across the
// width. Every wall stands at its worst, as measured, or at its best, so that a yes at worst and a no at best both hold.
//
//            open lid  ______/
//      ____roof______ /      |
//      |             |j1     |      j0, j1: ends of the opening; between them and the free ground
//      | cavity       ]      |      runs a channel one sheet of metal thick, so that what the walls
//      |___floor_____|j0     |      enclose stays one simple outline
//                    |_______| free ground
import {
  type BeyondOpening,
  type CavityResult,
  type CavityWall,
  type ClearanceSettings,
  NOTHING_BEYOND,
  type SceneAssumption,
} from '@gusset/contracts/cargo';
import type { DryFitCaseInput } from '@gusset/contracts/dryfit';
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { enclosingCircle } from './dryfit/enclosing-circle.ts';
import { distinctCorners, type Joint, movedEdges } from './plane/offset.ts';
import { boundsOf } from './plane/polygon.ts';
import { dot, minus, outwardNormal, plus, turned, unit } from './plane/vector.ts';
import { freeGround, groundAssumptions, type OpeningFrame } from './scene-ground.ts';
import { properOutline } from './scene-obstacle.ts';
import { sceneObstacles, sceneWidth } from './scene-prisms.ts';
import { wantedToWall } from './wanted-clearance.ts';

export type SceneWalls = 'worst' | 'nominal' | 'best';

export type DryFitSceneOptions = {
  /** Every ± against the body, as measured, or every ± in its favour. */
  readonly walls: SceneWalls;
  /** Prisms that are gone or added in a state; the state's readings are in the cavity already. Null = as it stands. */
  readonly state?: { readonly absent: readonly string[]; readonly present?: readonly string[] } | null;
  /** Wanted distances that surfaces are brought nearer by; null = none, the case's own clearance then says it. */
  readonly clearances?: ClearanceSettings | null;
  /** Across the body, mm: free ground reaches three times as far. Null = across the section. */
  readonly bodyMm?: number | null;
};

export type DryFitScene = {
  readonly scene: Pick<DryFitCaseInput, 'space' | 'outside' | 'opening' | 'obstacles' | 'zRange'>;
  /** How far each wall was moved inward, mm (below 0 outward), in the order of the cavity. */
  readonly moved: readonly { readonly wallId: string; readonly inwardMm: number }[];
  readonly assumptions: readonly SceneAssumption[];
};

/** As thick as bodywork, mm: outside and inside of one wall are no line. */
const BODYWORK_MM = 1;
/** A body larger than any vehicle's section, mm: keeps every corner within what a drawing takes. */
const MOST_BODY_MM = 4_000;
/** Corners off the line of the opening by less lie on it, mm. */
const ON_LINE_MM = 0.1;
/** An opening that lets nothing through, mm. */
const LEAST_OPENING_MM = 1;

/** Refused where the ± leave no space or no opening: which, and by how much. */
export function dryFitScene(cavity: CavityResult, options: DryFitSceneOptions): DryFitScene | Refusal {
  const { walls, clearances = null, state = null } = options;
  const beyond = cavity.beyond ?? NOTHING_BEYOND;
  const sign = SIGN[walls];
  const inward = cavity.walls.map((wall) => inwardOf(wall, sign, clearances));
  const joints = movedEdges(cavity.polygon, inward, cavity.opening.wallIndex);
  if (joints === null) return noRoom('the walls meet');
  const frame = frameOf(cavity, sign);
  const jambs = jambsOf(cavity, frame, sign, clearances);
  if (isRefusal(jambs)) return jambs;
  const inside = insideOf(joints, cavity.opening.wallIndex, frame, jambs);
  const outlines = outlinesOf(inside, jambs, frame, {
    bodyMm: Math.min(MOST_BODY_MM, options.bodyMm ?? acrossOf(cavity.polygon)),
    groundYMm: groundLevel(cavity, beyond, sign),
  });
  if (isRefusal(outlines)) return outlines;
  const { space, outside, channel, standsOut } = outlines;
  const zRange = sceneWidth(cavity, sign, clearances);
  if (zRange.minMm >= zRange.maxMm) return noRoom('the sides meet');
  const obstacles = sceneObstacles({ cavity, beyond, frame, channel, zRange, sign, clearances, state });
  if (obstacles.length > MOST_OBSTACLES) return tooManyObstacles(obstacles.length);
  return {
    scene: {
      space: [...space],
      outside: [...outside],
      opening: { from: jambs[0], to: jambs[1] },
      obstacles,
      zRange,
    },
    moved: cavity.walls.map(({ id }, i) => ({ wallId: id, inwardMm: inward[i] ?? 0 })),
    assumptions: assumptionsOf(cavity, standsOut),
  };
}

/** As `dryFitCaseSchema` has it. */
const MOST_OBSTACLES = 60;
const SIGN: Readonly<Record<SceneWalls, -1 | 0 | 1>> = { worst: 1, nominal: 0, best: -1 };

type Outlines = {
  readonly space: PolygonMm;
  readonly outside: PolygonMm;
  /** Between opening and free ground. */
  readonly channel: PolygonMm;
  /** Part of the space stands out past the opening. */
  readonly standsOut: boolean;
};

/** Space and free ground, joined between the jambs. */
function outlinesOf(
  inside: PolygonMm,
  [first, last]: readonly [PointMm, PointMm],
  frame: OpeningFrame,
  { bodyMm, groundYMm }: { readonly bodyMm: number; readonly groundYMm: number | null },
): Outlines | Refusal {
  const outMm = Math.max(0, ...inside.map((at) => dot(minus(at, frame.from), frame.outward)));
  const offMm = BODYWORK_MM + outMm;
  const free = freeGround({ ...frame, from: first, to: last }, offMm, bodyMm, groundYMm);
  if (free === null) {
    return refuse('beyond.ground', {
      allowed: 'ground below the lip, its ± counted',
      got: groundYMm,
      why: 'the ground closes the opening',
    });
  }
  const channel = [first, plus(first, frame.outward, offMm), plus(last, frame.outward, offMm), last];
  const outside = distinctCorners([...channel.slice(0, 2), ...free, ...channel.slice(2)]);
  const space = properOutline(distinctCorners([...inside, ...outside]));
  if (space === null) return noRoom('two walls meet across it');
  return { space, outside, channel, standsOut: outMm > ON_LINE_MM };
}

/** Where the ground is, mm up; at worst as high as it may be. */
function groundLevel({ opening }: CavityResult, { ground }: BeyondOpening, sign: number): number | null {
  if (ground === null) return null;
  return Math.min(opening.from.yMm, opening.to.yMm) - ground.belowMm + sign * ground.plusMinusMm;
}

function tooManyObstacles(count: number): Refusal {
  return refuse('obstacles', {
    allowed: `at most ${MOST_OBSTACLES}`,
    got: count,
    why: 'too many prisms stand in it',
  });
}

function noRoom(why: string): Refusal {
  return refuse('walls', { allowed: 'walls that leave room, ± and clearance counted', got: null, why });
}

function acrossOf(polygon: PolygonMm): number {
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = boundsOf(polygon);
  return Math.hypot(xMaxMm - xMinMm, yMaxMm - yMinMm);
}

/** A floor stays: what stands on it is lifted with it. The opening only opens outward; its ends are moved on their own. */
function inwardOf(wall: CavityWall, sign: number, clearances: ClearanceSettings | null): number {
  if (wall.role === 'floor') return 0;
  if (wall.role === 'opening') return Math.min(0, sign * wall.plusMinusMm);
  return sign * wall.plusMinusMm + (clearances === null ? 0 : wantedToWall(wall, clearances));
}

/** The line of the opening: as measured, at best as far out as it may stand. */
function frameOf({ opening, walls }: CavityResult, sign: number): OpeningFrame {
  const outward = outwardNormal(opening.from, opening.to);
  const outMm = sign < 0 ? (walls[opening.wallIndex]?.plusMinusMm ?? 0) : 0;
  return {
    outward,
    along: unit(minus(opening.to, opening.from)),
    from: plus(opening.from, outward, outMm),
    to: plus(opening.to, outward, outMm),
  };
}

/** Ends of the opening: each by its own ± along it, and what is wanted all round. */
function jambsOf(
  { opening }: CavityResult,
  { from, to, along }: OpeningFrame,
  sign: number,
  clearances: ClearanceSettings | null,
): readonly [PointMm, PointMm] | Refusal {
  const wantedMm = clearances?.openingMm ?? 0;
  // A survey from before the ends had a ± of their own: neither moves farther than the height.
  const fromMm = sign * (opening.fromPlusMinusMm ?? opening.heightPlusMinusMm) + wantedMm;
  const toMm = sign * (opening.toPlusMinusMm ?? opening.heightPlusMinusMm) + wantedMm;
  const leftMm = opening.heightMm - fromMm - toMm;
  if (leftMm >= LEAST_OPENING_MM) return [plus(from, along, fromMm), plus(to, along, -toMm)];
  return refuse('opening', {
    allowed: `more than ${(fromMm + toMm).toFixed(1)} mm high, ± and clearance counted`,
    got: opening.heightMm,
    why: `the opening is ${(LEAST_OPENING_MM - leftMm).toFixed(1)} mm too low`,
  });
}

/** Walls from the upper end of the opening round to its lower one, joined to the jambs. */
function insideOf(
  joints: readonly Joint[],
  openingIndex: number,
  frame: OpeningFrame,
  [first, last]: readonly [PointMm, PointMm],
): PointMm[] {
  const start = joints.findIndex(({ before }) => before === openingIndex);
  const round = [...joints.slice(start), ...joints.slice(0, start)];
  const corners = round.flatMap(({ before, after, points }) => {
    if (before === openingIndex) return points.slice(-1);
    return after === openingIndex ? points.slice(0, 1) : points;
  });
  const behindMm = (at: PointMm) => dot(minus(at, frame.from), frame.outward);
  const joined = (end: PointMm | undefined, jamb: PointMm): PointMm[] => {
    if (end === undefined) return [];
    const offMm = behindMm(end);
    // A wall along the opening that moved inward goes on past the jamb; one that moved outward ends at its line.
    if (offMm < -ON_LINE_MM) return [plus(jamb, frame.outward, offMm), end];
    return offMm > ON_LINE_MM ? [plus(end, frame.outward, -offMm)] : [end];
  };
  const top = joined(corners[0], last);
  const foot = joined(corners.at(-1), first).reverse();
  return [...top, ...corners.slice(1, -1), ...foot];
}

function assumptionsOf(cavity: CavityResult, standsOut: boolean): SceneAssumption[] {
  const inPlace = cavity.keepFree.length > 0 || cavity.obstructions.some((it) => it.appliesTo === 'fit');
  const soft = cavity.walls.some((wall) => (wall.crushMm ?? 0) > 0);
  return [
    'half-plane-beyond-the-opening',
    ...groundAssumptions(cavity.beyond ?? NOTHING_BEYOND),
    ...(standsOut ? (['free-only-past-the-bodywork'] as const) : []),
    ...(cavity.walls.some(({ role }) => role === 'floor') ? (['floor-carries-the-box'] as const) : []),
    ...(inPlace ? (['in-place-only-left-out'] as const) : []),
    ...(soft ? (['soft-trim-taken-as-hard'] as const) : []),
  ];
}

/** A pose wholly outside: straight out from the middle of the opening, turned as it will stand. */
export function poseOutside(
  { scene: { opening } }: Pick<DryFitScene, 'scene'>,
  profile: PolygonMm,
  thetaRad: number,
  zMm = 0,
): Pose {
  const { centre, radiusMm } = enclosingCircle(profile);
  const outward = outwardNormal(opening.from, opening.to);
  const middle = plus(opening.from, minus(opening.to, opening.from), 0.5);
  const at = minus(plus(middle, outward, 2 * radiusMm + BODYWORK_MM), turned(centre, thetaRad));
  return { ...at, thetaRad, zMm };
}
