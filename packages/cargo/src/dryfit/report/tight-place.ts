// Where on a way the body is nearest to anything solid, or deepest in it, and what it is near there: by wall, by
// obstruction, and by the part of the box as one names it where it stands.
import type { CavityResult } from '@gusset/contracts/cargo';
import type {
  BodyPart,
  ContactSurface,
  DryFitCase,
  DryFitContact,
  TightPlace,
} from '@gusset/contracts/dryfit';
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import { closestBetweenOutlines, closestOnSegment } from '../../plane/distance.ts';
import { edgesOf } from '../../plane/edges.ts';
import { depthBeyondWall, insidesOverlap, meetsInside, overlapDepth } from '../../plane/overlap.ts';
import { boundsOf, posed } from '../../plane/polygon.ts';
import { lengthOf, minus, plus } from '../../plane/vector.ts';
import { between, solidsAbreast } from '../check-motion.ts';

/** Contacts that a report names. */
const MOST_CONTACTS = 4;
/** Poses between two of a path are looked at this far apart, mm of travel. */
const LOOK_EVERY_MM = 8;
/** Less far than this from the jamb is the jamb itself, mm. */
const AT_END_MM = 1;
/** A body this near to a corner of its own touches with the corner, mm. */
const AT_CORNER_MM = 0.5;

/** Null where the path is empty. `isJam`: looks for the deepest overlap; else for the nearest, its first leg left out. */
export function tightestOn(
  cavity: CavityResult,
  input: DryFitCase,
  path: readonly Pose[],
  isJam: boolean,
): TightPlace | null {
  let worst: {
    readonly pose: Pose;
    readonly contacts: readonly DryFitContact[];
    readonly gapMm: number;
  } | null = null;
  for (const pose of looks(path.length > 2 && !isJam ? path.slice(1) : path)) {
    const contacts = contactsAt(cavity, input, pose);
    const gapMm = contacts[0]?.gapMm ?? Number.POSITIVE_INFINITY;
    if (worst === null || gapMm < worst.gapMm) worst = { pose, contacts, gapMm };
  }
  if (worst === null) return null;
  return {
    pose: worst.pose,
    tiltRad: worst.pose.thetaRad - input.final.thetaRad,
    contacts: worst.contacts.slice(0, MOST_CONTACTS),
  };
}

function looks(path: readonly Pose[]): Pose[] {
  return path.flatMap((from, i) => {
    const to = path[i + 1];
    if (to === undefined) return [from];
    const travelMm = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
    const parts = Math.max(1, Math.ceil(travelMm / LOOK_EVERY_MM));
    return Array.from({ length: parts }, (_, part) => between(from, to, part / parts));
  });
}

/** One contact a surface, nearest (or deepest) first. */
export function contactsAt(cavity: CavityResult, input: DryFitCase, pose: Pose): DryFitContact[] {
  const body = posed(input.body.profile, pose);
  const contacts = edgesOf(input.space).map((wall): DryFitContact => {
    const within = meetsInside(body, wall);
    const { a, b, distanceMm } = within ? deepest(body, wall) : nearest(body, [wall.from, wall.to]);
    const surface = surfaceOfEdge(cavity, input, wall.from, wall.to, b);
    return { surface, part: partAt(input, pose, a), gapMm: distanceMm, onBodyAt: a, onSurfaceAt: b };
  });
  const abreast = solidsAbreast(input, pose, pose, -1e-6)?.obstacles ?? [];
  for (const { name, polygon } of input.obstacles) {
    if (!abreast.includes(polygon)) continue;
    const overlap = insidesOverlap(body, polygon) ? overlapDepth(body, polygon) : null;
    const found =
      overlap === null
        ? closestBetweenOutlines(body, polygon)
        : { a: overlap.a, b: overlap.b, distanceMm: -overlap.depthMm };
    contacts.push({
      surface: surfaceOfObstacle(cavity, name),
      part: partAt(input, pose, found.a),
      gapMm: found.distanceMm,
      onBodyAt: found.a,
      onSurfaceAt: found.b,
    });
  }
  const nearestOf = new Map<string, DryFitContact>();
  for (const contact of contacts.sort((a, b) => a.gapMm - b.gapMm)) {
    const key = `${contact.surface.type} ${contact.surface.id ?? contact.surface.name}`;
    if (!nearestOf.has(key)) nearestOf.set(key, contact);
  }
  return [...nearestOf.values()];
}

function nearest(body: PolygonMm, wall: readonly [PointMm, PointMm]) {
  return closestBetweenOutlines(body, wall);
}

function deepest(body: PolygonMm, wall: { readonly from: PointMm; readonly to: PointMm }) {
  const { a, b, depthMm } = depthBeyondWall(body, wall);
  return { a, b, distanceMm: -depthMm };
}

function surfaceOfEdge(
  cavity: CavityResult,
  { opening, outside }: DryFitCase,
  from: PointMm,
  to: PointMm,
  at: PointMm,
): ContactSurface {
  const ends = [
    { end: opening.from, name: 'lower end of the opening' },
    { end: opening.to, name: 'upper end of the opening' },
  ].sort((a, b) => lengthOf(minus(at, a.end)) - lengthOf(minus(at, b.end)));
  const end = ends[0];
  if (end !== undefined && lengthOf(minus(at, end.end)) <= AT_END_MM)
    return { type: 'opening-end', id: end.end === opening.from ? 'from' : 'to', name: end.name };
  const middle = plus(from, minus(to, from), 0.5);
  if (edgesOf(outside).some((edge) => lengthOf(minus(middle, closestOnSegment(edge, middle))) < 1e-3))
    return { type: 'beyond', id: null, name: 'bodywork or ground beyond the opening' };
  // By its middle: at a corner two walls are equally near.
  const walls = edgesOf(cavity.polygon)
    .map((edge, i) => ({
      wall: cavity.walls[i],
      offMm: lengthOf(minus(middle, closestOnSegment(edge, middle))),
    }))
    .filter(({ wall }) => wall !== undefined && wall.role !== 'opening')
    .sort((a, b) => a.offMm - b.offMm);
  const wall = walls[0]?.wall;
  return wall === undefined
    ? { type: 'beyond', id: null, name: 'bodywork' }
    : { type: 'wall', id: wall.id, name: wall.name };
}

function surfaceOfObstacle({ obstructions }: CavityResult, name: string): ContactSurface {
  if (name === 'Open lid') return { type: 'lid', id: null, name };
  if (name === 'Bumper') return { type: 'bumper', id: null, name };
  const found = obstructions.find((it) => it.name === name);
  return found === undefined ? { type: 'side', id: null, name } : { type: 'obstruction', id: found.id, name };
}

/** The corner or edge of the profile nearest to a world point, named as it stands in its place. */
function partAt({ body, final, opening }: DryFitCase, pose: Pose, at: PointMm): BodyPart {
  const world = posed(body.profile, pose);
  const corner = leastBy(world, (it) => lengthOf(minus(it, at)));
  const atCorner = corner.value <= AT_CORNER_MM;
  const edge = leastBy(edgesOf(world), (it) => lengthOf(minus(at, closestOnSegment(it, at))));
  const index = atCorner ? corner.index : edge.index;
  const stands = posed(body.profile, final);
  const out = (opening.from.xMm + opening.to.xMm) / 2 >= final.xMm ? 1 : -1;
  return { kind: atCorner ? 'corner' : 'edge', index, place: placeOf(stands, index, atCorner, out) };
}

function placeOf(stands: PolygonMm, index: number, isCorner: boolean, out: number): BodyPart['place'] {
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = boundsOf(stands);
  const from = stands[index] ?? { xMm: xMinMm, yMm: yMinMm };
  const to = stands[(index + 1) % stands.length] ?? from;
  if (isCorner) {
    const upper = from.yMm > (yMinMm + yMaxMm) / 2 ? 'upper' : 'lower';
    return `${upper}-${(from.xMm - (xMinMm + xMaxMm) / 2) * out > 0 ? 'front' : 'back'}`;
  }
  const normal = { xMm: to.yMm - from.yMm, yMm: from.xMm - to.xMm };
  if (Math.abs(normal.yMm) >= Math.abs(normal.xMm)) return normal.yMm > 0 ? 'top' : 'bottom';
  return normal.xMm * out > 0 ? 'front' : 'back';
}

function leastBy<T>(
  items: readonly T[],
  of: (item: T) => number,
): { readonly index: number; readonly value: number } {
  let best = { index: 0, value: Number.POSITIVE_INFINITY };
  for (const [index, item] of items.entries()) {
    const value = of(item);
    if (value < best.value) best = { index, value };
  }
  return best;
}
