// Whatever a schema lets through, each helper answers in finite numbers or refuses a field.
import type { DesignSystemInput } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { portTable } from './port-table.ts';
import { radiatorForTuning } from './radiator-tuning.ts';
import { sensitivities } from './sensitivity.ts';
import { subsonicCorner } from './subsonic-corner.ts';
import { symmetricBandpass } from './symmetric-bandpass.ts';
import { toleranceBand } from './tolerance-band.ts';

/** Even over the decades, both ends included. */
const within = (min: number, max: number) =>
  fc
    .oneof(fc.constant(0), fc.constant(1), fc.double({ min: 0, max: 1, noNaN: true }))
    .map((share) => Math.min(max, Math.max(min, min * (max / min) ** share)));

const driver = fc.record({
  fsHz: within(5, 2_000),
  qms: within(0.1, 200),
  qes: within(0.02, 100),
  vasLitres: within(0.01, 5_000),
  sdCm2: within(1, 20_000),
  reOhm: within(0.05, 200),
  leMh: fc.constantFrom(0, 1, 100),
  l2Mh: fc.constant(null),
  r2Ohm: fc.constant(null),
  coils: fc.constantFrom(1 as const, 2 as const),
  xmaxMm: fc.option(within(0.05, 200)),
  peWatts: fc.option(within(0.1, 20_000)),
  displacementLitres: fc.constant(0),
});
const chamber = fc.record({ netLitres: within(0.05, 20_000), ql: fc.option(within(1, 1e5)) });
const flareRadiusMm = fc.constantFrom(0, 12);
const port = fc.record({
  mouth: fc.record({ shape: fc.constant('round' as const), diameterMm: within(5, 1_000) }),
  outerEnd: fc.record({ kind: fc.constant('flanged' as const), flareRadiusMm }),
  innerEnd: fc.record({ kind: fc.constant('free' as const), flareRadiusMm }),
  sizing: fc.oneof(
    fc.record({ by: fc.constant('length' as const), lengthMm: within(30, 5_000) }),
    fc.record({ by: fc.constant('tuning' as const), tuningHz: within(5, 500) }),
  ),
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
const system: fc.Arbitrary<DesignSystemInput> = fc.record({
  source: fc.record({ voltageVrms: within(0.001, 1_000), outputOhm: fc.constantFrom(0, 0.05, 1_000) }),
  driver,
  enclosure,
});
const tuningHz = within(5, 500);

/** Paths of numbers that aren't finite. */
function notFinite(value: unknown, path: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`));
}

/** Runs `ask` on everything drawn; answers how many it didn't refuse. */
function answers<Input>(
  inputs: fc.Arbitrary<Input>,
  ask: (input: Input) => unknown,
  numRuns: number,
): number {
  let count = 0;
  fc.assert(
    fc.property(inputs, (input) => {
      const found = ask(input);
      if (isRefusal(found)) {
        expect(found.refusal.field).not.toBe('');
        return;
      }
      count++;
      expect(notFinite(found, 'answer')).toEqual([]);
    }),
    { numRuns, seed: 20261125 },
  );
  return count;
}

describe('the design helpers on anything', () => {
  it('find a subsonic corner', () => {
    expect(answers(system, (it) => subsonicCorner({ system: it }), 300)).toBeGreaterThan(100);
  });

  it('find slopes', () => {
    expect(answers(system, (it) => sensitivities({ system: it }), 300)).toBeGreaterThan(150);
  });

  it('find a tolerance band', () => {
    expect(answers(system, (it) => toleranceBand({ system: it, draws: 20, points: 12 }), 80)).toBeGreaterThan(
      30,
    );
  });

  it('size ports', () => {
    const mouth = fc.oneof(
      fc.record({
        shape: fc.constant('round' as const),
        diameterMm: within(5, 1_000),
        count: fc.integer({ min: 1, max: 50 }),
        outerFlareMm: fc.constantFrom(0, 500),
        innerFlareMm: fc.constantFrom(0, 12),
      }),
      fc.record({
        shape: fc.constant('slot' as const),
        widthMm: within(5, 3_000),
        heightMm: within(5, 3_000),
        walls: fc.constantFrom(
          'none' as const,
          'one-wall' as const,
          'corner' as const,
          'full-width' as const,
        ),
      }),
    );
    const question = fc.record({
      system,
      role: fc.constantFrom('port' as const, 'front-port' as const, 'rear-port' as const),
      tuningHz,
      air: fc.record({
        by: fc.constantFrom('net' as const, 'before-port' as const),
        litres: within(0.05, 20_000),
      }),
      mouths: fc.array(mouth, { minLength: 1, maxLength: 4 }),
    });
    expect(answers(question, portTable, 400)).toBeGreaterThan(40);
  });

  it('size radiators and bandpass boxes', () => {
    expect(answers(fc.record({ chamber, radiator, tuningHz }), radiatorForTuning, 300)).toBeGreaterThan(20);
    const by = fc.oneof(
      fc.record({ aim: fc.constant('gain' as const), gainDb: fc.double({ min: -12, max: 12, noNaN: true }) }),
      fc.record({ aim: fc.constant('centre' as const), centreHz: within(5, 2_000) }),
    );
    const shape = fc.double({ min: 0.4, max: 1.5, noNaN: true });
    expect(answers(fc.record({ driver, by, shape }), symmetricBandpass, 300)).toBeGreaterThan(50);
  });
});
