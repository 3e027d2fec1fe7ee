import { describe, expect, it } from 'vitest';
import { exposureMinutes, exposureWords } from './exposure.ts';

describe('exposureMinutes', () => {
  it('halves for every 3 dB above 85', () => {
    expect(exposureMinutes(85)).toBe(480);
    expect(exposureMinutes(88)).toBe(240);
    expect(exposureMinutes(100)).toBe(15);
  });
});

describe('exposureWords', () => {
  it.each([
    [80, 'a working day'],
    [91, '2.0 hours a day'],
    [100, '15 minutes a day'],
    [115, '28 seconds a day'],
  ])('says %d dB as %s', (level, words) => {
    expect(exposureWords(level)).toBe(words);
  });
});
