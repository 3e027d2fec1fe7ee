import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull } from './plane/hull.ts';
import { looselyHolds } from './plane/overlap.ts';
import { boundsOf, posed, rectangle, signedAreaMm2 } from './plane/polygon.ts';
import { crossingEdges } from './plane/simple.ts';
import { plus, turned } from './plane/vector.ts';
import { sweptOutline } from './swept-outline.ts';

const PIN = { xMm: 0, yMm: 0 };
const ARM = rectangle({ xMinMm: 0, xMaxMm: 400, yMinMm: 0, yMaxMm: 10 });

describe('sweptOutline', () => {
  it('is a quarter of a disc for an arm that turns through a right angle on its end', () => {
    const swept = sweptOutline(ARM, { pivot: PIN, fromRad: 0, toRad: Math.PI / 2 });
    const reachMm = Math.hypot(400, 10);
    // A quarter disc and the arm's own thickness beyond it: between the two, and the last step of three degrees.
    expect(signedAreaMm2(swept)).toBeGreaterThan((Math.PI / 4) * reachMm ** 2);
    expect(signedAreaMm2(swept)).toBeLessThan(
      (Math.PI / 4) * reachMm ** 2 + 400 * 10 + (Math.PI / 120) * reachMm ** 2,
    );
    expect(boundsOf(swept).xMinMm).toBeGreaterThan(-10 - 400 * Math.sin(Math.PI / 60));
  });

  it('leaves free what lies nearer the pin than the part ever comes', () => {
    const pad = rectangle({ xMinMm: 300, xMaxMm: 400, yMinMm: -20, yMaxMm: 20 });
    const swept = sweptOutline(pad, { pivot: PIN, fromRad: 0, toRad: Math.PI / 3 });
    expect(looselyHolds(swept, { xMm: 200, yMm: 100 })).toBe(false);
    expect(looselyHolds(swept, { xMm: 350 * Math.cos(0.5), yMm: 350 * Math.sin(0.5) })).toBe(true);
  });

  it('goes all the way round', () => {
    const swept = sweptOutline(ARM, { pivot: PIN, fromRad: 0, toRad: 2 * Math.PI });
    expect(signedAreaMm2(swept)).toBeCloseTo(Math.PI * Math.hypot(400, 10) ** 2, -3);
  });

  it('is the outline itself, turned to where it stays, where nothing swings', () => {
    const still = sweptOutline(ARM, { pivot: PIN, fromRad: Math.PI / 2, toRad: Math.PI / 2 });
    expect(boundsOf(still)).toEqual({
      xMinMm: expect.closeTo(-10, 9),
      xMaxMm: expect.closeTo(0, 9),
      yMinMm: expect.closeTo(0, 9),
      yMaxMm: expect.closeTo(400, 9),
    });
  });

  it('holds the part at every moment of any swing, in one simple outline', () => {
    const coordinate = fc.integer({ min: -300, max: 300 });
    const corner = fc.record({ xMm: coordinate, yMm: coordinate });
    fc.assert(
      fc.property(
        fc.array(corner, { minLength: 3, maxLength: 8 }),
        corner,
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0.02, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (points, pivot, fromRad, spanRad, share) => {
          const part = convexHull(points);
          fc.pre(part.length >= 3 && signedAreaMm2(part) > 100);
          const swept = sweptOutline(part, { pivot, fromRad, toRad: fromRad + spanRad });
          const angle = fromRad + share * spanRad;
          // About the pin: p + R(angle) (x - p).
          const shift = plus(pivot, turned(pivot, angle), -1);
          const now = posed(part, { ...shift, thetaRad: angle, zMm: 0 });
          for (const at of now) expect(looselyHolds(swept, at)).toBe(true);
          expect(signedAreaMm2(swept)).toBeGreaterThan(0);
          expect(crossingEdges(swept)).toBeNull();
        },
      ),
      { numRuns: 80 },
    );
  });
});
