// What can't be asked: outlines that cross themselves, an opening that is no edge, places inside metal.
import type { DryFitCase } from '@gusset/contracts/dryfit';
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { closestOnSegment } from '../plane/distance.ts';
import { edgesOf } from '../plane/edges.ts';
import { boundsOf, signedAreaMm2 } from '../plane/polygon.ts';
import { crossingEdges } from '../plane/simple.ts';
import { lengthOf, minus } from '../plane/vector.ts';

/** An opening may stand off the outlines by no more than rounding. */
export const ON_OUTLINE_MM = 0.5;
/** Area below which an outline is a line, mm². */
const LEAST_AREA_MM2 = 1;

/** Null where the question can be asked. */
export function refuseCase(input: DryFitCase): Refusal | null {
  return (
    refuseOutline('space', input.space) ??
    refuseOutline('outside', input.outside) ??
    refuseOutline('body.profile', input.body.profile) ??
    firstOf(input.obstacles, ({ polygon }, i) => refuseOutline(`obstacles[${i}].polygon`, polygon)) ??
    refuseOpening(input) ??
    refuseRanges(input)
  );
}

function refuseOutline(field: string, polygon: PolygonMm): Refusal | null {
  const crossing = crossingEdges(polygon);
  if (crossing !== null) {
    const [a, b] = crossing;
    const why = `edges ${a + 1} and ${b + 1} cross, touch or fold back on each other`;
    return refuse(field, {
      allowed: 'an outline that does not cross or touch itself',
      got: `edges ${a + 1}, ${b + 1}`,
      why,
    });
  }
  const area = signedAreaMm2(polygon);
  if (area < LEAST_AREA_MM2) {
    const why = area < -LEAST_AREA_MM2 ? 'its corners run clockwise' : 'it encloses nothing';
    return refuse(field, { allowed: 'corners counter-clockwise round an area', got: area, why });
  }
  return null;
}

function refuseOpening({ opening, outside }: DryFitCase): Refusal | null {
  const width = lengthOf(minus(opening.to, opening.from));
  if (width < 1) {
    return refuse('opening', {
      allowed: 'two corners at least 1 mm apart',
      got: width,
      why: 'the opening has no height',
    });
  }
  const middle = {
    xMm: (opening.from.xMm + opening.to.xMm) / 2,
    yMm: (opening.from.yMm + opening.to.yMm) / 2,
  };
  for (const at of [opening.from, middle, opening.to]) {
    const off = offOutline(outside, at);
    if (off <= ON_OUTLINE_MM) continue;
    const why = `the opening is not an edge of the outside: it stands ${off.toFixed(1)} mm off it`;
    return refuse('opening', { allowed: 'an edge that cargo space and outside share', got: off, why });
  }
  return null;
}

function refuseRanges({ zRange, thetaRange, body, space }: DryFitCase): Refusal | null {
  if (zRange !== null && zRange.minMm >= zRange.maxMm) {
    const why = 'the left wall stands right of the right one';
    return refuse('zRange.maxMm', { allowed: `above ${zRange.minMm} mm`, got: zRange.maxMm, why });
  }
  if (thetaRange !== null && thetaRange.minRad >= thetaRange.maxRad) {
    const why = 'nothing lies between the two angles';
    return refuse('thetaRange.maxRad', {
      allowed: `above ${thetaRange.minRad}`,
      got: thetaRange.maxRad,
      why,
    });
  }
  const [own, world] = [boundsOf(body.profile), boundsOf(space)];
  const size = Math.hypot(own.xMaxMm - own.xMinMm, own.yMaxMm - own.yMinMm);
  const room = Math.hypot(world.xMaxMm - world.xMinMm, world.yMaxMm - world.yMinMm);
  if (size <= room) return null;
  const why = 'the body is larger than cargo space and outside together';
  return refuse('body.profile', { allowed: `at most ${Math.floor(room)} mm across`, got: size, why });
}

/** Distance of a point from an outline, mm. */
export function offOutline(polygon: PolygonMm, at: PointMm): number {
  return Math.min(...edgesOf(polygon).map((edge) => lengthOf(minus(at, closestOnSegment(edge, at)))));
}

function firstOf<T>(items: readonly T[], ask: (item: T, index: number) => Refusal | null): Refusal | null {
  for (const [i, item] of items.entries()) {
    const refusal = ask(item, i);
    if (refusal !== null) return refusal;
  }
  return null;
}
