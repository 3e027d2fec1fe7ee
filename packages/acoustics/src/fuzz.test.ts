// Any system that the schema lets through is answered in finite numbers.
import { soundSystemSchema } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimateHotCoil } from './hot-coil.ts';
import { solveResponse } from './response.ts';
import { solveTimeResponse } from './time-response.ts';

/** Even over the decades, both ends included. */
const within = (min: number, max: number) =>
  fc
    .oneof(fc.constant(0), fc.constant(1), fc.double({ min: 0, max: 1, noNaN: true }))
    .map((share) => Math.min(max, Math.max(min, min * (max / min) ** share)));

const lossQ = fc.option(within(1, 100_000));
const chamber = fc.record({
  netLitres: within(0.05, 20_000),
  fillFactor: within(1, 1.4),
  ql: lossQ,
  qa: lossQ,
});
const end = fc.record({
  kind: fc.constantFrom('flanged' as const, 'free' as const),
  walls: fc.constantFrom(0 as const, 1 as const, 2 as const),
  flareRadiusMm: fc.constantFrom(0, 12, 500),
});
const port = fc.record({
  mouth: fc.oneof(
    fc.record({ shape: fc.constant('round' as const), diameterMm: within(5, 1_000) }),
    fc.record({
      shape: fc.constant('rectangular' as const),
      widthMm: within(5, 3_000),
      heightMm: within(5, 3_000),
    }),
  ),
  count: fc.integer({ min: 1, max: 50 }),
  outerEnd: end,
  innerEnd: end,
  sizing: fc.oneof(
    fc.record({ by: fc.constant('length' as const), lengthMm: within(1, 5_000) }),
    fc.record({ by: fc.constant('tuning' as const), tuningHz: within(5, 500) }),
  ),
  qp: lossQ,
});
const radiator = fc.record({
  count: fc.integer({ min: 1, max: 20 }),
  fsHz: within(1, 500),
  qms: within(0.1, 200),
  vasLitres: within(0.01, 5_000),
  sdCm2: within(1, 20_000),
  addedMassGrams: fc.constantFrom(0, 100, 20_000),
  xmaxMm: fc.option(within(0.05, 300)),
});
const enclosure = fc.oneof(
  fc.constant({ kind: 'infinite-baffle' as const }),
  fc.record({ kind: fc.constant('closed' as const), chamber }),
  fc.record({ kind: fc.constant('vented' as const), chamber, port }),
  fc.record({ kind: fc.constant('passive-radiator' as const), chamber, radiator }),
  fc.record({
    kind: fc.constant('single-tuned-bandpass' as const),
    rear: chamber,
    front: chamber,
    frontPort: port,
  }),
  fc.record({
    kind: fc.constant('dual-tuned-bandpass' as const),
    rear: chamber,
    rearPort: port,
    front: chamber,
    frontPort: port,
  }),
);
const lossyCoil = fc.option(fc.record({ l2Mh: within(0.0001, 100), r2Ohm: within(0.0001, 10_000) }));
const driver = fc
  .record({
    fsHz: within(5, 2_000),
    qms: within(0.1, 200),
    qes: within(0.02, 100),
    vasLitres: within(0.01, 5_000),
    sdCm2: within(1, 20_000),
    reOhm: within(0.05, 200),
    leMh: fc.constantFrom(0, 1, 100),
    coils: fc.constantFrom(1 as const, 2 as const),
    xmaxMm: fc.option(within(0.05, 200)),
    peWatts: fc.option(within(0.1, 20_000)),
    displacementLitres: fc.constant(0),
    lossyCoil,
  })
  .map(({ lossyCoil: lossy, ...rest }) => ({
    ...rest,
    l2Mh: lossy?.l2Mh ?? null,
    r2Ohm: lossy?.r2Ohm ?? null,
  }));
const coilWiring = fc.constantFrom('single' as const, 'series' as const, 'parallel' as const);
const array = fc.oneof(
  fc
    .record({
      seriesPerString: fc.integer({ min: 1, max: 8 }),
      parallelStrings: fc.integer({ min: 1, max: 8 }),
      coilWiring,
    })
    .map((it) => ({ ...it, count: it.seriesPerString * it.parallelStrings, isobaric: null })),
  fc
    .record({ seriesPerString: fc.constantFrom(1, 2), coilWiring, couplingLitres: within(0.001, 1_000) })
    .map(({ couplingLitres, ...it }) => ({
      ...it,
      count: 2,
      parallelStrings: 2 / it.seriesPerString,
      isobaric: { couplingLitres },
    })),
);
const filter = fc.oneof(
  fc.record({
    kind: fc.constantFrom('highpass' as const, 'lowpass' as const),
    alignment: fc.constantFrom('butterworth' as const, 'linkwitz-riley' as const, 'bessel' as const),
    order: fc.constantFrom(2, 4, 6, 8),
    cornerHz: within(1, 20_000),
  }),
  fc.record({
    kind: fc.constant('peaking' as const),
    centreHz: within(1, 20_000),
    gainDb: fc.double({ min: -40, max: 40, noNaN: true }),
    q: within(0.05, 50),
  }),
);
const system = fc.record({
  frequenciesHz: fc.array(within(1, 20_000), { minLength: 1, maxLength: 6 }),
  air: fc.record({
    temperatureC: fc.double({ min: -50, max: 70, noNaN: true }),
    pressurePa: within(30_000, 120_000),
  }),
  source: fc.record({
    voltageVrms: within(0.001, 1_000),
    outputOhm: fc.constantFrom(0, 0.05, 1_000),
    cableOhm: fc.constantFrom(0, 0.1, 100),
    maxVoltageVrms: fc.option(within(0.001, 1_000)),
    maxCurrentArms: fc.option(within(0.001, 1_000)),
  }),
  filters: fc.array(filter, { maxLength: 6 }),
  driver,
  array,
  enclosure,
  cabin: fc.option(
    fc.record({
      kind: fc.constant('shelf' as const),
      longestM: within(0.3, 20),
      upperQ: within(0.1, 10),
      lowerHz: within(0.1, 500),
      lowerQ: within(0.1, 10),
    }),
  ),
  distanceM: within(0.05, 100),
});

/** Paths of numbers that aren't finite. */
function notFinite(value: unknown, path: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`));
}

describe('solveResponse on anything', () => {
  it('answers every system of the schema in finite numbers, or refuses it by its field', () => {
    let answers = 0;
    fc.assert(
      fc.property(system, (input) => {
        expect(soundSystemSchema.safeParse(input).success).toBe(true);
        const result = solveResponse(input);
        if (isRefusal(result)) {
          expect(result.refusal.field).toMatch(/^(cabin\.lowerHz|enclosure\.(p|frontP|rearP)ort\.)/);
          return;
        }
        answers++;
        expect(notFinite(result, 'result')).toEqual([]);
      }),
      { numRuns: 1_500, seed: 20261124 },
    );
    expect(answers).toBeGreaterThan(700);
  });

  it('follows every system in time, and warms it, in finite numbers', () => {
    let answers = 0;
    fc.assert(
      fc.property(system, within(1, 400), (input, riseK) => {
        const time = solveTimeResponse(input, { durationMs: 10, flatToHz: 60 });
        const hot = estimateHotCoil(input, { riseK });
        if (isRefusal(time) || isRefusal(hot)) {
          expect(isRefusal(time)).toBe(isRefusal(hot));
          return;
        }
        answers++;
        expect(notFinite(time, 'time')).toEqual([]);
        expect(notFinite(hot, 'hot')).toEqual([]);
      }),
      { numRuns: 24, seed: 20261125 },
    );
    expect(answers).toBeGreaterThan(9);
  });
});
