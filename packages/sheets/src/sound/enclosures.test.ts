// Every kind of box through the sheet: what it asks for, what it answers, what cannot be.
import { ventedAlignment } from '@gusset/acoustics';
import { EMPTY_SOUND_INPUT, ENCLOSURES, LEAK_Q, type SoundInput } from '@gusset/contracts/sound';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import {
  INPUTS_BY_KIND,
  length,
  litres,
  QUINCE_DRIVER,
  QUINCE_FACTS,
  ROUND_PORT,
  soundResultOf,
  typed,
  VENTED_INPUT,
} from './sound-fixture.ts';
import { soundSheet } from './sound-sheet.ts';

const outcomeOf = (input: SoundInput) => soundSheet.compute(input, QUINCE_FACTS, {});

describe.each(ENCLOSURES)('a design of kind %s', (enclosure) => {
  const input = INPUTS_BY_KIND[enclosure];
  it('is worked out, and every number of it is finite and survives storage', () => {
    const result = soundResultOf(input);
    expect(result.enclosure).toBe(enclosure);
    const stored = JSON.stringify(result, (_, value) =>
      typeof value === 'number' && !Number.isFinite(value) ? 'not finite' : value,
    );
    expect(stored).not.toContain('not finite');
    expect(JSON.parse(stored)).toEqual(result);
  });
  it('asks for what an empty sheet of its kind lacks, field by field', () => {
    const outcome = outcomeOf({ ...EMPTY_SOUND_INPUT, enclosure, driverId: QUINCE_DRIVER.id });
    const fields = outcome.state === 'incomplete' ? outcome.missing.map(({ field }) => field) : [];
    expect(fields).toEqual(MISSING[enclosure]);
  });
  it('keeps what is typed for other kinds out of its result', () => {
    const crowded = { ...INPUTS_BY_KIND['dual-tuned-bandpass'], ...input };
    expect(soundResultOf(crowded)).toEqual(soundResultOf(input));
  });
});

const MISSING: Readonly<Record<(typeof ENCLOSURES)[number], readonly string[]>> = {
  'infinite-baffle': ['drive'],
  closed: ['targetNet', 'drive'],
  vented: ['targetNet', 'port.diameter', 'port.tuning', 'drive'],
  'passive-radiator': [
    'targetNet',
    'radiator.fsHz',
    'radiator.qms',
    'radiator.vasLitres',
    'radiator.sdCm2',
    'drive',
  ],
  'single-tuned-bandpass': ['targetNet', 'front.net', 'port.diameter', 'port.tuning', 'drive'],
  'dual-tuned-bandpass': [
    'targetNet',
    'front.net',
    'port.diameter',
    'port.tuning',
    'rearPort.diameter',
    'rearPort.tuning',
    'drive',
  ],
};

describe('a vented box', () => {
  it('has the corner of the published alignment that it is built to', () => {
    const { parameters: driver } = soundResultOf(VENTED_INPUT);
    const aligned = ventedAlignment(driver, 'chebyshev', { ql: LEAK_Q.usual });
    if (isRefusal(aligned)) throw new Error(aligned.refusal.why);
    const result = soundResultOf({
      ...VENTED_INPUT,
      targetNet: litres(aligned.netLitres),
      port: { ...ROUND_PORT, tuning: typed(aligned.tuningHz) },
    });
    expect(result.f3Hz).toBeCloseTo(aligned.f3Hz, 3);
    expect(result.alpha).toBeCloseTo(aligned.alpha, 6);
  });
  it('gives the length for a tuning and the tuning for that length', () => {
    const [port] = soundResultOf(VENTED_INPUT).ports;
    expect(port).toMatchObject({ role: 'port', chamber: 'only', diameterMm: 100, buildable: true });
    const back = soundResultOf({
      ...VENTED_INPUT,
      port: { ...ROUND_PORT, by: 'length', length: length(port?.lengthMm ?? 0) },
    });
    expect(back.tuningHz).toBeCloseTo(32, 6);
  });
  it('counts the air of its ports as area times length', () => {
    const [port] = soundResultOf({ ...VENTED_INPUT, port: { ...ROUND_PORT, count: 2 } }).ports;
    // Two of 100 mm: 2 × π/4 × 1 dm² = 1.5708 dm².
    expect(port?.openAreaCm2).toBeCloseTo(157.08, 2);
    expect(port?.airLitres).toBeCloseTo((Math.PI * 50 * (port?.lengthMm ?? 0)) / 10_000, 6);
  });
  it('answers a port that no length can tune, and says so', () => {
    const stuck = soundResultOf({ ...VENTED_INPUT, port: { ...ROUND_PORT, tuning: typed(200) } });
    expect(stuck.ports[0]?.buildable).toBe(false);
    expect(stuck.findings.map(({ code }) => code)).toContain('port-unbuildable');
  });
  it('refuses an opening larger than a wall of its air', () => {
    const outcome = outcomeOf({
      ...VENTED_INPUT,
      targetNet: litres(10),
      port: { ...ROUND_PORT, diameter: length(300) },
    });
    expect(outcome).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'port.diameter', got: 300, allowed: 'openings below 464 cm² together' }],
    });
  });
  it('refuses a length that its flares alone are longer than, at the length', () => {
    const outcome = outcomeOf({ ...VENTED_INPUT, port: { ...ROUND_PORT, by: 'length', length: length(30) } });
    expect(outcome).toMatchObject({ state: 'refused', refusals: [{ field: 'port.length', got: 30 }] });
  });
  it('moves the cone least at its tuning', () => {
    const { curves } = soundResultOf(VENTED_INPUT);
    const low = curves.frequenciesHz.flatMap((hz, i) => (hz > 20 && hz < 60 ? [i] : []));
    const least = low.reduce((best, i) =>
      (curves.excursionMm[i] ?? 0) < (curves.excursionMm[best] ?? 0) ? i : best,
    );
    expect(Math.abs((curves.frequenciesHz[least] ?? 0) - 32)).toBeLessThan(2);
  });
});

describe('a bandpass box', () => {
  it('names both chambers, and their sum as what the box sheet aims at', () => {
    const result = soundResultOf(INPUTS_BY_KIND['dual-tuned-bandpass']);
    expect(result.chambers).toEqual([
      { role: 'rear', netLitres: 50 },
      { role: 'front', netLitres: 24 },
    ]);
    expect(result.netLitres).toBe(74);
    expect(result.ports.map(({ role, chamber }) => [role, chamber])).toEqual([
      ['front-port', 'front'],
      ['rear-port', 'rear'],
    ]);
    expect([result.tuningHz, result.rearTuningHz]).toEqual([expect.closeTo(68, 6), expect.closeTo(31, 6)]);
  });
  it('ends above as well as below', () => {
    const { reachesHz, reachesToHz } = soundResultOf({
      ...INPUTS_BY_KIND['single-tuned-bandpass'],
      cabin: 'none',
    });
    expect(reachesHz ?? 0).toBeGreaterThan(20);
    expect(reachesToHz ?? 0).toBeGreaterThan(reachesHz ?? 0);
    expect(reachesToHz ?? 500).toBeLessThan(200);
  });
});

describe('a trunk wall', () => {
  it('has no air to aim at and keeps the driver’s own resonance', () => {
    const result = soundResultOf(INPUTS_BY_KIND['infinite-baffle']);
    expect(result.netLitres).toBeNull();
    expect(result.fcHz).toBeCloseTo(29.5, 9);
  });
});

describe('passive radiators', () => {
  it('tune lower with mass on them', () => {
    const input = INPUTS_BY_KIND['passive-radiator'];
    const heavier = { ...input, radiator: { ...input.radiator, addedMassGrams: typed(200) } };
    expect(soundResultOf(heavier).tuningHz ?? 0).toBeLessThan(soundResultOf(input).tuningHz ?? 0);
  });
});
