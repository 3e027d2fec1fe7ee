// Truth: nothing stands between a rectangle and its open rear, so the largest box is the largest of its ranges.
import { describe, expect, it } from 'vitest';
import { engine } from './largest.ts';

const request = {
  id: 'l1',
  vehicle: {
    cavity: [
      [0, 0],
      [900, 0],
      [900, 700],
      [0, 700],
    ],
    opening: [
      [900, 0],
      [900, 700],
    ],
    outside: [
      [900, 0],
      [2900, 0],
      [2900, 700],
      [900, 700],
    ],
    space: [
      [0, 0],
      [2900, 0],
      [2900, 700],
      [0, 700],
    ],
  },
  start: { x: 2000, y: 0, thetaDeg: 0 },
  anchor: { x: 0, y: 0, thetaDeg: 0 },
  family: 'box',
  ranges: { b: [200, 600], h: [150, 500] },
};
const solve = (change: object = {}) =>
  engine.solve(engine.inputSchema.parse({ ...request, ...change }), { seconds: 3, seed: 1 });

describe('largest', () => {
  it('answers measures, area, bound and a way out by the door’s names', async () => {
    const answer = engine.outputSchema.parse(await solve());
    expect(answer.params?.b).toBeGreaterThan(598);
    expect(answer.area).toBeGreaterThan(600 * 500 * 0.995);
    expect(answer.upperBoundArea).toBeGreaterThanOrEqual(answer.area ?? Number.POSITIVE_INFINITY);
    expect(answer.path[0]).toEqual([0, 0, 0]);
  });

  it('answers null where not even the smallest goes in', async () => {
    const answer = engine.outputSchema.parse(await solve({ ranges: { b: [1_000, 1_200], h: [720, 800] } }));
    expect(answer).toMatchObject({ params: null, area: null, path: [] });
  });

  it('refuses a wedge without a range for its top', async () => {
    expect(await solve({ family: 'wedge' })).toMatchObject({ refusal: { field: 'ranges.t' } });
  });
});
