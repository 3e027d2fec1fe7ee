import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TextFace } from '../scene/scene.ts';
import { shortenText, textWidthPt, wrapText } from './text-width.ts';

const face = fc.constantFrom<TextFace>('regular', 'semibold', 'condensed', 'mono');

describe('textWidthPt', () => {
  it('is 0.6 of the size for each sign of the mono cut', () => {
    expect(textWidthPt('438.2', 'mono', 10)).toBeCloseTo(30, 9);
  });

  it('adds up Archivo’s own widths: A is 0.682 and B 0.698 of the size', () => {
    expect(textWidthPt('AB', 'regular', 1000)).toBe(682 + 698);
  });

  it('is narrower in the condensed cut', () => {
    expect(textWidthPt('Quarry Road', 'condensed', 10)).toBeLessThan(
      textWidthPt('Quarry Road', 'semibold', 10) * 0.9,
    );
  });
});

describe('wrapText', () => {
  it('breaks at spaces and at line feeds', () => {
    expect(wrapText('one two\nthree', 'mono', 10, 42)).toEqual(['one two', 'three']);
    expect(wrapText('one two three', 'mono', 10, 41)).toEqual(['one', 'two', 'three']);
    expect(wrapText('', 'mono', 10, 42)).toEqual(['']);
  });

  it('cuts a word that is wider than its column', () => {
    expect(wrapText('https://quarryroad', 'mono', 10, 48)).toEqual(['https://', 'quarryro', 'ad']);
  });

  it('never writes wider than the column and loses no sign', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 80 }),
        face,
        fc.double({ min: 20, max: 200, noNaN: true }),
        (words, cut, widthPt) => {
          const lines = wrapText(words, cut, 10, widthPt);
          for (const each of lines) expect(textWidthPt(each, cut, 10)).toBeLessThanOrEqual(widthPt + 1e-9);
          expect(lines.join('').replace(/\s/g, '')).toBe(words.replace(/\s/g, ''));
        },
      ),
    );
  });
});

describe('shortenText', () => {
  it('leaves what fits and ends the rest with …', () => {
    expect(shortenText('Glue', 'mono', 10, 24)).toBe('Glue');
    expect(shortenText('Glue setting', 'mono', 10, 42)).toBe('Glue s…');
    expect(shortenText('Glue setting', 'mono', 10, 36)).toBe('Glue…');
    expect(shortenText('Glue', 'mono', 10, 5)).toBe('');
  });
});
