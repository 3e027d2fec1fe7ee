// A polygon with each of its edges moved square to itself by a distance of its own.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { edgesOf } from './edges.ts';
import { cross, dot, lengthOf, minus, outwardNormal, plus, unit } from './vector.ts';

/** Where two moved edges meet: one point, or two where their lines do not meet nearby. */
export type Joint = {
  /** Index of the edge that ends here, and of the one that begins. */
  readonly before: number;
  readonly after: number;
  readonly points: readonly PointMm[];
};

/** Edges that turn by less than this are in line, radians: their lines meet too far away to be a corner. */
const IN_LINE_RAD = 0.02;
/** A corner that moving would draw out to a spike is cut off at this many times the distance. */
const SPIKE = 3;
/** Two corners this near are one, mm: a tape cannot tell them apart, and a check for crossing edges would trip. */
const ONE_CORNER_MM = 0.1;

type MovedEdge = {
  readonly edge: number;
  readonly from: PointMm;
  readonly to: PointMm;
  readonly along: PointMm;
  readonly byMm: number;
};

/**
 * `inwardMm[i]` moves edge i of a counter-clockwise polygon inward (below 0 outward), mm. Edges that the others swallow
 * are left out, except `keeps`. Null where nothing is left; where far walls meet, what comes out may cross itself.
 */
export function movedEdges(
  polygon: PolygonMm,
  inwardMm: readonly number[],
  keeps: number | null = null,
): readonly Joint[] | null {
  let edges = edgesOf(polygon).map(({ from, to }, edge): MovedEdge => {
    const byMm = inwardMm[edge] ?? 0;
    const outward = outwardNormal(from, to);
    const along = unit(minus(to, from));
    return { edge, byMm, along, from: plus(from, outward, -byMm), to: plus(to, outward, -byMm) };
  });
  while (edges.length >= 3) {
    const joints = edges.map((edge, i) =>
      jointOf(edges[(i + edges.length - 1) % edges.length] ?? edge, edge),
    );
    const swallowed = mostTurnedRound(edges, joints, keeps);
    if (swallowed === null) return joints;
    edges = edges.filter(({ edge }) => edge !== swallowed);
  }
  return null;
}

/** The corners of what `movedEdges` answers, those that fell together once. */
export function cornersAt(joints: readonly Joint[]): PolygonMm {
  return distinctCorners(joints.flatMap(({ points }) => points));
}

export function distinctCorners(corners: readonly PointMm[]): PolygonMm {
  return corners.filter(
    (at, i) => lengthOf(minus(at, corners[(i + 1) % corners.length] ?? at)) > ONE_CORNER_MM,
  );
}

function jointOf(before: MovedEdge, after: MovedEdge): Joint {
  const joint = { before: before.edge, after: after.edge };
  const turn = cross(before.along, after.along);
  const apart = minus(after.from, before.to);
  if (Math.abs(turn) < IN_LINE_RAD) {
    const one = lengthOf(apart) < ONE_CORNER_MM;
    return { ...joint, points: one ? [after.from] : [before.to, after.from] };
  }
  const beyondMm = cross(apart, after.along) / turn;
  const limitMm = SPIKE * Math.max(Math.abs(before.byMm), Math.abs(after.byMm));
  const spikes = dot(before.along, after.along) < 0 && beyondMm > limitMm + ONE_CORNER_MM;
  if (!spikes) return { ...joint, points: [plus(before.to, before.along, beyondMm)] };
  return {
    ...joint,
    points: [plus(before.to, before.along, limitMm), plus(after.from, after.along, -limitMm)],
  };
}

/** The edge that runs backward the farthest between its two corners. */
function mostTurnedRound(
  edges: readonly MovedEdge[],
  joints: readonly Joint[],
  keeps: number | null,
): number | null {
  let worst: { readonly edge: number; readonly backMm: number } | null = null;
  for (const [i, { edge, along }] of edges.entries()) {
    const start = joints[i]?.points.at(-1);
    const end = joints[(i + 1) % edges.length]?.points[0];
    if (start === undefined || end === undefined || edge === keeps) continue;
    const backMm = -dot(minus(end, start), along);
    if (backMm > ONE_CORNER_MM && (worst === null || backMm > worst.backMm)) worst = { edge, backMm };
  }
  return worst === null ? null : worst.edge;
}
