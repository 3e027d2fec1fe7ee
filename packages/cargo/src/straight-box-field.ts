// Everything a straight-sided box on the floor must stay clear of, in the floor's own frame (u along the floor away
// from the back, w up from it), as a flat list of segments with the distance wanted to each. Written for speed: the
// search asks it thousands of times.
import type { CavityResult, ClearanceSettings } from '@gusset/contracts/cargo';
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { countsInPlace } from './place-box.ts';
import { edgesOf, type Segment } from './plane/edges.ts';
import { holds } from './plane/polygon.ts';
import { dot, minus } from './plane/vector.ts';
import type { Stand } from './rest-against.ts';
import { wantedToObstruction, wantedToWall } from './wanted-clearance.ts';

/** A box may stand on a floor but not in one, mm. */
const TOUCH_MM = 1e-3;

/** Back bottom, front bottom, front top, back top. */
export type Quad = readonly [PointMm, PointMm, PointMm, PointMm];

export type Field = {
  /** x1, y1, x2, y2, distance wanted: five figures a segment. */
  readonly segments: readonly number[];
  /** Solids that a box could lie wholly inside of. */
  readonly solids: readonly PolygonMm[];
  readonly cavity: PolygonMm;
  readonly farMm: number;
  readonly topMm: number;
};

export function fieldFor(
  cavity: CavityResult,
  stand: Stand,
  widthMm: number,
  wanted: ClearanceSettings,
): Field {
  const local = (at: PointMm): PointMm => {
    const from = minus(at, stand.floor.from);
    return { xMm: dot(from, stand.away), yMm: dot(from, stand.up) };
  };
  const corners = cavity.polygon.map(local);
  const segments = edgesOf(corners).flatMap((edge, index) => {
    const wall = cavity.walls[index];
    if (wall === undefined || (wall.role === 'floor' && liesBelow(edge))) return [];
    const needMm = wall.role === 'floor' ? TOUCH_MM : wantedToWall(wall, wanted) + wall.plusMinusMm;
    return flat(edge, Math.max(needMm, TOUCH_MM));
  });
  const solids: PolygonMm[] = [];
  for (const prism of prismsOf(cavity, wanted)) {
    const needMm = needInSection(prism, widthMm);
    if (needMm === null) continue;
    const polygon = prism.polygon.map(local);
    solids.push(polygon);
    segments.push(...edgesOf(polygon).flatMap((edge) => flat(edge, needMm)));
  }
  return {
    segments,
    solids,
    cavity: corners,
    farMm: Math.max(...corners.map((it) => it.xMm)),
    topMm: Math.max(...corners.map((it) => it.yMm)),
  };
}

/** The floor it stands on, and any floor at its level or lower. */
function liesBelow({ from, to }: Segment): boolean {
  return Math.max(from.yMm, to.yMm) <= TOUCH_MM / 2;
}

function flat({ from, to }: Segment, needMm: number): number[] {
  return [from.xMm, from.yMm, to.xMm, to.yMm, needMm];
}

export type WantedPrism = {
  readonly kind: 'sides' | 'obstruction';
  readonly polygon: PolygonMm;
  /** Nearest the centre line: how far off it the solid begins; null where it lies across it. */
  readonly offCentreMm: number | null;
  readonly wantedMm: number;
  readonly sectionPlusMinusMm: number;
  readonly acrossPlusMinusMm: number;
};

/** Sides, obstructions in place and keep-free zones, for a box centred across the car. */
export function prismsOf(cavity: CavityResult, wanted: ClearanceSettings): WantedPrism[] {
  const sides = cavity.widthSlabs.map((slab) => ({
    kind: 'sides' as const,
    polygon: slab.polygon,
    offCentreMm: Math.min(-slab.zMinMm, slab.zMaxMm),
    wantedMm: wanted.sidesMm,
    sectionPlusMinusMm: slab.sectionPlusMinusMm,
    acrossPlusMinusMm: slab.sidePlusMinusMm,
  }));
  const solid = (
    it: { polygon: PolygonMm; zMinMm: number; zMaxMm: number; plusMinusMm: number },
    wantedMm: number,
  ): WantedPrism => ({
    kind: 'obstruction',
    polygon: it.polygon,
    offCentreMm: it.zMinMm > 0 ? it.zMinMm : it.zMaxMm < 0 ? -it.zMaxMm : null,
    wantedMm,
    sectionPlusMinusMm: it.plusMinusMm,
    acrossPlusMinusMm: it.plusMinusMm,
  });
  return [
    ...sides,
    ...cavity.obstructions.filter(countsInPlace).map((it) => solid(it, wantedToObstruction(it, wanted))),
    ...cavity.keepFree.map((it) => solid(it, wanted.keepFreeMm)),
  ];
}

/** Distance to keep in the section, after what the gap across already gives; null = the gap across is enough. */
function needInSection(prism: WantedPrism, widthMm: number): number | null {
  const fullMm = Math.max(TOUCH_MM, prism.wantedMm + prism.sectionPlusMinusMm);
  if (prism.offCentreMm === null) return fullMm;
  const gapMm = prism.offCentreMm - widthMm / 2 - prism.acrossPlusMinusMm;
  if (gapMm >= prism.wantedMm - WIDTH_SLACK_MM) return null;
  if (gapMm <= 0) return fullMm;
  return prism.sectionPlusMinusMm + Math.sqrt(prism.wantedMm ** 2 - gapMm ** 2);
}

/** Widths are made from these very gaps: rounding only, mm. */
const WIDTH_SLACK_MM = 1e-9;

/** The quad keeps its distance to everything and lies in none of it. */
export function isClear({ segments, solids }: Field, quad: Quad): boolean {
  const [a, b, c, d] = quad;
  for (let i = 0; i < segments.length; i += 5) {
    const x1 = segments[i] ?? 0;
    const y1 = segments[i + 1] ?? 0;
    const x2 = segments[i + 2] ?? 0;
    const y2 = segments[i + 3] ?? 0;
    const need = segments[i + 4] ?? 0;
    const near = need * need * (1 - 1e-12);
    if (distanceSquared(a, b, x1, y1, x2, y2) < near) return false;
    if (distanceSquared(b, c, x1, y1, x2, y2) < near) return false;
    if (distanceSquared(c, d, x1, y1, x2, y2) < near) return false;
    if (distanceSquared(d, a, x1, y1, x2, y2) < near) return false;
    if (inQuad(quad, x1, y1)) return false;
  }
  return !solids.some((solid) => holds(solid, a));
}

/** The line lies in the cavity and keeps its distance to everything. */
export function lineIsClear({ segments, solids, cavity }: Field, from: PointMm, to: PointMm): boolean {
  if (!holds(cavity, { xMm: (from.xMm + to.xMm) / 2, yMm: (from.yMm + to.yMm) / 2 })) return false;
  for (let i = 0; i < segments.length; i += 5) {
    const need = segments[i + 4] ?? 0;
    const apart = distanceSquared(
      from,
      to,
      segments[i] ?? 0,
      segments[i + 1] ?? 0,
      segments[i + 2] ?? 0,
      segments[i + 3] ?? 0,
    );
    if (apart < need * need * (1 - 1e-12)) return false;
  }
  return !solids.some((solid) => holds(solid, from));
}

function inQuad(quad: Quad, x: number, y: number): boolean {
  return edgesOf(quad).every(
    ({ from, to }) => (to.xMm - from.xMm) * (y - from.yMm) - (to.yMm - from.yMm) * (x - from.xMm) > 0,
  );
}

/** Squared distance between the segments from-to and 1-2; 0 where they cross. */
function distanceSquared(from: PointMm, to: PointMm, x1: number, y1: number, x2: number, y2: number): number {
  const ax = to.xMm - from.xMm;
  const ay = to.yMm - from.yMm;
  const bx = x2 - x1;
  const by = y2 - y1;
  const area = ax * by - ay * bx;
  if (area !== 0) {
    const onA = ((x1 - from.xMm) * by - (y1 - from.yMm) * bx) / area;
    const onB = ((x1 - from.xMm) * ay - (y1 - from.yMm) * ax) / area;
    if (onA >= 0 && onA <= 1 && onB >= 0 && onB <= 1) return 0;
  }
  return Math.min(
    pointSquared(from.xMm, from.yMm, x1, y1, bx, by),
    pointSquared(to.xMm, to.yMm, x1, y1, bx, by),
    pointSquared(x1, y1, from.xMm, from.yMm, ax, ay),
    pointSquared(x2, y2, from.xMm, from.yMm, ax, ay),
  );
}

function pointSquared(px: number, py: number, x: number, y: number, dx: number, dy: number): number {
  const lengthSquared = dx * dx + dy * dy;
  const raw = lengthSquared === 0 ? 0 : ((px - x) * dx + (py - y) * dy) / lengthSquared;
  const share = Math.min(1, Math.max(0, raw));
  const offX = px - x - share * dx;
  const offY = py - y - share * dy;
  return offX * offX + offY * offY;
}
