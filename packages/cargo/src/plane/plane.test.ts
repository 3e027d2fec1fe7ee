import type { PolygonMm } from '@gusset/contracts/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closestBetweenOutlines, closestBetweenSegments } from './distance.ts';
import { convexHull, extentAlong, leastCaliperWidth } from './hull.ts';
import { cornersAt, movedEdges } from './offset.ts';
import { depthBeyondWall, insidesOverlap, meetsInside, overlapDepth } from './overlap.ts';
import { clippedTo, holds, insidePoint, posed, rectangle, signedAreaMm2 } from './polygon.ts';
import { crossingEdges } from './simple.ts';
import { lengthOf, minus, plus } from './vector.ts';

const box = (xMinMm: number, yMinMm: number, xMaxMm: number, yMaxMm: number) =>
  rectangle({ xMinMm, yMinMm, xMaxMm, yMaxMm });

// An L: 100 wide, 100 high, 40 thick.
const notched: PolygonMm = [
  { xMm: 0, yMm: 0 },
  { xMm: 100, yMm: 0 },
  { xMm: 100, yMm: 40 },
  { xMm: 40, yMm: 40 },
  { xMm: 40, yMm: 100 },
  { xMm: 0, yMm: 100 },
];

describe('distances', () => {
  it('are 0 where segments cross and the gap where they run beside each other', () => {
    const at = (x1: number, y1: number, x2: number, y2: number) => ({
      from: { xMm: x1, yMm: y1 },
      to: { xMm: x2, yMm: y2 },
    });
    expect(closestBetweenSegments(at(0, 0, 10, 10), at(0, 10, 10, 0)).distanceMm).toBe(0);
    expect(closestBetweenSegments(at(0, 0, 10, 0), at(3, 7, 20, 7)).distanceMm).toBe(7);
    expect(closestBetweenSegments(at(0, 0, 10, 0), at(13, 4, 20, 9)).distanceMm).toBe(5);
  });

  it('are no more than between any two sampled points, and reached at the two named', () => {
    const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
    const segment = fc.record({
      from: fc.record({ xMm: coordinate, yMm: coordinate }),
      to: fc.record({ xMm: coordinate, yMm: coordinate }),
    });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(segment, segment, share, share, (a, b, s, t) => {
        const found = closestBetweenSegments(a, b);
        const pointA = plus(a.from, minus(a.to, a.from), s);
        const pointB = plus(b.from, minus(b.to, b.from), t);
        expect(found.distanceMm).toBeLessThanOrEqual(lengthOf(minus(pointA, pointB)) + 1e-9);
        expect(lengthOf(minus(found.a, found.b))).toBeCloseTo(found.distanceMm, 6);
      }),
      { numRuns: 200 },
    );
  });
});

describe('overlap', () => {
  it('is not touching', () => {
    expect(insidesOverlap(box(0, 0, 10, 10), box(10, 0, 20, 10))).toBe(false);
    expect(insidesOverlap(box(0, 0, 10, 10), box(9, 0, 20, 10))).toBe(true);
  });

  it('sees one inside the other, and one the same as the other', () => {
    expect(insidesOverlap(box(0, 0, 100, 100), box(40, 40, 60, 60))).toBe(true);
    expect(insidesOverlap(box(40, 40, 60, 60), box(0, 0, 100, 100))).toBe(true);
    expect(insidesOverlap(notched, notched)).toBe(true);
  });

  it('leaves the notch of an L free', () => {
    expect(insidesOverlap(notched, box(50, 50, 90, 90))).toBe(false);
    expect(closestBetweenOutlines(notched, box(50, 50, 90, 90)).distanceMm).toBe(10);
  });

  it('is as deep as the least shift that takes rectangles apart', () => {
    expect(overlapDepth(box(0, 0, 10, 10), box(7, 2, 30, 30)).depthMm).toBeCloseTo(3, 9);
    expect(overlapDepth(box(0, 0, 10, 10), box(-5, 9, 30, 30)).depthMm).toBeCloseTo(1, 9);
  });

  it('counts depth beyond a wall only abreast of it', () => {
    const wall = { from: { xMm: 0, yMm: 0 }, to: { xMm: 0, yMm: -50 } };
    const body = box(-20, -80, 30, -10);
    expect(meetsInside(body, wall)).toBe(true);
    expect(depthBeyondWall(body, wall).depthMm).toBe(20);
  });
});

describe('polygons', () => {
  it('tell a bow tie, a fold and a pinch from a simple outline', () => {
    expect(crossingEdges(notched)).toBeNull();
    expect(
      crossingEdges([
        { xMm: 0, yMm: 0 },
        { xMm: 10, yMm: 10 },
        { xMm: 10, yMm: 0 },
        { xMm: 0, yMm: 10 },
      ]),
    ).not.toBeNull();
    expect(
      crossingEdges([
        { xMm: 0, yMm: 0 },
        { xMm: 10, yMm: 0 },
        { xMm: 4, yMm: 0 },
        { xMm: 4, yMm: 10 },
      ]),
    ).not.toBeNull();
  });

  it('keep area and shape when posed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -7, max: 7, noNaN: true }),
        fc.double({ min: -500, max: 500, noNaN: true }),
        (thetaRad, xMm) => {
          const there = posed(notched, { xMm, yMm: 20, thetaRad, zMm: 0 });
          expect(signedAreaMm2(there)).toBeCloseTo(6400, 4);
        },
      ),
    );
  });

  it('have an inside point that is inside', () => {
    const at = insidePoint(notched);
    expect(at !== null && holds(notched, at)).toBe(true);
  });

  it('clip to a half-plane by area', () => {
    const half = clippedTo(box(0, 0, 10, 10), { xMm: 4, yMm: 0 }, { xMm: 1, yMm: 0 });
    expect(signedAreaMm2(half)).toBe(40);
  });
});

describe('segments on one line', () => {
  it('are as far apart as their nearest ends, at any angle', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: Math.PI, noNaN: true }), (turn) => {
        const at = (alongMm: number) => ({ xMm: alongMm * Math.cos(turn), yMm: alongMm * Math.sin(turn) });
        const [first, second] = [
          { from: at(0), to: at(1013.7) },
          { from: at(3204.1), to: at(1721.3) },
        ];
        expect(closestBetweenSegments(first, second).distanceMm).toBeCloseTo(1721.3 - 1013.7, 6);
      }),
    );
  });
});

describe('movedEdges', () => {
  const corners = (inwardMm: readonly number[], polygon: PolygonMm = box(0, 0, 100, 50)) => {
    const joints = movedEdges(polygon, inwardMm);
    return joints === null ? null : cornersAt(joints);
  };

  it('moves each edge by its own distance', () => {
    expect(corners([1, 2, 3, 4])).toEqual(box(4, 1, 98, 47));
    expect(corners([-1, -1, -1, -1])).toEqual(box(-1, -1, 101, 51));
  });

  it('lets the others swallow an edge that they leave no length', () => {
    const clipped = [
      ...box(0, 0, 100, 50).slice(0, 2),
      { xMm: 100, yMm: 45 },
      { xMm: 95, yMm: 50 },
      { xMm: 0, yMm: 50 },
    ];
    // The clipped corner goes once the two walls beside it have moved in past it.
    expect(corners([0, 20, 0, 0, 0], clipped)).toEqual(box(0, 0, 80, 50));
  });

  it('is nothing where opposite edges pass each other', () => {
    expect(corners([30, 0, 30, 0])).toBeNull();
  });
});

describe('leastCaliperWidth', () => {
  it('is the height of a 3-4-5 triangle on its longest side: 2.4', () => {
    expect(
      leastCaliperWidth([
        { xMm: 0, yMm: 0 },
        { xMm: 3, yMm: 0 },
        { xMm: 0, yMm: 4 },
      ]).widthMm,
    ).toBeCloseTo(2.4, 9);
  });

  it('is no more than the extent in any direction', () => {
    const corner = fc.record({
      xMm: fc.double({ min: -100, max: 100, noNaN: true }),
      yMm: fc.double({ min: -100, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(corner, { minLength: 3, maxLength: 12 }),
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        (corners, turn) => {
          fc.pre(Math.abs(signedAreaMm2(convexHull(corners))) > 1);
          const extent = extentAlong(corners, { xMm: Math.cos(turn), yMm: Math.sin(turn) });
          expect(leastCaliperWidth(corners).widthMm).toBeLessThanOrEqual(extent + 1e-9);
        },
      ),
      { numRuns: 200 },
    );
  });
});
