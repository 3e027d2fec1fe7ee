import type { PortMouthCandidate } from '@gusset/contracts/acoustics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { REFERENCE_AIR } from '../air.ts';
import { portElements } from '../port.ts';
import { portLength, portOf } from './port-length.ts';

const round = (diameterMm: number): PortMouthCandidate => ({
  shape: 'round',
  diameterMm,
  wallMm: 4,
  count: 1,
  outerFlareMm: 0,
  innerFlareMm: 0,
});
const slot = (walls: 'none' | 'one-wall' | 'corner' | 'full-width'): PortMouthCandidate => ({
  shape: 'slot',
  widthMm: 300,
  heightMm: 30,
  wallMm: 18,
  count: 1,
  walls,
});
const base = {
  mouth: round(100),
  tuningHz: 31,
  litres: 55,
  takesAir: false,
  fillFactor: 1,
  panelMm: 18,
  air: REFERENCE_AIR,
};

describe('portLength', () => {
  // Worked example: 55 L net, 100 mm, flanged and free, 31 Hz: 443.44 mm effective, 370.33 mm long.
  it('is that of the worked example where the net volume is held', () => {
    expect(portLength(base)).toMatchObject({
      kind: 'length',
      lengthMm: expect.closeTo(370.33, 2),
      effectiveLengthMm: expect.closeTo(443.44, 2),
      netLitres: 55,
    });
  });

  it('takes its own air off: 100 mm bore in 4 mm walls, 18 mm of it in the panel', () => {
    const found = portLength({ ...base, takesAir: true });
    if (found.kind !== 'length') throw new Error(found.kind);
    const takenLitres = ((Math.PI / 4) * 108 ** 2 * (found.lengthMm - 18)) / 1e6;
    expect(found.displacedLitres).toBeCloseTo(takenLitres, 9);
    expect(found.netLitres).toBeCloseTo(55 - takenLitres, 9);
    expect(found.lengthMm).toBeGreaterThan(370.33);
  });

  it('brings no panels but its lid where it runs over the full width', () => {
    const taken = (walls: Parameters<typeof slot>[0]) => {
      const found = portLength({ ...base, takesAir: true, mouth: slot(walls) });
      return found.kind === 'length' ? (found.displacedLitres * 1e6) / (found.lengthMm - 18) : 0;
    };
    expect(taken('full-width')).toBeCloseTo(300 * 48, 6);
    expect(taken('corner')).toBeCloseTo(318 * 48, 6);
    expect(taken('one-wall')).toBeCloseTo(336 * 48, 6);
    expect(taken('none')).toBeCloseTo(336 * 66, 6);
  });

  it('tunes the box that is left to what was asked, whatever the mouth', () => {
    const mouth = fc.oneof(
      fc.record({
        shape: fc.constant('round' as const),
        diameterMm: fc.double({ min: 30, max: 200, noNaN: true }),
        wallMm: fc.constantFrom(0, 4),
        count: fc.integer({ min: 1, max: 3 }),
        outerFlareMm: fc.constantFrom(0, 15),
        innerFlareMm: fc.constantFrom(0, 20),
      }),
      fc.record({
        shape: fc.constant('slot' as const),
        widthMm: fc.double({ min: 100, max: 500, noNaN: true }),
        heightMm: fc.double({ min: 15, max: 60, noNaN: true }),
        wallMm: fc.constantFrom(12, 18),
        count: fc.constantFrom(1, 2),
        walls: fc.constantFrom(
          'none' as const,
          'one-wall' as const,
          'corner' as const,
          'full-width' as const,
        ),
      }),
    );
    const question = fc.record({
      mouth,
      tuningHz: fc.double({ min: 15, max: 80, noNaN: true }),
      litres: fc.double({ min: 5, max: 300, noNaN: true }),
      takesAir: fc.boolean(),
      fillFactor: fc.constantFrom(1, 1.15),
    });
    let lengths = 0;
    fc.assert(
      fc.property(question, (asked) => {
        const found = portLength({ ...base, ...asked });
        if (found.kind === 'mouth-too-small') {
          expect(found.highestTuningHz).toBeLessThan(asked.tuningHz * (1 + 1e-9));
          return;
        }
        if (found.kind === 'port-takes-the-air') {
          if (found.lowestTuningHz !== null)
            expect(found.lowestTuningHz).toBeGreaterThanOrEqual(asked.tuningHz);
          return;
        }
        lengths++;
        expect(found.netLitres).toBeGreaterThan(0);
        if (asked.takesAir) expect(found.netLitres + found.displacedLitres).toBeCloseTo(asked.litres, 8);
        const volumeM3 = (found.netLitres * asked.fillFactor) / 1e3;
        const { figures } = portElements(
          portOf(asked.mouth, found.lengthMm),
          'port',
          volumeM3,
          REFERENCE_AIR,
        );
        expect(figures.tuningHz).toBeCloseTo(asked.tuningHz, 6);
        expect(figures.effectiveLengthMm).toBeCloseTo(found.effectiveLengthMm, 6);
      }),
      { numRuns: 600, seed: 7 },
    );
    expect(lengths).toBeGreaterThan(200);
  });

  it('says how high a mouth can tune when even its shortest pipe is too long', () => {
    const found = portLength({ ...base, mouth: round(40), tuningHz: 60 });
    if (found.kind !== 'mouth-too-small') throw new Error(found.kind);
    expect(found.highestTuningHz).toBeLessThan(60);
    expect(portLength({ ...base, mouth: round(40), tuningHz: found.highestTuningHz - 1e-6 }).kind).toBe(
      'length',
    );
  });

  it('says so where even its shortest leaves no air', () => {
    const crowded = { ...round(100), count: 9, outerFlareMm: 60 };
    expect(portLength({ ...base, mouth: crowded, litres: 3, takesAir: true })).toEqual({
      kind: 'port-takes-the-air',
      lowestTuningHz: null,
    });
  });

  it('says how low a box can go when the port eats it', () => {
    const greedy = { ...base, mouth: round(200), litres: 30, takesAir: true, tuningHz: 15 };
    const found = portLength(greedy);
    if (found.kind !== 'port-takes-the-air' || found.lowestTuningHz === null) throw new Error(found.kind);
    expect(portLength({ ...greedy, tuningHz: found.lowestTuningHz + 1e-6 }).kind).toBe('length');
    expect(portLength({ ...greedy, tuningHz: found.lowestTuningHz - 0.01 }).kind).toBe('port-takes-the-air');
  });
});
