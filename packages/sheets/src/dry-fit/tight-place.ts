// Where along its way the box is nearest to the car, or stands deepest in it: which corner, which wall.
import type { CavityResult } from '@gusset/contracts/cargo';
import type { TightPlace } from '@gusset/contracts/dry-fit-sheet';
import type { DryFitObstacle } from '@gusset/contracts/dryfit';
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import { posed } from '@gusset/drawings';

/** Turns and slides are looked at in steps no corner moves farther in, mm. */
const STEP_MM = 8;
/** Nearer than this to an end of the opening it is the edge of the opening that is met, mm. */
const AT_EDGE_MM = 2;

export type Surroundings = {
  readonly cavity: CavityResult;
  /** Cargo space and free ground beyond it, walls as measured. */
  readonly space: PolygonMm;
  readonly obstacles: readonly DryFitObstacle[];
};

type Wall = { readonly name: string; readonly from: PointMm; readonly to: PointMm };
type Met = {
  readonly gapMm: number;
  readonly onBox: PointMm;
  readonly onCar: PointMm;
  readonly name: string;
};

/**
 * Null where there is no way. The place itself and floors are left out: a box rests on its floor, and how it stands there
 * is told beside.
 */
export function tightestOf(
  path: readonly Pose[],
  profile: PolygonMm,
  surroundings: Surroundings,
): TightPlace | null {
  const walls = wallsOf(surroundings);
  const first = path[0];
  if (first === undefined) return null;
  let tightest: { readonly pose: Pose; readonly met: Met } | null = null;
  for (const pose of posesAlong(path, profile)) {
    const met = nearestOf(posed(profile, pose), walls, surroundings.space);
    if (met !== null && (tightest === null || met.gapMm < tightest.met.gapMm)) tightest = { pose, met };
  }
  if (tightest === null) return null;
  const { pose, met } = tightest;
  return {
    pose,
    at: [met.onBox, met.onCar],
    gapMm: met.gapMm,
    wall: wallName(met, surroundings.cavity),
    corner: cornerOf(met.onBox, pose, profile),
    tippedRad: pose.thetaRad - first.thetaRad,
  };
}

function wallsOf({ cavity, obstacles }: Surroundings): Wall[] {
  const { polygon, walls } = cavity;
  const own = walls.flatMap(({ name, role }, index): Wall[] => {
    const [from, to] = [polygon[index], polygon[(index + 1) % polygon.length]];
    return from === undefined || to === undefined || role === 'opening' || role === 'floor'
      ? []
      : [{ name, from, to }];
  });
  const parts = obstacles.flatMap(({ name, polygon: outline }) =>
    outline.map((from, index) => ({ name, from, to: outline[(index + 1) % outline.length] ?? from })),
  );
  return [...own, ...parts];
}

/** Poses every few millimetres, the first left out. */
function posesAlong(path: readonly Pose[], profile: PolygonMm): Pose[] {
  const radiusMm = Math.max(...profile.map(({ xMm, yMm }) => Math.hypot(xMm, yMm)));
  return path.slice(1).flatMap((to, index) => {
    const from = path[index] ?? to;
    const travelMm =
      Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) + radiusMm * Math.abs(to.thetaRad - from.thetaRad);
    const steps = Math.max(1, Math.ceil(travelMm / STEP_MM));
    return Array.from({ length: steps }, (_, step) => poseBetween(from, to, (step + 1) / steps));
  });
}

/** The pose a share of the way along one straight leg. */
export function poseBetween(from: Pose, to: Pose, share: number): Pose {
  const mix = (a: number, b: number) => a + (b - a) * share;
  return {
    xMm: mix(from.xMm, to.xMm),
    yMm: mix(from.yMm, to.yMm),
    thetaRad: mix(from.thetaRad, to.thetaRad),
    zMm: mix(from.zMm, to.zMm),
  };
}

/** The least of all gaps; a corner outside of all that is free stands in the wall that it is nearest to. */
function nearestOf(body: PolygonMm, walls: readonly Wall[], space: PolygonMm): Met | null {
  const met = [
    ...body.flatMap((corner) => {
      const nearest = least(
        walls.map(({ name, from, to }) => metAt(corner, nearestOn(corner, from, to), name)),
      );
      return nearest === null || holds(space, corner) ? [nearest] : [inside(nearest)];
    }),
    ...walls.flatMap(({ name, from, to }) =>
      [from, to].map((end) => {
        const touched = metAt(nearestOnRing(end, body), end, name);
        return holds(body, end) ? inside(touched) : touched;
      }),
    ),
  ];
  return least(met.filter((it) => it !== null));
}

const metAt = (onBox: PointMm, onCar: PointMm, name: string): Met => ({
  gapMm: distance(onBox, onCar),
  onBox,
  onCar,
  name,
});

const inside = (met: Met): Met => ({ ...met, gapMm: -met.gapMm });

function least(all: readonly Met[]): Met | null {
  return all.reduce<Met | null>((best, met) => (best === null || met.gapMm < best.gapMm ? met : best), null);
}

function nearestOnRing(point: PointMm, ring: PolygonMm): PointMm {
  const spots = ring.map((a, index) => nearestOn(point, a, ring[(index + 1) % ring.length] ?? a));
  return spots.reduce((best, spot) => (distance(point, spot) < distance(point, best) ? spot : best));
}

const distance = (a: PointMm, b: PointMm) => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);

function shareOn(at: PointMm, from: PointMm, to: PointMm): number {
  const [x, y] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const squared = x * x + y * y;
  return squared === 0 ? 0 : ((at.xMm - from.xMm) * x + (at.yMm - from.yMm) * y) / squared;
}

function nearestOn(at: PointMm, from: PointMm, to: PointMm): PointMm {
  const share = Math.min(1, Math.max(0, shareOn(at, from, to)));
  return { xMm: from.xMm + (to.xMm - from.xMm) * share, yMm: from.yMm + (to.yMm - from.yMm) * share };
}

/** Even-odd rule. */
function holds(ring: PolygonMm, { xMm, yMm }: PointMm): boolean {
  let isInside = false;
  for (const [index, a] of ring.entries()) {
    const b = ring[(index + 1) % ring.length] ?? a;
    const crosses = a.yMm > yMm !== b.yMm > yMm;
    if (crosses && xMm < a.xMm + ((yMm - a.yMm) / (b.yMm - a.yMm)) * (b.xMm - a.xMm)) isInside = !isInside;
  }
  return isInside;
}

/** The end of the opening, where that is what is met, else the wall or part as the survey names it. */
function wallName({ onCar, name }: Met, { opening }: CavityResult): string {
  const [low, high] =
    opening.from.yMm < opening.to.yMm ? [opening.from, opening.to] : [opening.to, opening.from];
  if (distance(onCar, high) < AT_EDGE_MM) return 'upper edge of the opening';
  return distance(onCar, low) < AT_EDGE_MM ? 'lower edge of the opening' : name;
}

/** Named as the box stands in its place: front is toward the opening. */
function cornerOf(onBox: PointMm, pose: Pose, profile: PolygonMm): TightPlace['corner'] {
  const [cosine, sine] = [Math.cos(pose.thetaRad), Math.sin(pose.thetaRad)];
  const [x, y] = [onBox.xMm - pose.xMm, onBox.yMm - pose.yMm];
  const own = { xMm: x * cosine + y * sine, yMm: y * cosine - x * sine };
  const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return {
    height: own.yMm >= middle(profile.map(({ yMm }) => yMm)) ? 'upper' : 'lower',
    end: own.xMm >= middle(profile.map(({ xMm }) => xMm)) ? 'front' : 'back',
  };
}
