import type { BuiltDifference } from '@gusset/contracts/measurement';
import { describe, expect, it } from 'vitest';
import {
  builtVerdict,
  cautionWords,
  doubtWords,
  fittedWords,
  percentWords,
  readingWords,
  rejectionWords,
} from './measure-words.ts';

const show = (mm: number) => `${Math.round(mm)} mm`;
const difference = (changes: Partial<BuiltDifference>): BuiltDifference => ({
  code: 'net-volume',
  unit: 'litres',
  drawn: 30,
  built: { value: 27.9, plusMinus: 0.1 },
  difference: -2.1,
  beyond: true,
  ...changes,
});
const port = difference({ code: 'port-length', unit: 'mm', drawn: 370, difference: 14 });

describe('builtVerdict', () => {
  it('says what is smaller and what is longer in one line', () => {
    const words = builtVerdict({ differences: [difference({}), port] }, show);
    expect(words).toEqual({ tone: 'check', words: 'About 2.1 L smaller than drawn, port 14 mm long' });
  });
  it('leaves the tuning out where volume and port explain it', () => {
    const tuning = difference({ code: 'tuning', unit: 'Hz', difference: -1.2 });
    expect(builtVerdict({ differences: [tuning, port] }, show).words).toBe('Port 14 mm long');
    expect(builtVerdict({ differences: [tuning] }, show).words).toBe('Tuned 1.2 Hz below the drawing');
  });
  it('passes a box within tolerance', () => {
    expect(builtVerdict({ differences: [difference({ beyond: false })] }, show)).toEqual({
      tone: 'pass',
      words: 'Built as drawn',
    });
  });
});

describe('the words of figures', () => {
  it('show as many decimals as the doubt deserves', () => {
    expect(fittedWords({ value: 29.512, plusMinus: 0.031 }, 'Hz')).toBe('29.51 ± 0.03 Hz');
    expect(fittedWords({ value: 29.512, plusMinus: 1.4 }, 'Hz')).toBe('29.5 ± 1.4 Hz');
    expect(fittedWords({ value: 412.6, plusMinus: 23 })).toBe('413 ± 23');
    expect(fittedWords({ value: 3.6, plusMinus: 0 })).toBe('3.600');
  });
  it('never say that nothing is in doubt', () => {
    expect(doubtWords('litres', 0.02, show)).toBe('under 0.1 L');
    expect(doubtWords('mm', 3.2, show)).toBe('3 mm');
  });
  it('say percent with its sign', () => {
    expect(percentWords(-3.24)).toBe('−3.2 %');
    expect(percentWords(14.6)).toBe('+15 %');
    expect(percentWords(0.01)).toBe('the same');
  });
  it('say why a sweep does not count and what would', () => {
    expect(rejectionWords({ code: 'noisy', snrDb: 4.2, atHz: 24.3, leastDb: 10 })).toBe(
      'Only 4.2 dB above the noise at 24.3 Hz; 10 dB above it are asked for. Play louder or wait for quiet.',
    );
    expect(rejectionWords({ code: 'noisy', snrDb: -13, atHz: 20, leastDb: 10 })).toContain(
      '13.0 dB under the noise',
    );
    expect(
      rejectionWords({ code: 'short', lowHz: 35, highHz: 500, neededLowHz: 20, neededHighHz: 200 }),
    ).toContain('20.0 Hz to 200 Hz are needed');
  });
  it('say how a file was read', () => {
    expect(readingWords({ rowsRead: 240, magnitude: 'ohm', phase: null, decimalComma: true })).toBe(
      '240 rows: magnitude in ohm, no phase, decimal commas.',
    );
  });
  it('say what to do about a shy second resonance', () => {
    expect(cautionWords({ code: 'little-shift', ratio: 0.96 }).words).toContain('96 %');
  });
});
