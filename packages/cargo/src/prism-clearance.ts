// Clearance between a box and anything else that is a section shape run across the width: both are extrusions along
// z, so the distance in space is the hypotenuse of the distance in the section and the gap across.
import type { SpacePoint } from '@gusset/contracts/cargo';
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { closestBetweenOutlines } from './plane/distance.ts';
import { insidesOverlap, overlapDepth } from './plane/overlap.ts';

export type Prism = { readonly polygon: PolygonMm; readonly zMinMm: number; readonly zMaxMm: number };

export type Uncertainty = { readonly sectionMm: number; readonly acrossMm: number };

export type PrismClearance = {
  /** Negative = the least shift that takes them apart. */
  readonly clearanceMm: number;
  /** The solid nearer by its whole uncertainty, in the section and across. */
  readonly worstCaseMm: number;
  readonly at: readonly [SpacePoint, SpacePoint];
};

/** From separation in the section and across (negative = overlap): apart when apart in either. */
export function separationMm(sectionMm: number, acrossMm: number): number {
  if (sectionMm <= 0 && acrossMm <= 0) return Math.max(sectionMm, acrossMm);
  return Math.hypot(Math.max(0, sectionMm), Math.max(0, acrossMm));
}

type InSection = { readonly apartMm: number; readonly a: PointMm; readonly b: PointMm };

function inSection(body: PolygonMm, solid: PolygonMm): InSection {
  if (insidesOverlap(body, solid)) {
    const { depthMm, a, b } = overlapDepth(body, solid);
    return { apartMm: -depthMm, a, b };
  }
  const { distanceMm, a, b } = closestBetweenOutlines(body, solid);
  return { apartMm: distanceMm, a, b };
}

type Across = { readonly gapMm: number; readonly bodyZMm: number; readonly solidZMm: number };

/** Gap between two intervals; negative = how far one must shift to leave the other. */
function across(body: Prism, solid: Prism): Across {
  const toRight = solid.zMinMm - body.zMaxMm;
  const toLeft = body.zMinMm - solid.zMaxMm;
  if (toRight >= toLeft) return { gapMm: toRight, bodyZMm: body.zMaxMm, solidZMm: solid.zMinMm };
  return { gapMm: toLeft, bodyZMm: body.zMinMm, solidZMm: solid.zMaxMm };
}

export function prismClearance(body: Prism, solid: Prism, uncertainty: Uncertainty): PrismClearance {
  const section = inSection(body.polygon, solid.polygon);
  const side = across(body, solid);
  return {
    clearanceMm: separationMm(section.apartMm, side.gapMm),
    worstCaseMm: separationMm(section.apartMm - uncertainty.sectionMm, side.gapMm - uncertainty.acrossMm),
    at: closestPair(
      section,
      side,
      (Math.max(body.zMinMm, solid.zMinMm) + Math.min(body.zMaxMm, solid.zMaxMm)) / 2,
    ),
  };
}

/** Across where only the gap across counts, in the section where only that one counts, else from edge to edge. */
function closestPair(section: InSection, side: Across, sharedZMm: number): readonly [SpacePoint, SpacePoint] {
  const overlapsInSection = section.apartMm < 0;
  const overlapsAcross = side.gapMm < 0;
  const sideways = overlapsInSection && (!overlapsAcross || side.gapMm >= section.apartMm);
  if (sideways) return [at(section.a, side.bodyZMm), at(section.a, side.solidZMm)];
  if (overlapsAcross) return [at(section.a, sharedZMm), at(section.b, sharedZMm)];
  return [at(section.a, side.bodyZMm), at(section.b, side.solidZMm)];
}

function at(point: PointMm, zMm: number): SpacePoint {
  return { ...point, zMm };
}
