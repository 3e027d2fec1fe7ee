import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { insideRing } from '../views/wall-band.ts';
import { hatchSegments } from './hatch-segments.ts';
import { between, distance, doubleArea, rectangle, type Spot } from './spot.ts';

/** A star-shaped polygon round (200, 200): radii between 40 and 180 pt at even angles. */
const starRing = fc
  .array(fc.double({ min: 40, max: 180, noNaN: true }), { minLength: 3, maxLength: 14 })
  .map((radii): Spot[] =>
    radii.map((radius, index) => {
      const angle = (index * 2 * Math.PI) / radii.length;
      return { x: 200 + radius * Math.cos(angle), y: 200 + radius * Math.sin(angle) };
    }),
  );

describe('hatchSegments', () => {
  it('crosses a 10 pt square four times at 3 pt pitch, each line as long as the square', () => {
    // Level lines at y = 0, 3, 6, 9: y = 0 is the square's own upper edge and counts, y = 10 does not.
    expect(hatchSegments([rectangle(0, 0, 10, 10)], 0, 3)).toEqual([
      [
        { x: 0, y: 0 },
        { x: 10, y: 0 },
      ],
      [
        { x: 0, y: 3 },
        { x: 10, y: 3 },
      ],
      [
        { x: 0, y: 6 },
        { x: 10, y: 6 },
      ],
      [
        { x: 0, y: 9 },
        { x: 10, y: 9 },
      ],
    ]);
  });

  it('draws the diagonal of a square, 10√2 long, at 45°', () => {
    const lengths = hatchSegments([rectangle(0, 0, 10, 10)], Math.PI / 4, 100).map(([from, to]) =>
      distance(from, to),
    );
    expect(lengths).toHaveLength(1);
    expect(lengths[0]).toBeCloseTo(10 * Math.SQRT2, 9);
  });

  it('leaves a hole free', () => {
    const segments = hatchSegments([rectangle(0, 0, 30, 30), rectangle(10, 10, 10, 10)], 0, 15);
    expect(segments).toEqual([
      [
        { x: 0, y: 0 },
        { x: 30, y: 0 },
      ],
      [
        { x: 0, y: 15 },
        { x: 10, y: 15 },
      ],
      [
        { x: 20, y: 15 },
        { x: 30, y: 15 },
      ],
    ]);
  });

  it('draws nothing in a line, in nothing, or at no pitch', () => {
    expect(hatchSegments([], 1, 5)).toEqual([]);
    expect(
      hatchSegments(
        [
          [
            { x: 0, y: 0 },
            { x: 9, y: 0 },
            { x: 4, y: 0 },
          ],
        ],
        0,
        5,
      ),
    ).toEqual([]);
    expect(hatchSegments([rectangle(0, 0, 9, 9)], 1, 0)).toEqual([]);
  });

  it('keeps every segment inside its polygon', () => {
    fc.assert(
      fc.property(starRing, fc.double({ min: -3, max: 3, noNaN: true }), (ring, angleRad) => {
        for (const [from, to] of hatchSegments([ring], angleRad, 7)) {
          if (distance(from, to) < 0.5) continue; // too short to step back from its ends
          const backOff = 0.1 / distance(from, to);
          for (const share of [backOff, 0.25, 0.5, 0.75, 1 - backOff]) {
            expect(insideRing(ring, between(from, to, share))).toBe(true);
          }
        }
      }),
    );
  });

  it('covers the area: total length × pitch is the area within 3 %', () => {
    fc.assert(
      fc.property(starRing, fc.double({ min: -3, max: 3, noNaN: true }), (ring, angleRad) => {
        const pitchPt = 0.5;
        const total = hatchSegments([ring], angleRad, pitchPt).reduce(
          (sum, ends) => sum + distance(...ends),
          0,
        );
        const area = Math.abs(doubleArea(ring)) / 2;
        expect(Math.abs(total * pitchPt - area)).toBeLessThan(0.03 * area);
      }),
      { numRuns: 40 },
    );
  });

  it('runs on from one region into its neighbour', () => {
    const left = hatchSegments([rectangle(0, 0, 50, 40)], 0.7, 6);
    const right = hatchSegments([rectangle(50, 0, 50, 40)], 0.7, 6);
    const whole = hatchSegments([rectangle(0, 0, 100, 40)], 0.7, 6);
    const length = (segments: typeof whole): number =>
      segments.reduce((sum, ends) => sum + distance(...ends), 0);
    expect(length(left) + length(right)).toBeCloseTo(length(whole), 6);
  });
});
