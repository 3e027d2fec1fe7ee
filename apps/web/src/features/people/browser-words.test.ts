import { describe, expect, it } from 'vitest';
import { browserWords } from './browser-words.ts';

describe('browserWords', () => {
  it('tells phones, tablets and computers apart', () => {
    expect(browserWords('Mozilla/5.0 (Linux; Android 16; Pixel) Mobile Safari/537.36')).toBe('A phone');
    expect(browserWords('Mozilla/5.0 (Linux; Android 16; Slate) Safari/537.36')).toBe('A tablet');
    expect(browserWords('Mozilla/5.0 (X11; Linux x86_64) Gecko/20100101')).toBe('A computer');
    expect(browserWords('')).toBe('A device that did not say what it is');
  });
});
