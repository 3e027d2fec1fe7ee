// Amplifier, filters, pair of drivers, target, designs beside: what the sheet makes of them.
import type { SoundInput } from '@gusset/contracts/sound';
import { designOf } from '@gusset/contracts/sound';
import { describe, expect, it } from 'vitest';
import {
  CLOSED_INPUT,
  INPUTS_BY_KIND,
  litres,
  QUINCE_DRIVER,
  QUINCE_FACTS,
  soundResultOf,
  typed,
  VENTED_INPUT,
} from './sound-fixture.ts';
import { soundSheet } from './sound-sheet.ts';

const outcomeOf = (input: SoundInput) => soundSheet.compute(input, QUINCE_FACTS, {});
const amplifier = { ...CLOSED_INPUT.amplifier };

describe('the amplifier', () => {
  it('stops at its rails: 20 V into 3.6 Ω are 111 W, whatever power was asked for', () => {
    const result = soundResultOf({ ...CLOSED_INPUT, amplifier: { ...amplifier, maxVolts: typed(20) } });
    expect(result.driveVolts).toBe(20);
    expect(result.driveWatts).toBeCloseTo(400 / 3.6, 9);
    expect(result.amplifier.limitedBy).toBe('volts');
  });
  it('loses level in a cable', () => {
    const through = soundResultOf({ ...CLOSED_INPUT, amplifier: { ...amplifier, cableOhm: typed(0.5) } });
    expect(through.loudestDb).toBeLessThan(soundResultOf(CLOSED_INPUT).loudestDb);
  });
  it('says the most current that it is asked for', () => {
    const { amplifier: asked } = soundResultOf(CLOSED_INPUT);
    // Nothing is below the direct-current load, so at most √(300 × 3.6) / 3.6.
    expect(asked.mostAmps).toBeGreaterThan(7);
    expect(asked.mostAmps).toBeLessThanOrEqual(Math.sqrt(300 * 3.6) / 3.6 + 1e-9);
  });
});

describe('filters', () => {
  const highPass = { alignment: 'butterworth', order: 4, corner: typed(25) } as const;
  it('take travel off the cone below a high-pass', () => {
    const [free, held] = [soundResultOf(VENTED_INPUT), soundResultOf({ ...VENTED_INPUT, highPass })];
    expect(held.curves.excursionMm[0] ?? 0).toBeLessThan((free.curves.excursionMm[0] ?? 0) / 10);
  });
  it('are asked for figure by figure', () => {
    const outcome = outcomeOf({
      ...CLOSED_INPUT,
      highPass: { ...highPass, corner: null },
      equaliser: [{ centre: typed(50), gainDb: null, q: null }],
    });
    const fields = outcome.state === 'incomplete' ? outcome.missing.map(({ field }) => field) : [];
    expect(fields).toEqual(['highPass.corner', 'equaliser.0.gainDb', 'equaliser.0.q']);
  });
  it('are refused at the filter that cannot be', () => {
    const odd = { alignment: 'linkwitz-riley', order: 3, corner: typed(80) } as const;
    const outcome = outcomeOf({ ...CLOSED_INPUT, highPass, lowPass: odd });
    expect(outcome).toMatchObject({ state: 'refused', refusals: [{ field: 'lowPass.order' }] });
  });
});

describe('two drivers one behind the other', () => {
  const pair: SoundInput = { ...CLOSED_INPUT, count: 2, isobaric: { coupling: litres(2) } };
  it('need half the air for the same resonance', () => {
    const half = soundResultOf({ ...pair, targetNet: litres(15) });
    expect(half.fcHz).toBeCloseTo(soundResultOf(CLOSED_INPUT).fcHz ?? 0, 6);
  });
  it('are two and no other number', () => {
    expect(outcomeOf({ ...pair, count: 3 })).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'count' }],
    });
  });
});

describe('the target', () => {
  const target = { lowHz: typed(30), highHz: typed(80), plusMinusDb: typed(3), levelDb: null };
  it('is kept by a curve that strays less', () => {
    expect(
      soundResultOf({ ...CLOSED_INPUT, target: { ...target, plusMinusDb: typed(20) } }).target?.outside,
    ).toEqual([]);
  });
  it('names where the curve leaves it', () => {
    const { target: kept } = soundResultOf({
      ...CLOSED_INPUT,
      target: { ...target, plusMinusDb: typed(0.5) },
    });
    expect(kept?.outside.length).toBeGreaterThan(0);
    for (const { fromHz, toHz } of kept?.outside ?? []) {
      expect(fromHz).toBeGreaterThanOrEqual(30);
      expect(toHz).toBeLessThanOrEqual(80);
    }
  });
  it('is refused where it ends before it begins', () => {
    expect(outcomeOf({ ...CLOSED_INPUT, target: { ...target, highHz: typed(20) } })).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'target.highHz' }],
    });
  });
});

describe('the cabin', () => {
  const cabinCurve = {
    label: 'driver’s seat',
    points: [
      { frequencyHz: 20, gainDb: 12 },
      { frequencyHz: 80, gainDb: 0 },
    ],
  };
  it('adds what was measured in this car', () => {
    const measured = soundSheet.compute(
      { ...CLOSED_INPUT, cabin: 'measured' },
      { ...QUINCE_FACTS, cabinCurve },
      {},
    );
    const { curves, cabinLabel } = measured.state === 'ready' ? measured.result : soundResultOf(CLOSED_INPUT);
    expect(cabinLabel).toBe('driver’s seat');
    expect((curves.splDb[0] ?? 0) - (curves.splFreeDb[0] ?? 0)).toBeCloseTo(12, 3);
  });
  it('is asked for where nobody has measured it', () => {
    expect(outcomeOf({ ...CLOSED_INPUT, cabin: 'measured' })).toMatchObject({
      state: 'incomplete',
      missing: [{ field: 'cabin' }],
    });
  });
});

describe('designs beside the one that counts', () => {
  const beside = (letter: 'B' | 'C' | 'D' | 'E' | 'F', input: SoundInput) => ({
    letter,
    name: '',
    design: designOf(input),
  });
  it('are worked out in the same car', () => {
    const { variants } = soundResultOf({ ...CLOSED_INPUT, variants: [beside('B', VENTED_INPUT)] });
    const [vented] = variants;
    const alone = soundResultOf(VENTED_INPUT);
    expect(vented?.state === 'ready' ? vented.design.reachesHz : null).toBe(alone.reachesHz);
  });
  it('never stop the sheet: what they lack is said instead', () => {
    const empty = beside('B', { ...VENTED_INPUT, targetNet: null });
    const wide = beside('C', { ...CLOSED_INPUT, count: 3, seriesPerString: 2 });
    const { variants } = soundResultOf({ ...CLOSED_INPUT, variants: [empty, wide] });
    expect(variants).toMatchObject([
      { letter: 'B', state: 'open', why: 'Still missing: the net volume to aim for' },
      { letter: 'C', state: 'open', why: '3 drivers cannot stand in equal strings of 2' },
    ]);
  });
  it('use the driver that they name', () => {
    const other = { ...QUINCE_DRIVER, id: '00000000-0000-7000-8000-000000000011', name: 'Medlar M-12' };
    const design = { ...designOf(CLOSED_INPUT), driverId: other.id };
    const outcome = soundSheet.compute(
      { ...CLOSED_INPUT, variants: [{ letter: 'B', name: '', design }] },
      { ...QUINCE_FACTS, otherDrivers: [other] },
      {},
    );
    const [variant] = outcome.state === 'ready' ? outcome.result.variants : [];
    expect(variant?.state === 'ready' ? variant.design.driverName : null).toBe('Medlar M-12');
  });
  it('stay small enough to keep: six designs in under 250 kB', () => {
    const kinds = Object.values(INPUTS_BY_KIND);
    const variants = (['B', 'C', 'D', 'E', 'F'] as const).map((letter, i) =>
      beside(letter, kinds[i] ?? CLOSED_INPUT),
    );
    const result = soundResultOf({ ...INPUTS_BY_KIND['dual-tuned-bandpass'], variants });
    expect(JSON.stringify(result).length).toBeLessThan(250_000);
  });
});
