import { driverFiguresSchema } from '@gusset/contracts/records';
import { EMPTY_PORT, EMPTY_SOUND_INPUT, type SoundFacts, type SoundInput } from '@gusset/contracts/sound';
import { soundSheet, soundSystem } from '@gusset/sheets';
import { describe, expect, it } from 'vitest';
import { evenestInCar, suggestionsFor } from './suggested-boxes.ts';

const DRIVER_ID = '00000000-0000-7000-8000-000000000010';
const facts: SoundFacts = {
  longestCabinM: 2.5,
  driver: {
    id: DRIVER_ID,
    name: 'Quince Q-10',
    figures: driverFiguresSchema.parse({
      dataSheet: {
        fsHz: 29.5,
        qms: 4.6,
        qes: 0.42,
        vasLitres: 48,
        sdCm2: 340,
        reOhm: 3.6,
        xmaxMm: 11,
        peWatts: 300,
      },
      overallDiaMm: 269,
      cutoutDiaMm: 236,
      mountingDepthMm: 141,
    }),
  },
};
const mm = (value: number) => ({ mm: value, typed: String(value), unit: 'mm' as const });
const litres = (value: number) => ({ litres: value, typed: String(value) });
const closed: SoundInput = {
  ...EMPTY_SOUND_INPUT,
  driverId: DRIVER_ID,
  drive: { watts: 300, typed: '300' },
  targetNet: litres(30),
};
const vented: SoundInput = {
  ...closed,
  enclosure: 'vented',
  port: { ...EMPTY_PORT, diameter: mm(100), tuning: { value: 32, typed: '32' } },
};
const bandpass: SoundInput = {
  ...vented,
  enclosure: 'single-tuned-bandpass',
  front: { net: litres(20), fill: 'none' },
};

function systemOf(input: SoundInput) {
  const system = soundSystem(input, facts);
  if (system === null) throw new Error('the design is not complete');
  return system;
}

describe.each([
  ['closed', closed],
  ['vented', vented],
  ['single-tuned-bandpass', bandpass],
] as const)('suggestions for a box of kind %s', (_, input) => {
  const offered = suggestionsFor(input, systemOf(input));
  it('say what each does and can all be worked out', () => {
    expect(offered.length).toBeGreaterThan(0);
    for (const { words, changes } of offered) {
      expect(words).not.toBe('');
      expect(soundSheet.compute({ ...input, ...changes }, facts, {}).state).toBe('ready');
    }
  });
});

describe('suggestions', () => {
  it('name the deepest of the closed boxes by its own corner', () => {
    const corners = suggestionsFor(closed, systemOf(closed)).map(({ words, changes }) => {
      const outcome = soundSheet.compute({ ...closed, ...changes }, facts, {});
      return { words, f3Hz: outcome.state === 'ready' ? (outcome.result.f3Hz ?? 0) : 0 };
    });
    const deepest = corners.reduce((best, next) => (next.f3Hz < best.f3Hz ? next : best));
    expect(deepest.words).toContain('Deepest');
  });
  it('are none for a trunk wall', () => {
    const wall = { ...closed, enclosure: 'infinite-baffle' } as const;
    expect(suggestionsFor(wall, systemOf(wall))).toEqual([]);
  });
});

describe('evenestInCar', () => {
  it('sets volume and tuning of a vented box', () => {
    const changes = evenestInCar(vented, systemOf(vented));
    expect(changes?.targetNet?.litres).toBeGreaterThan(4);
    expect(changes?.port?.tuning?.value).toBeGreaterThan(14);
  });
  it('has no answer outdoors', () => {
    const outdoors: SoundInput = { ...vented, cabin: 'none' };
    expect(evenestInCar(outdoors, systemOf(outdoors))).toBeNull();
  });
});
