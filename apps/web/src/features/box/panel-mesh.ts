// Triangles of a panel as a body: both faces with the holes that go right through, and the walls between them.
import type { PanelBody } from '@gusset/contracts/enclosure';
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import type { Panel } from '@gusset/contracts/panel';
import { ShapeUtils, Vector2 } from 'three';

const CIRCLE_CORNERS = 40;
/** Screw holes are dots at this size, and three hundred triangles each. */
const SMALLEST_HOLE_MM = 10;

export type PanelMesh = {
  /** x, y, z of each corner of each triangle in the panel's own frame, mm. */
  readonly positions: Float32Array;
};

export function panelMesh(body: PanelBody, panel: Panel | undefined): PanelMesh {
  const holes = (panel?.holes ?? []).filter(isShown).map(holeRing);
  const triangles: number[] = [];
  cap(triangles, body.outerFace, holes, 0, true);
  cap(triangles, body.innerFace, holes, -body.thicknessMm, false);
  if (body.outerFace.length === body.innerFace.length) {
    skirt(triangles, body.outerFace, body.innerFace, body.thicknessMm);
  }
  for (const hole of holes) skirt(triangles, [...hole].reverse(), [...hole].reverse(), body.thicknessMm);
  return { positions: new Float32Array(triangles) };
}

/** Goes right through, and is large enough to see. */
function isShown(hole: Panel['holes'][number]): boolean {
  const acrossMm = hole.shape === 'circle' ? hole.diameterMm : Math.min(hole.widthMm, hole.heightMm);
  return hole.depthMm === null && acrossMm >= SMALLEST_HOLE_MM;
}

function holeRing(hole: Panel['holes'][number]): PolygonMm {
  const { centreXMm: x, centreYMm: y } = hole;
  if (hole.shape === 'rectangle') {
    const [w, h] = [hole.widthMm / 2, hole.heightMm / 2];
    return [
      { xMm: x - w, yMm: y - h },
      { xMm: x + w, yMm: y - h },
      { xMm: x + w, yMm: y + h },
      { xMm: x - w, yMm: y + h },
    ];
  }
  return Array.from({ length: CIRCLE_CORNERS }, (_, index) => {
    const turn = (index * 2 * Math.PI) / CIRCLE_CORNERS;
    return {
      xMm: x + (Math.cos(turn) * hole.diameterMm) / 2,
      yMm: y + (Math.sin(turn) * hole.diameterMm) / 2,
    };
  });
}

const flat = (ring: PolygonMm) => ring.map(({ xMm, yMm }) => new Vector2(xMm, yMm));

/** One face with its holes; the far one is wound the other way, so that it looks away. */
function cap(into: number[], ring: PolygonMm, holes: readonly PolygonMm[], z: number, looksUp: boolean) {
  const points: readonly PointMm[] = [...ring, ...holes.flat()];
  for (const triangle of ShapeUtils.triangulateShape(flat(ring), holes.map(flat))) {
    const corners = looksUp ? triangle : [...triangle].reverse();
    for (const corner of corners) {
      const point = points[corner];
      if (point !== undefined) into.push(point.xMm, point.yMm, z);
    }
  }
}

/** The wall between the outlines of both faces, seen from outside. */
function skirt(into: number[], outer: PolygonMm, inner: PolygonMm, thicknessMm: number) {
  outer.forEach((a, index) => {
    const next = (index + 1) % outer.length;
    const [b, c, d] = [outer[next], inner[next], inner[index]];
    if (b === undefined || c === undefined || d === undefined) return;
    into.push(a.xMm, a.yMm, 0, d.xMm, d.yMm, -thicknessMm, c.xMm, c.yMm, -thicknessMm);
    into.push(a.xMm, a.yMm, 0, c.xMm, c.yMm, -thicknessMm, b.xMm, b.yMm, 0);
  });
}
