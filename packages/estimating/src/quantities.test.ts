import type { BoxSuppliesInput } from '@gusset/contracts/estimating';
import { boxSuppliesInputSchema, boxSupplySchema } from '@gusset/contracts/estimating';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  carpetRollM,
  coatingLitres,
  labourFromTasks,
  overrunOf,
  suppliesFromBox,
  USUAL_CARPET,
  USUAL_JOINTS,
  USUAL_TEXTURED_COAT,
} from './index.ts';

const box: BoxSuppliesInput = {
  finish: { kind: 'none' },
  jointLengthsM: [],
  jointWidthMm: 18,
  ...USUAL_JOINTS,
  sealedSeamM: 0,
  drivers: [],
};
const coat = { kind: 'coating', name: 'Textured coat', areaM2: 1.6, ...USUAL_TEXTURED_COAT } as const;
const carpet = {
  kind: 'carpet',
  name: 'Box carpet',
  wrapMm: 1600,
  acrossMm: 900,
  endsM2: 0.3,
  ...USUAL_CARPET,
} as const;
const quantityOf = (input: BoxSuppliesInput, code: string) =>
  suppliesFromBox(input).find((supply) => supply.code === code)?.quantity ?? 0;

describe('suppliesFromBox', () => {
  it('counts coating by area, coats, coverage, waste and what the roller keeps', () => {
    // 1.6 m² x 2 / 3.2 = 1.0 L; + 15 % = 1.15; + 0.1 = 1.25 L
    expect(coatingLitres(coat)).toBeCloseTo(1.25, 12);
    expect(quantityOf({ ...box, finish: coat }, 'coating')).toBe(1.25);
    expect(coatingLitres({ ...coat, areaM2: 0 })).toBe(0);
  });

  it('cuts carpet along the roll, in as many widths as the box takes', () => {
    // Strip 1625 x 1000 on a 1370 roll: along 1625, across 2 x 1000; ends 0.3 / 1.37 = 218.98 mm.
    expect(carpetRollM(carpet)).toBeCloseTo(((1625 + 218.978) / 1000) * 1.15, 5);
    expect(quantityOf({ ...box, finish: carpet }, 'carpet')).toBe(2.2); // 2.1206, up to the next 0.1 m
    // A 1300 mm box is wider than the roll with its turn-ins (1400): two widths along, 3250, or two across, 2800.
    expect(carpetRollM({ ...carpet, acrossMm: 1300, endsM2: 0, wasteBasisPoints: 0 })).toBeCloseTo(2.8, 9);
  });

  it('glues what is covered, both faces', () => {
    // 1.6 x 0.9 + 0.3 = 1.74 m² / 1.75 x 1.1 = 1.0937 L
    expect(quantityOf({ ...box, finish: carpet }, 'carpet-adhesive')).toBe(1.1);
  });

  it.each([
    [[0.6], 5], // 550 mm between the end screws: 4 gaps of 137.5
    [[0.65], 5], // 600: exactly 4 gaps of 150
    [[0.651], 6],
    [[0.05], 1], // too short for two
    [[0.06], 2],
    [[0], 0],
    [[0.6, 0.65, 0.05], 11],
  ])('puts screws along joints of %j m: %d', (jointLengthsM, count) => {
    expect(quantityOf({ ...box, jointLengthsM }, 'joint-screws')).toBe(count);
  });

  it('needs no screws where clamps hold', () => {
    expect(suppliesFromBox({ ...box, jointLengthsM: [0.6], screws: null }).map(({ code }) => code)).toEqual([
      'wood-glue',
    ]);
  });

  it('weighs glue by the face of the joint and fills fillets', () => {
    // 10 m x 18 mm = 0.18 m² x 200 g = 36 g + 15 % = 41.4 g -> 0.05 kg
    expect(quantityOf({ ...box, jointLengthsM: [5, 5] }, 'wood-glue')).toBe(0.05);
    // 6 x 6 / 2 = 18 mm² x 10 m = 0.18 L + 10 % = 0.198 -> 0.2
    expect(quantityOf({ ...box, sealedSeamM: 10 }, 'seam-sealant')).toBe(0.2);
  });

  it('counts bolts and gasket for every driver', () => {
    const drivers = [
      { boltCount: 8, gasketM: 0.75 },
      { boltCount: 8, gasketM: 0.75 },
    ];
    expect(quantityOf({ ...box, drivers }, 'driver-bolts')).toBe(16);
    expect(quantityOf({ ...box, drivers }, 'gasket-tape')).toBe(1.5);
  });

  it('lists nothing for a box of nothing, and never less for a larger one', () => {
    expect(suppliesFromBox(box)).toEqual([]);
    const areas = fc.double({ min: 0.01, max: 20, noNaN: true });
    const lengths = fc.array(fc.double({ min: 0, max: 4, noNaN: true }), { maxLength: 20 });
    fc.assert(
      fc.property(areas, lengths, (areaM2, jointLengthsM) => {
        const input = { ...box, finish: { ...coat, areaM2 }, jointLengthsM };
        expect(boxSuppliesInputSchema.safeParse(input).success).toBe(true);
        const larger = {
          ...input,
          finish: { ...coat, areaM2: areaM2 * 1.5 },
          jointLengthsM: [...jointLengthsM, 0.5],
        };
        for (const supply of suppliesFromBox(input)) {
          expect(boxSupplySchema.parse(supply)).toEqual(supply);
          expect(quantityOf(larger, supply.code)).toBeGreaterThanOrEqual(supply.quantity);
        }
      }),
    );
  });
});

describe('labourFromTasks', () => {
  const rates = {
    hourlyRateMinor: 7500,
    hourlyCostMinor: 2800,
    bySkill: { tune: { hourlyRateMinor: 9500, hourlyCostMinor: 3500 } },
  };

  it('makes one line a task at the rate of its skill, and none where no time is planned', () => {
    const lines = labourFromTasks(
      [
        { key: 'cut', title: 'Cut panels', skill: 'saw', minutes: 120 },
        { key: 'tune', title: 'Tune', skill: 'tune', minutes: 90 },
        { key: 'wait', title: 'Glue sets', skill: 'any', minutes: 0 },
      ],
      rates,
    );
    expect(lines.map(({ key, pricing }) => [key, pricing])).toEqual([
      ['cut', { by: 'hours', minutes: 120, hourlyCostMinor: 2800, hourlyRateMinor: 7500 }],
      ['tune', { by: 'hours', minutes: 90, hourlyCostMinor: 3500, hourlyRateMinor: 9500 }],
    ]);
  });
});

describe('overrunOf', () => {
  it.each([
    [{ by: 'none' } as const, 100_000, 0, false],
    [{ by: 'none' } as const, 100_001, 1, true],
    [{ by: 'percent', rateBasisPoints: 1000 } as const, 110_000, 0, false],
    [{ by: 'percent', rateBasisPoints: 1000 } as const, 110_001, 1, true],
    [{ by: 'amount', amountMinor: 500 } as const, 100_900, 400, true],
    [{ by: 'none' } as const, 90_000, 0, false],
  ])('by the rule %j a bill of %d is %d over', (rule, proposed, overMinor, needsApproval) => {
    expect(overrunOf(100_000, proposed, rule)).toMatchObject({ overMinor, needsApproval });
  });
});
