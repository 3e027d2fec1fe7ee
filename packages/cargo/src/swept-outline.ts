// What a part sweeps as it turns about a pin: hinge arms, struts, folding seat backs. For each direction from the pin: how
// far the part reaches there at any time of the swing, and how near. Between the two all counts as swept, so the outline
// is one simple polygon that may claim a little too much room and never too little.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { closestOnSegment } from './plane/distance.ts';
import { edgesOf, type Segment } from './plane/edges.ts';
import { counterClockwise, holds } from './plane/polygon.ts';
import { cross, lengthOf, minus, plus } from './plane/vector.ts';

export type Swing = {
  readonly pivot: PointMm;
  /** From where the outline was taken; counter-clockwise above 0. */
  readonly fromRad: number;
  readonly toRad: number;
};

const TURN = 2 * Math.PI;
/** Reach is kept by half degrees and drawn every three. */
const BINS = 720;
const BIN_RAD = TURN / BINS;
const DRAWN_RAD = (3 * Math.PI) / 180;
/** A pin this near the outline is on it, mm. */
const ON_PIN_MM = 1e-6;
/** A pin is at least this thick, mm: a part that comes nearer turns on it, and what turns on it keeps it covered. */
const PIN_RADIUS_MM = 2;
/** An edge that turns the line of sight by less runs along it, radians. */
const ALONG_SIGHT_RAD = 1e-9;

/** Counter-clockwise; the outline itself where nothing turns. */
export function sweptOutline(polygon: PolygonMm, { pivot, fromRad, toRad }: Swing): PolygonMm {
  const own = counterClockwise(polygon);
  const reach = reachOf(own, pivot);
  const [low, high] = spanOf(own, pivot, reach);
  if (toRad - fromRad <= 0) return own.map((at) => turnedAbout(at, pivot, fromRad));
  const isRound = high - low + toRad - fromRad >= TURN - BIN_RAD;
  const [start, spanRad] = isRound ? [0, TURN] : [low + fromRad, high - low + toRad - fromRad];
  const steps = Math.ceil(spanRad / DRAWN_RAD);
  const step = spanRad / steps;
  const outer: PointMm[] = [];
  const inner: PointMm[] = [];
  for (let i = 0; i < steps + (isRound ? 0 : 1); i += 1) {
    const angle = start + i * step;
    const { nearMm, farMm } = within(reach, angle - step - toRad, angle + step - fromRad);
    // Straight from one to the next: drawn out so that the arc between stays inside.
    outer.push(towards(pivot, angle, farMm / Math.cos(step / 2)));
    inner.push(towards(pivot, angle, nearMm));
  }
  if (isRound) return outer;
  return reach.holdsPin ? [pivot, ...outer] : [...outer, ...inner.reverse()];
}

type Reach = {
  /** By direction, mm; infinite and 0 where the part is not. */
  readonly near: Float64Array;
  readonly far: Float64Array;
  readonly holdsPin: boolean;
};

function reachOf(polygon: PolygonMm, pivot: PointMm): Reach {
  const near = new Float64Array(BINS).fill(Number.POSITIVE_INFINITY);
  const far = new Float64Array(BINS);
  const awayMm = (edge: Segment) => lengthOf(minus(closestOnSegment(edge, pivot), pivot));
  const whole = edgesOf(polygon);
  // An edge through the pin is seen in two directions.
  const edges = whole.flatMap((edge) =>
    awayMm(edge) < ON_PIN_MM
      ? [
          { from: edge.from, to: pivot },
          { from: pivot, to: edge.to },
        ]
      : [edge],
  );
  for (const { from, to } of edges) {
    const [a, b] = [minus(from, pivot), minus(to, pivot)];
    const [first, turn] = [directionOf(lengthOf(a) < ON_PIN_MM ? b : a), turnBetween(a, b)];
    const low = Math.floor(Math.min(first, first + turn) / BIN_RAD);
    const high = Math.floor(Math.max(first, first + turn) / BIN_RAD);
    for (let bin = low; bin <= high; bin += 1) {
      const part = Math.abs(turn) < ALONG_SIGHT_RAD ? { from: a, to: b } : withinBin(a, b, bin);
      const at = wrapped(bin);
      const nearMm = lengthOf(closestOnSegment(part, { xMm: 0, yMm: 0 }));
      near[at] = Math.min(near[at] ?? nearMm, nearMm);
      far[at] = Math.max(far[at] ?? 0, lengthOf(part.from), lengthOf(part.to));
    }
  }
  return { near, far, holdsPin: holds(polygon, pivot) || whole.some((edge) => awayMm(edge) < PIN_RADIUS_MM) };
}

/** The part of an edge that is seen from the pin within one bin. */
function withinBin(a: PointMm, b: PointMm, bin: number) {
  const along = minus(b, a);
  const shares = [bin, bin + 1].map((border) => {
    const ray = { xMm: Math.cos(border * BIN_RAD), yMm: Math.sin(border * BIN_RAD) };
    const slope = cross(ray, along);
    return slope === 0 ? 0 : Math.min(1, Math.max(0, -cross(ray, a) / slope));
  });
  return { from: plus(a, along, Math.min(...shares)), to: plus(a, along, Math.max(...shares)) };
}

/** First and last direction of the part, the last above the first. */
function spanOf(polygon: PolygonMm, pivot: PointMm, { far }: Reach): readonly [number, number] {
  let [gapEnd, gap, run] = [0, 0, 0];
  for (let i = 0; i < 2 * BINS; i += 1) {
    run = (far[i % BINS] ?? 0) > 0 ? 0 : run + 1;
    if (run > gap && run <= BINS) [gapEnd, gap] = [i, run];
  }
  if (gap === 0) return [0, TURN];
  const middle = (gapEnd + 1 - gap / 2) * BIN_RAD;
  const past = polygon
    .map((at) => minus(at, pivot))
    .filter((at) => lengthOf(at) > ON_PIN_MM)
    .map((at) => (((directionOf(at) - middle) % TURN) + TURN) % TURN);
  return [middle + Math.min(...past), middle + Math.max(...past)];
}

/** Nearest and farthest in a range of directions of the part as it was taken. */
function within({ near, far, holdsPin }: Reach, fromRad: number, toRad: number) {
  let [nearMm, farMm] = [Number.POSITIVE_INFINITY, 0];
  const low = Math.floor(fromRad / BIN_RAD);
  const high = Math.min(low + BINS, Math.floor(toRad / BIN_RAD));
  for (let bin = low; bin <= high; bin += 1) {
    nearMm = Math.min(nearMm, near[wrapped(bin)] ?? nearMm);
    farMm = Math.max(farMm, far[wrapped(bin)] ?? 0);
  }
  if (holdsPin) return { nearMm: 0, farMm: Math.max(PIN_RADIUS_MM, farMm) };
  return { nearMm: nearMm === Number.POSITIVE_INFINITY ? 0 : nearMm, farMm };
}

function wrapped(bin: number): number {
  return ((bin % BINS) + BINS) % BINS;
}

function directionOf({ xMm, yMm }: PointMm): number {
  return Math.atan2(yMm, xMm);
}

/** By how much the line of sight turns along an edge, at most half a turn either way. */
function turnBetween(a: PointMm, b: PointMm): number {
  if (lengthOf(a) < ON_PIN_MM || lengthOf(b) < ON_PIN_MM) return 0;
  return Math.atan2(cross(a, b), a.xMm * b.xMm + a.yMm * b.yMm);
}

function towards(pivot: PointMm, angle: number, byMm: number): PointMm {
  return plus(pivot, { xMm: Math.cos(angle), yMm: Math.sin(angle) }, byMm);
}

function turnedAbout(at: PointMm, pivot: PointMm, byRad: number): PointMm {
  const from = minus(at, pivot);
  return towards(pivot, directionOf(from) + byRad, lengthOf(from));
}
