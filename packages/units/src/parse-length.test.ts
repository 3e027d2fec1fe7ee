import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatLength,
  type InchDenominator,
  isRefusal,
  type LengthUnit,
  parseLength,
  roundedForDrawing,
} from './index.ts';

const mmOf = (text: string, unit: LengthUnit = 'mm', decimalComma = false): number => {
  const read = parseLength(text, { unit, decimalComma });
  if (isRefusal(read)) throw new Error(`${text}: ${read.refusal.why}`);
  return read.mm;
};

const whyNot = (text: string, unit: LengthUnit = 'mm', decimalComma = false): string => {
  const read = parseLength(text, { unit, decimalComma });
  if (!isRefusal(read)) throw new Error(`${text} was read as ${read.mm} mm`);
  return read.refusal.why;
};

// Every value: inches x 25.4, feet x 304.8, worked by hand.
const TABLE: readonly (readonly [typed: string, unit: LengthUnit, mm: number])[] = [
  ['438', 'mm', 438],
  ['438mm', 'mm', 438],
  ['438 mm', 'in', 438],
  ['438.15', 'mm', 438.15],
  ['438,15', 'mm', 438.15],
  ['43.815cm', 'mm', 438.15],
  ['0.43815 m', 'in', 438.15],
  ['0,438 m', 'mm', 438],
  ['17 1/4', 'in', 438.15],
  ['17-1/4"', 'in', 438.15],
  ['17–1/4"', 'mm', 438.15],
  ['17¼', 'in', 438.15],
  ['17 ¼ in', 'mm', 438.15],
  ['17.25in', 'mm', 438.15],
  ['17.25', 'in', 438.15],
  ['17,25', 'in', 438.15],
  ['1\' 5 1/4"', 'mm', 438.15],
  ['1′ 5 ¼″', 'mm', 438.15],
  ['1’5¼”', 'mm', 438.15],
  ["1'-5 1/4''", 'mm', 438.15],
  ['1 ft 5 1/4 in', 'mm', 438.15],
  ['1 foot 5.25 inches', 'mm', 438.15],
  ['1ft5.25in', 'mm', 438.15],
  ["1'5", 'mm', 431.8],
  ["2'", 'in', 609.6],
  ['2 feet', 'mm', 609.6],
  ['1 1/2 ft', 'mm', 457.2],
  ["1.5'", 'mm', 457.2],
  ['5/8', 'in', 15.875],
  ['5⁄8"', 'mm', 15.875],
  ['⅝', 'in', 15.875],
  ['⅞"', 'mm', 22.225],
  ['½ in', 'mm', 12.7],
  ['1/64"', 'mm', 0.396875],
  ['17 63/64"', 'mm', 456.803125],
  ['17¹⁄₄', 'in', 438.15],
  ['3/4', 'mm', 19.05],
  ['17 1/4', 'mm', 438.15],
  ['17 18/16', 'in', 460.375],
  ['17 1/4 + 3/4', 'in', 457.2],
  ['17 1/4" + 3/4"', 'mm', 457.2],
  ['17-1/4+3/4', 'in', 457.2],
  ['400-2*18', 'mm', 364],
  ['400 - 2 * 18', 'mm', 364],
  ['400−2*18 mm', 'mm', 364],
  ['2*17 1/4', 'in', 876.3],
  ['438 mm / 2', 'mm', 219],
  ['400÷2', 'mm', 200],
  ['5/8"/2', 'mm', 7.9375],
  ['438 mm + 3/4 in', 'mm', 457.05],
  ['438 + 3/4"', 'mm', 457.05],
  ['17 1/4″ +0.35 mm', 'mm', 438.5],
  ['17 1/4″ −0.35 mm', 'in', 437.8],
  ["3' −0.35 mm", 'in', 914.05],
  ['-5', 'mm', -5],
  ['−1/4"', 'mm', -6.35],
  ['+12', 'mm', 12],
  ['.5"', 'mm', 12.7],
  ['5.', 'mm', 5],
  ['１７．５ ㎝', 'mm', 175],
  ['  438\u00a0mm\u200b ', 'in', 438],
  ['12 MM', 'mm', 12],
  ['5 IN.', 'mm', 127],
  ['1,234.5', 'mm', 1234.5],
  ['1.234,5', 'mm', 1234.5],
  ['0', 'mm', 0],
  ['-0', 'in', 0],
];

describe('parseLength', () => {
  it.each(TABLE)('reads %s in a field of %s as %d mm', (typed, unit, mm) => {
    expect(Object.is(mmOf(typed, unit), mm)).toBe(true);
  });

  it('keeps the text as typed, and the unit in which it reads the same again', () => {
    for (const [typed, unit, mm] of TABLE) {
      const read = parseLength(typed, { unit });
      if (isRefusal(read)) throw new Error(typed);
      expect(read.typed).toBe(typed);
      expect(mmOf(read.typed, read.unit)).toBe(mm);
    }
  });

  it.each([
    ['43,815 cm', false, 'Is that 43815 or 43.815? Type 43815 or 43.8150.'],
    ['1,234', false, 'Is that 1234 or 1.234? Type 1234 or 1.2340.'],
    ['1.234', true, 'Is that 1234 or 1,234? Type 1234 or 1,2340.'],
  ])('asks whether the sign in %s groups or divides', (typed, decimalComma, question) => {
    expect(whyNot(typed, 'mm', decimalComma)).toBe(question);
  });

  it('takes the decimal sign of the shop without asking', () => {
    expect(mmOf('1,234', 'mm', true)).toBe(1.234);
    expect(mmOf('1.234', 'mm', false)).toBe(1.234);
    expect(mmOf('17,25', 'in', true)).toBe(438.15);
    expect(mmOf('0,375', 'in', false)).toBe(9.525);
  });

  it.each([
    ['5/8/2', 'in', '5/8 divided by 2, or 5 divided by 8/2'],
    ['17 1/4 mm', 'mm', '17.25 mm, or inches'],
    ['12 - 1/2', 'in', '12 1/2, or 12 minus 1/2'],
    ['400-18/2', 'mm', '400 18/2, or 400 minus 18/2'],
    ['3\' - 5"', 'mm', '3 ft 5 in, or 3 ft minus 5 in'],
    ['400/2', 'mm', '400/2 a division in millimetres, or inches'],
    ['17 1/4 + 3', 'mm', 'in millimetres or in inches'],
    ['12 x 18', 'mm', 'a product or two sizes'],
    ['1 234', 'mm', '1234, or two numbers, 1 and 234'],
  ] as const)('asks about %s, naming both readings', (typed, unit, readings) => {
    expect(whyNot(typed, unit)).toContain(readings);
    expect(whyNot(typed, unit)).toContain('?');
  });

  it.each([
    ['', 'Nothing is typed yet.'],
    ['   ', 'Nothing is typed yet.'],
    ['17 1/0', 'over 0'],
    ['0/0', 'over 0'],
    ['5/(8)', 'neither a number nor a unit'],
    ['1/2 1/4', 'two fractions'],
    ['17.5 1/4', 'mixes a decimal with a fraction'],
    ['12 mm 5', 'side by side'],
    ['5" 1\'', 'side by side'],
    ["1' 5 mm", 'Feet go with inches'],
    ['18mm*18mm', 'an area'],
    ['438/2mm', 'Fractions are for inches'],
    ['12/0.0', 'divided by 0'],
    ['1..5', 'do not add up'],
    ['1,2,3', 'do not add up'],
    ['5 +', 'A number is missing'],
    ['mm', 'A number is missing'],
    ['17²', 'neither a number nor a unit'],
    ['12 yards', 'neither a number nor a unit'],
  ])('refuses %s with its reason', (typed, reason) => {
    expect(whyNot(typed, 'in')).toContain(reason);
  });

  it("says what a sentence at the field needs: what is wrong and an example in the shop's unit", () => {
    expect(whyNot('wide')).toBe(
      'Part of that is neither a number nor a unit known here. Type a length such as 438, 43.8 cm or 17 1/4 in.',
    );
    expect(whyNot('wide', 'in')).toContain('such as 17 1/4, 17.25 or 438 mm.');
    expect(whyNot('wide', 'mm', true)).toContain('43,8 cm');
  });

  it('says what a fraction of more than one became', () => {
    expect(parseLength('17 18/16', { unit: 'in' })).toMatchObject({ note: '17 18/16 was read as 18 1/8.' });
    expect(parseLength('17 1/4', { unit: 'mm' })).toMatchObject({ note: 'The fraction was read as inches.' });
    expect(parseLength('17 1/4', { unit: 'in' })).toMatchObject({ note: null });
  });

  it("refuses what is out of the field's range, with the range and the unit that would fit", () => {
    const options = { unit: 'in', minMm: 0, maxMm: 2540, field: 'box.widthMm' } as const;
    expect(parseLength('438', options)).toEqual({
      refusal: {
        field: 'box.widthMm',
        allowed: '0″ to 100″',
        got: '438',
        why: '438″ is outside this field: it takes 0″ to 100″. If it is in millimetres, type mm behind it.',
      },
    });
    expect(parseLength('-1', options)).toMatchObject({ refusal: { allowed: '0″ to 100″' } });
    expect(parseLength('100', options)).toMatchObject({ mm: 2540 });
    expect(whyNot('9'.repeat(100))).toContain('at most 100000 mm');
  });

  it('never throws and answers at once, whatever is pasted', { timeout: 5000 }, () => {
    const hostile = [
      '1e309',
      '😀',
      '<script>alert(1)</script>',
      'NaN',
      'Infinity',
      '-'.repeat(10_000),
      '1/'.repeat(5000),
      '9'.repeat(10_000),
      ' '.repeat(10_000),
      '½'.repeat(119),
      '1+'.repeat(60),
      '(((((',
      '\u0000',
      '\ud800',
      "'".repeat(120),
      '1 '.repeat(60),
      '٤٣٨',
      'Ⅷ',
      '①②',
      '1\n2',
      '__proto__',
      'constructor',
      '1'.repeat(120),
      '🇫🇷'.repeat(30),
    ];
    const start = Date.now();
    for (const text of hostile) {
      for (const unit of ['mm', 'in'] as const) {
        const read = parseLength(text, { unit });
        if (isRefusal(read)) expect(read.refusal.why).toMatch(/\w.*[.?]$/);
        else expect(Number.isFinite(read.mm)).toBe(true);
      }
    }
    expect(Date.now() - start).toBeLessThan(500);
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        const read = parseLength(text, { unit: 'in' });
        return isRefusal(read) || Number.isFinite(read.mm);
      }),
      { numRuns: 5000 },
    );
  });

  it('takes random arrangements of its own words without throwing, and reads what it takes the same again', () => {
    const word = fc.constantFrom(
      '1',
      '17',
      '1/4',
      '.5',
      '3,5',
      "'",
      '"',
      'mm',
      'cm',
      'ft',
      'in',
      '+',
      '-',
      '*',
      '/',
      ' ',
      '½',
    );
    fc.assert(
      fc.property(
        fc.array(word, { maxLength: 9 }),
        fc.constantFrom<LengthUnit>('mm', 'in'),
        (words, unit) => {
          const read = parseLength(words.join(''), { unit });
          if (isRefusal(read)) return;
          expect(mmOf(read.typed, read.unit)).toBe(read.mm);
        },
      ),
      { numRuns: 5000 },
    );
  });
});

describe('showing and typing again', () => {
  const nanometres = fc.integer({ min: -3_000_000_000, max: 3_000_000_000 });
  const shown = fc.record({
    unit: fc.constantFrom<LengthUnit>('mm', 'in'),
    denominator: fc.constantFrom<InchDenominator>(8, 16, 32, 64),
    decimalComma: fc.boolean(),
  });

  it('stays within half a step for 10,000 random lengths', () => {
    fc.assert(
      fc.property(nanometres, shown, (nm, format) => {
        const mm = nm / 1e6;
        const back = parseLength(formatLength(mm, format), format);
        if (isRefusal(back)) throw new Error(back.refusal.why);
        // Millimetres are shown to 0.1; inches with a rest to 0.01 mm, left out below 0.005 mm.
        const halfStepMm = format.unit === 'mm' ? 0.05 : 0.005;
        expect(Math.abs(back.mm - mm)).toBeLessThanOrEqual(halfStepMm + 1e-9);
        const drawn = roundedForDrawing(mm, format);
        expect(Math.abs(drawn.restMm)).toBeLessThanOrEqual(
          format.unit === 'mm' ? 0.05 : 12.7 / format.denominator,
        );
      }),
      { numRuns: 10_000 },
    );
  });

  it('shows the text as typed after storing it, in five ways of writing numbers', () => {
    for (const locale of ['en-US', 'en-GB', 'de', 'fr', 'sv']) {
      const format = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 });
      const decimalComma = format.format(0.5).includes(',');
      fc.assert(
        fc.property(fc.integer({ min: 0, max: 99_999 }), (hundredths) => {
          const typed = format.format(hundredths / 100);
          const read = parseLength(typed, { unit: 'mm', decimalComma });
          if (isRefusal(read)) throw new Error(read.refusal.why);
          expect(read.mm).toBe(hundredths / 100);
          expect(read.typed).toBe(typed);
        }),
        { numRuns: 500 },
      );
    }
  });
});
