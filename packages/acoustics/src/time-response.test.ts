import {
  type SoundSystemInput,
  type TimeSettingInput,
  timeResponseSchema,
} from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { TRUTH_CASES } from '../truth/cases.ts';
import { quince10 } from '../truth/drivers.ts';
import { REFERENCE_AIR } from './air.ts';
import { driverElements } from './driver-elements.ts';
import { solveTimeResponse } from './time-response.ts';

function answered(input: SoundSystemInput, setting: TimeSettingInput = {}) {
  const result = solveTimeResponse(input, setting);
  if (isRefusal(result)) throw new Error(JSON.stringify(result.refusal));
  return result;
}

const closed = (netLitres: number): SoundSystemInput => ({
  frequenciesHz: [40],
  source: { voltageVrms: 10 },
  driver: quince10,
  enclosure: { kind: 'closed', chamber: { netLitres } },
});

/** K s²/(s² + s w/Q + w²) answers a step with K e^(-at) (cos bt - a/b sin bt), a = w/2Q, b² = w² - a². */
function secondOrderStepPa(netLitres: number, timeMs: number): number {
  const { sdM2, mmsKg, blTm, qts } = driverElements(quince10);
  const stiffer = Math.sqrt(1 + quince10.vasLitres / netLitres);
  const omega = 2 * Math.PI * quince10.fsHz * stiffer;
  const edgePa = (REFERENCE_AIR.densityKgPerM3 * sdM2 * blTm * 10) / (2 * Math.PI * quince10.reOhm * mmsKg);
  const a = omega / (2 * qts * stiffer);
  const t = timeMs / 1e3;
  if (omega > a) {
    const b = Math.sqrt(omega ** 2 - a ** 2);
    return edgePa * Math.exp(-a * t) * (Math.cos(b * t) - (a / b) * Math.sin(b * t));
  }
  const b = Math.sqrt(a ** 2 - omega ** 2);
  return edgePa * Math.exp(-a * t) * (Math.cosh(b * t) - (a / b) * Math.sinh(b * t));
}

const largest = (values: readonly number[]) => Math.max(...values.map(Math.abs));

describe('solveTimeResponse', () => {
  it.each([8, 30, 120, 400])(
    'answers a step like a second-order high-pass in a box of %d litres',
    (litres) => {
      const { timesMs, stepPa, isSettled } = answered(closed(litres));
      const edgePa = secondOrderStepPa(litres, 0);
      const late = timesMs.flatMap((timeMs, i) =>
        timeMs < 4 ? [] : [((stepPa[i] ?? 0) - secondOrderStepPa(litres, timeMs)) / edgePa],
      );
      expect(late.length).toBeGreaterThan(1_000);
      expect(largest(late)).toBeLessThan(5e-4); // what the window still rings 4 ms from the edge
      expect(isSettled).toBe(true);
    },
  );

  it('comes closer to the edge with a wider band', () => {
    const apartAt2Ms = (flatToHz: number) => {
      const { timesMs, stepPa } = answered(closed(30), { flatToHz, durationMs: 20 });
      const after = timesMs.flatMap((timeMs, i) =>
        timeMs < 2 ? [] : [(stepPa[i] ?? 0) - secondOrderStepPa(30, timeMs)],
      );
      return largest(after) / secondOrderStepPa(30, 0);
    };
    expect(apartAt2Ms(4_000)).toBeLessThan(apartAt2Ms(1_000) / 10);
  });

  it.each(TRUTH_CASES)('has an impulse that is the slope of its step: $id', ({ input }) => {
    const { stepPa, impulsePaPerS, sampleMs, timesMs } = answered(input);
    let sum = 0;
    const integral = impulsePaPerS.map((value) => {
      sum += (value * sampleMs) / 1e3;
      return sum - (value * sampleMs) / 2e3;
    });
    const top = largest(stepPa);
    const start = stepPa[0] ?? 0;
    const apart = integral.map((value, i) => (value + start - (stepPa[i] ?? 0)) / top);
    expect(timesMs).toHaveLength(stepPa.length);
    expect(largest(apart)).toBeLessThan(0.02); // a trapezium of 8 samples a period at the edge
  });

  it.each(TRUTH_CASES)('is still before the step and moves no air for good: $id', ({ input }) => {
    const { stepPa, timesMs, sampleMs, isSettled } = answered(input, { durationMs: 1_000 });
    expect(isSettled).toBe(true);
    const before = stepPa.filter((_, i) => (timesMs[i] ?? 0) < -3.5);
    expect(before.length).toBeGreaterThan(5);
    expect(largest(before) / largest(stepPa)).toBeLessThan(2e-3);
    const moved = stepPa.reduce((sum, value) => sum + value * sampleMs, 0);
    const turned = stepPa.reduce((sum, value) => sum + Math.abs(value) * sampleMs, 0);
    expect(Math.abs(moved / turned)).toBeLessThan(2e-3);
  });

  it('grows with the voltage and nothing else', () => {
    const one = answered(closed(30));
    const ten = answered({ ...closed(30), source: { voltageVrms: 100 } });
    for (const [i, value] of ten.stepPa.entries()) {
      expect(value).toBeCloseTo(10 * (one.stepPa[i] ?? Number.NaN), 9);
    }
  });

  it('takes a longer record for a box that rings, and says when none is long enough', () => {
    const ringing = (qms: number, qes: number, fsHz: number) =>
      answered({ ...closed(2_000), driver: { ...quince10, qms, qes, fsHz } });
    const calm = answered(closed(30));
    const long = ringing(20, 20, 20);
    expect(long.recordMs).toBeGreaterThan(2 * calm.recordMs);
    expect(long.isSettled).toBe(true);
    expect(ringing(200, 100, 5).isSettled).toBe(false);
  });

  it('answers in the shape of its schema, and refuses what it must by name', () => {
    expect(timeResponseSchema.safeParse(answered(closed(30))).error).toBeUndefined();
    const refused = solveTimeResponse(closed(30), { flatToHz: 1 });
    expect(isRefusal(refused) && refused.refusal.field).toBe('flatToHz');
    const nothing = solveTimeResponse(closed(-1));
    expect(isRefusal(nothing) && nothing.refusal.field).toBe('enclosure.chamber.netLitres');
  });
});
