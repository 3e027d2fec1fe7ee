import type { Port } from '@gusset/contracts/acoustics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { REFERENCE_AIR } from './air.ts';
import { endCorrectionM, portElements } from './port.ts';

const round: Port = {
  mouth: { shape: 'round', diameterMm: 100 },
  count: 1,
  outerEnd: { kind: 'flanged', walls: 0, flareRadiusMm: 0 },
  innerEnd: { kind: 'free', walls: 0, flareRadiusMm: 0 },
  sizing: { by: 'tuning', tuningHz: 31 },
  qp: null,
};
const in55 = (port: Port) => portElements(port, 'port', 0.055, REFERENCE_AIR).figures;

describe('endCorrectionM', () => {
  it('is 0.8488 and 0.6133 of the radius for plain ends, √2 more for each wall', () => {
    expect(endCorrectionM({ kind: 'flanged', walls: 0, flareRadiusMm: 0 }, 1)).toBeCloseTo(0.8488, 4);
    expect(endCorrectionM({ kind: 'free', walls: 0, flareRadiusMm: 0 }, 1)).toBeCloseTo(0.6133, 10);
    expect(endCorrectionM({ kind: 'free', walls: 1, flareRadiusMm: 0 }, 1)).toBeCloseTo(
      0.6133 * Math.SQRT2,
      10,
    );
    expect(endCorrectionM({ kind: 'free', walls: 2, flareRadiusMm: 0 }, 1)).toBeCloseTo(0.6133 * 2, 10);
  });

  it('agrees with slices of a flare added up, for any bore and flare', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 200 }),
        fc.integer({ min: 1, max: 200 }),
        (boreMm, flareRadiusMm) => {
          const a = boreMm / 2e3;
          const flare = flareRadiusMm / 1e3;
          const slices = 4_000;
          let slicedM = 0;
          for (let i = 0; i < slices; i++) {
            const angle = ((i + 0.5) / slices) * (Math.PI / 2);
            const radius = a + flare * (1 - Math.cos(angle));
            slicedM += ((a / radius) ** 2 * flare * Math.cos(angle) * Math.PI) / 2 / slices;
          }
          const beyond = (8 / (3 * Math.PI)) * (a + flare) * (a / (a + flare)) ** 2;
          const got = endCorrectionM({ kind: 'flanged', walls: 0, flareRadiusMm }, a);
          expect(got).toBeCloseTo(slicedM + beyond, 7);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('portElements', () => {
  it('turns a tuning into a length and that length back into the tuning', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 45, noNaN: true }),
        fc.integer({ min: 1, max: 3 }),
        (tuningHz, count) => {
          const flared = { ...round, count, outerEnd: { ...round.outerEnd, flareRadiusMm: 15 } };
          const { lengthMm } = in55({ ...flared, sizing: { by: 'tuning', tuningHz } });
          const back = in55({ ...flared, sizing: { by: 'length', lengthMm } });
          expect(back.tuningHz).toBeCloseTo(tuningHz, 9);
        },
      ),
    );
  });

  it('moves its tuning by half of what the volume moves, the other way', () => {
    const length = { ...round, sizing: { by: 'length', lengthMm: 300 } } as const;
    const small = portElements(length, 'port', 0.05, REFERENCE_AIR).figures.tuningHz;
    const large = portElements(length, 'port', 0.2, REFERENCE_AIR).figures.tuningHz;
    expect(small / large).toBeCloseTo(2, 12);
  });

  it('treats a slot as the circle of its area', () => {
    const side = Math.sqrt(Math.PI) * 50;
    const slot: Port = { ...round, mouth: { shape: 'rectangular', widthMm: side, heightMm: side } };
    expect(in55(slot).lengthMm).toBeCloseTo(in55(round).lengthMm, 9);
  });

  it('is not buildable when its flares are longer than it is', () => {
    const bell = { kind: 'flanged', walls: 0, flareRadiusMm: 50 } as const;
    const short: Port = { ...round, outerEnd: bell, innerEnd: bell, sizing: { by: 'tuning', tuningHz: 62 } };
    const { lengthMm, buildable } = in55(short);
    expect(lengthMm).toBeLessThan(100);
    expect(lengthMm).toBeGreaterThan(0);
    expect(buildable).toBe(false);
  });
});
