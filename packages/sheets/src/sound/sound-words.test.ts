import { describe, expect, it } from 'vitest';
import {
  CLOSED_INPUT,
  INPUTS_BY_KIND,
  ROUND_PORT,
  soundResultOf,
  typed,
  VENTED_INPUT,
} from './sound-fixture.ts';
import { findingWords, soundHeadline } from './sound-words.ts';

describe('soundHeadline', () => {
  it('says how deep it reaches and from which power on the cone runs out of travel', () => {
    const loud = soundResultOf({ ...CLOSED_INPUT, cabin: 'none', drive: { watts: 1_000, typed: '1000' } });
    const { tone, words, detail } = soundHeadline(loud);
    expect(tone).toBe('check');
    expect(words).toBe(`Reaches ${Math.round(loud.reachesHz ?? 0)} Hz outdoors`);
    expect(detail).toBe(
      `Runs out of cone travel below ${Math.round(loud.travelBelowHz ?? 0)} Hz above ${Math.round(loud.travelLimitWatts ?? 0)} W.`,
    );
  });
  it('says that the cone stays within its travel where it does', () => {
    const soft = soundHeadline(soundResultOf({ ...CLOSED_INPUT, drive: { watts: 5, typed: '5' } }));
    expect(soft).toMatchObject({ tone: 'pass', detail: 'The cone stays within its travel at 5 W.' });
  });
  it('puts a port that cannot be built before everything else', () => {
    const stuck = soundHeadline(
      soundResultOf({ ...VENTED_INPUT, port: { ...ROUND_PORT, tuning: typed(200) } }),
    );
    expect(stuck).toMatchObject({ tone: 'fail', words: 'The port cannot be built' });
    expect(stuck.detail).toContain('take a larger opening, or tune lower');
  });
  it('gives a bandpass box both its ends', () => {
    const { words } = soundHeadline(
      soundResultOf({ ...INPUTS_BY_KIND['single-tuned-bandpass'], cabin: 'none' }),
    );
    expect(words).toMatch(/^Plays \d+ to \d+ Hz outdoors$/);
  });
  it('says whether the target is kept', () => {
    const target = { lowHz: typed(30), highHz: typed(80), plusMinusDb: typed(20), levelDb: null };
    expect(soundHeadline(soundResultOf({ ...CLOSED_INPUT, target })).detail).toContain(
      'Stays within ±20 dB from 30 to 80 Hz.',
    );
  });
});

describe('findingWords', () => {
  it('has a sentence or a reason for silence for every finding of every kind of box', () => {
    for (const input of Object.values(INPUTS_BY_KIND)) {
      for (const finding of soundResultOf({ ...input, drive: { watts: 2_000, typed: '2000' } }).findings) {
        const words = findingWords(finding);
        if (finding.severity === 'over') expect(words).not.toBeNull();
        if (words !== null) expect(words).toMatch(/^[A-Z0-9]/);
      }
    }
  });
});
