// A box standing on the floor and pushed up to the back with a gap: the pose to start from.
import type { CavityResult, WallRole } from '@gusset/contracts/cargo';
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { boxRefusal, distanceRefusal } from './box-input.ts';
import { wallClearance } from './place-box.ts';
import { closestBetweenSegments } from './plane/distance.ts';
import { edgesOf, type Segment } from './plane/edges.ts';
import { counterClockwise } from './plane/polygon.ts';
import { dot, lengthOf, minus, outwardNormal, plus, turned, unit } from './plane/vector.ts';

export type RestInput = {
  /** Which wall it is pushed up to, by role. */
  readonly back: WallRole;
  readonly gapMm: number;
};

export type Stand = {
  readonly floor: Segment;
  readonly backs: readonly Segment[];
  /** Unit vector along the floor, away from the back. */
  readonly away: PointMm;
  /** Unit vector off the floor. */
  readonly up: PointMm;
};

/** The floor the box stands on (the one that meets the back) and the walls behind it. */
export function standOf(cavity: CavityResult, back: WallRole): Stand | Refusal {
  const edges = edgesOf(cavity.polygon);
  const withRole = (role: WallRole) => edges.filter((_, index) => cavity.walls[index]?.role === role);
  const backs = withRole(back);
  const roles = [...new Set(cavity.walls.map((wall) => wall.role))].join(', ');
  if (backs.length === 0) {
    return refuse('back', { allowed: roles, got: back, why: `the section has no ${back}` });
  }
  const nearest = withRole('floor')
    .map((floor) => ({ floor, ...nearestBack(floor, backs) }))
    .sort((a, b) => a.distanceMm - b.distanceMm || lengthOf(span(b.floor)) - lengthOf(span(a.floor)))[0];
  if (nearest === undefined) {
    return refuse('cavity.walls', {
      allowed: 'at least one floor',
      got: roles,
      why: 'there is nothing to stand on',
    });
  }
  const { floor, back: nearBack } = nearest;
  const along = unit(span(floor));
  const inward = outwardNormal(nearBack.to, nearBack.from);
  const away = dot(along, inward) >= 0 ? along : { xMm: -along.xMm, yMm: -along.yMm };
  return { floor, backs, away, up: outwardNormal(floor.to, floor.from) };
}

function span({ from, to }: Segment): PointMm {
  return minus(to, from);
}

function nearestBack(floor: Segment, backs: readonly Segment[]): { distanceMm: number; back: Segment } {
  return backs
    .map((back) => ({ distanceMm: closestBetweenSegments(floor, back).distanceMm, back }))
    .reduce((best, next) => (next.distanceMm < best.distanceMm ? next : best));
}

/** A hump lifts the box, which may bring its top nearer to a leaning back: settled in a few rounds. */
const ROUNDS = 6;

/** Pose with the bottom on the floor and `gapMm` to the back at its nearest; centred across the car. */
export function restAgainst(cavity: CavityResult, profile: PolygonMm, rest: RestInput): Pose | Refusal {
  const refusal = boxRefusal(profile, 1) ?? distanceRefusal({ gapMm: rest.gapMm });
  if (refusal !== null) return refusal;
  const stand = standOf(cavity, rest.back);
  if ('refusal' in stand) return stand;
  const along = unit(span(stand.floor));
  const thetaRad = Math.atan2(along.yMm, along.xMm);
  const body = counterClockwise(profile).map((corner) => turned(corner, thetaRad));
  const floors = edgesOf(cavity.polygon).filter((_, index) => cavity.walls[index]?.role === 'floor');
  const lowest = Math.min(...body.map((corner) => dot(corner, stand.up)));
  let at = plus({ xMm: 0, yMm: 0 }, stand.up, dot(stand.floor.from, stand.up) - lowest);
  for (let round = 0; round < ROUNDS; round += 1) {
    at = plus(at, stand.away, slideMm(moved(body, at), stand, rest.gapMm));
    at = plus(at, stand.up, liftMm(moved(body, at), floors, stand));
  }
  return { xMm: at.xMm, yMm: at.yMm, thetaRad, zMm: 0 };
}

function moved(body: PolygonMm, by: PointMm): PolygonMm {
  return body.map((corner) => plus(corner, by));
}

/** A wall nearly along the floor is not something to push against: sine of about 3 degrees. */
const FACING = 0.05;
const SLIDE_STEPS = 400;
const SLIDE_SLACK_MM = 1e-9;

/**
 * How far to slide away from the back. First clear of the lines of all back walls, which is safe; then nearer by what
 * the distance leaves over the gap: a body moved by d comes nearer by no more than d, so it never goes past.
 */
function slideMm(body: PolygonMm, { backs, away }: Stand, gapMm: number): number {
  const facing = backs
    .map((back) => ({ back, inward: outwardNormal(back.to, back.from) }))
    .filter(({ inward }) => dot(away, inward) > FACING);
  if (facing.length === 0) return 0;
  const safeMm = Math.max(
    ...facing.map(({ back, inward }) => {
      const nearestMm = Math.min(...body.map((corner) => dot(minus(corner, back.from), inward)));
      return (gapMm - nearestMm) / dot(away, inward);
    }),
  );
  const reachMm = Math.max(
    ...backs.flatMap(({ from, to }) =>
      body.map((at) => lengthOf(minus(at, from)) + lengthOf(minus(to, from))),
    ),
  );
  let slid = safeMm;
  for (let step = 0; step < SLIDE_STEPS; step += 1) {
    const here = moved(body, plus({ xMm: 0, yMm: 0 }, away, slid));
    const spareMm = Math.min(...backs.map((back) => wallClearance(here, back).clearanceMm)) - gapMm;
    if (spareMm <= SLIDE_SLACK_MM) return slid;
    slid -= spareMm;
    if (safeMm - slid > reachMm) return safeMm;
  }
  return slid;
}

/** How far to lift (or let down) so that the body just stands on whatever floor is under it. */
function liftMm(body: PolygonMm, floors: readonly Segment[], { away, up }: Stand): number {
  const local = (at: PointMm): PointMm => ({ xMm: dot(at, away), yMm: dot(at, up) });
  const bodyEdges = edgesOf(body.map(local));
  const floorEdges = floors.map(({ from, to }) => ({ from: local(from), to: local(to) }));
  const lifts = floorEdges.flatMap((floor) => [
    ...[floor.from, floor.to].flatMap((at) => heightsAt(bodyEdges, at.xMm).map((yMm) => at.yMm - yMm)),
    ...bodyEdges.flatMap(({ from }) => heightsAt([floor], from.xMm).map((yMm) => yMm - from.yMm)),
  ]);
  // Of all crossings at one place the lowest of the body counts, and that one asks for the most lift.
  return lifts.length === 0 ? 0 : Math.max(...lifts);
}

function heightsAt(edges: readonly Segment[], xMm: number): number[] {
  return edges.flatMap(({ from, to }) => {
    if (xMm < Math.min(from.xMm, to.xMm) || xMm > Math.max(from.xMm, to.xMm)) return [];
    const alongMm = to.xMm - from.xMm;
    if (alongMm === 0) return [from.yMm, to.yMm];
    return [from.yMm + ((xMm - from.xMm) / alongMm) * (to.yMm - from.yMm)];
  });
}
