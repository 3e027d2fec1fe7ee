import { describe, expect, it } from 'vitest';
import { engine } from './dryfit.ts';

const request = {
  id: 'c1',
  kind: '2d',
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
    obstacles: [],
  },
  body: [
    [0, 0],
    [500, 0],
    [500, 400],
    [0, 400],
  ],
  clearance: { moving: 0, final: 0 },
  start: { x: 2000, y: 0, thetaDeg: 0 },
  final: { x: 0, y: 0, thetaDeg: 0 },
};
const solve = (change: object = {}) =>
  engine.solve(engine.inputSchema.parse({ ...request, ...change }), { seconds: 1, seed: 1 });

describe('dryfit', () => {
  it('ends its path outside and begins it in the final place', async () => {
    const answer = engine.outputSchema.parse(await solve());
    expect(answer).toMatchObject({ id: 'c1', fits: true, loads: 'loads', finalClearanceMm: 0 });
    expect(answer.path?.[0]).toEqual([0, 0, 0]);
    expect(answer.path?.at(-1)?.[0]).toBeGreaterThanOrEqual(900);
  });

  it('says that a body which does not fit at its place does not load', async () => {
    const answer = engine.outputSchema.parse(await solve({ final: { x: -10, y: 0, thetaDeg: 0 } }));
    expect(answer).toMatchObject({ fits: false, loads: 'does-not-load', finalClearanceMm: null });
    expect(answer).not.toHaveProperty('path');
  });

  it('counts an obstacle only where it is abreast', async () => {
    const stud = {
      name: 'stud',
      polygon: [
        [880, 300],
        [900, 300],
        [900, 700],
        [880, 700],
      ],
      z: [-600, -200],
    };
    const vehicle = { ...request.vehicle, obstacles: [stud], zRange: [-600, 600] };
    const wide = { kind: '3d', vehicle, start: { ...request.start, z: -500 } };
    const beside = await solve({ ...wide, width: 700, final: { x: 0, y: 0, thetaDeg: 0, z: -190 } });
    const shifted = await solve({ ...wide, width: 700, final: { x: 0, y: 0, thetaDeg: 0, z: -400 } });
    const jammed = await solve({ ...wide, width: 1190, final: { x: 0, y: 0, thetaDeg: 0, z: -595 } });
    expect([beside, shifted, jammed].map((one) => engine.outputSchema.parse(one).loads)).toEqual([
      'loads',
      'loads',
      'does-not-load',
    ]);
  });
});
