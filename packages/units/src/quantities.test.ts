import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  degreesFromRad,
  formatAngle,
  formatArea,
  formatMass,
  formatMinutes,
  formatNumber,
  formatPercent,
  formatTemperature,
  formatVolume,
  isRefusal,
  parseAngle,
  parseArea,
  parseMass,
  parseMinutes,
  parseNumber,
  parsePercent,
  parseTemperature,
  parseVolume,
  type Refusal,
} from './index.ts';

function answer<T extends object>(value: T | Refusal): T {
  if (isRefusal(value)) throw new Error(value.refusal.why);
  return value;
}

const why = (value: object): string =>
  isRefusal(value) ? value.refusal.why : `read: ${JSON.stringify(value)}`;

describe('volumes', () => {
  it.each([
    ['42.5', 'L', 42.5],
    ['42,5 l', 'ft³', 42.5],
    ['1 ft3', 'L', 28.316846592],
    ['1 1/2 cu ft', 'L', 42.475269888],
    ['1.5', 'ft³', 42.475269888],
    ['100 in³', 'L', 1.6387064],
    ['350 ml', 'L', 0.35],
    ['350 cc', 'L', 0.35],
    ['2 dm³', 'L', 2],
  ] as const)('reads %s in a field of %s as %d L', (typed, unit, litres) => {
    expect(answer(parseVolume(typed, { unit })).litres).toBeCloseTo(litres, 9);
  });

  it('shows litres, cubic feet, and both', () => {
    expect(formatVolume(42.5, 'metric')).toBe('42.5 L');
    expect(formatVolume(42.5, 'imperial')).toBe('1.50 ft³');
    expect(formatVolume(42.5, 'metric', { both: true })).toBe('42.5 L (1.50 ft³)');
    expect(formatVolume(0.35, 'metric', { decimalComma: true })).toBe('0,35 L');
    expect(formatVolume(0.35, 'imperial', { both: true })).toBe('21.4 in³ (0.35 L)');
    expect(formatVolume(-0.001, 'metric')).toBe('0.00 L');
  });

  it('refuses what is no volume, below the field or a length', () => {
    expect(why(parseVolume('42 kg', { unit: 'L' }))).toContain('Type a volume such as 42.5 L');
    expect(why(parseVolume('-1', { unit: 'L' }))).toContain('it takes 0 L to');
    expect(why(parseVolume('1,234', { unit: 'L' }))).toContain('Is that 1234 or 1.234?');
  });
});

describe('masses', () => {
  it('reads kilograms, grams, pounds and ounces', () => {
    expect(answer(parseMass('27 1/2 lb', { unit: 'kg' })).kg).toBeCloseTo(12.473790175, 9);
    expect(answer(parseMass('350g', { unit: 'kg' })).kg).toBeCloseTo(0.35, 12);
    expect(answer(parseMass('16 oz', { unit: 'kg' })).kg).toBeCloseTo(0.45359237, 12);
    expect(answer(parseMass('2', { unit: 'lb' })).kg).toBeCloseTo(0.90718474, 12);
  });

  it('shows the unit that says it best', () => {
    expect(formatMass(23.44, 'metric', { both: true })).toBe('23.4 kg (51.7 lb)');
    expect(formatMass(0.35, 'metric')).toBe('350 g');
    expect(formatMass(0.35, 'imperial')).toBe('12.3 oz');
  });
});

describe('areas', () => {
  it('reads square metres, centimetres and feet', () => {
    expect(answer(parseArea('330 cm²', { unit: 'm²' })).areaM2).toBeCloseTo(0.033, 12);
    expect(answer(parseArea('26 sq ft', { unit: 'm²' })).areaM2).toBeCloseTo(2.41547904, 9);
    expect(formatArea(0.033, 'cm²')).toBe('330 cm²');
    expect(formatArea(2.4, 'ft²')).toBe('25.8 ft²');
  });
});

describe('angles', () => {
  it.each([
    ['7.5', 7.5],
    ['7,5°', 7.5],
    ["7°30'", 7.5],
    ['7º 30′', 7.5],
    ['7° 30\' 36"', 7.51],
    ['-7 1/2 deg', -7.5],
    ['7°30', 7.5],
    ["45'", 0.75],
    ['0', 0],
  ])('reads %s as %d degrees', (typed, degrees) => {
    const read = answer(parseAngle(typed));
    expect(read.degrees).toBeCloseTo(degrees, 9);
    expect(degreesFromRad(read.angleRad)).toBeCloseTo(degrees, 9);
  });

  it.each([
    ["7°75'", '60 minutes'],
    ["30'7°", 'Degrees come first'],
    ['', 'Nothing is typed yet'],
    ['7° x', 'A number is missing'],
    ['7 x', 'left over'],
    ['400', 'it takes −360° to 360°'],
    ['bevel', 'Type an angle such as'],
  ])('refuses %s', (typed, reason) => {
    expect(why(parseAngle(typed))).toContain(reason);
  });

  it('shows degrees, or degrees and minutes, never 60 minutes', () => {
    expect(formatAngle((7.5 * Math.PI) / 180)).toBe('7.5°');
    expect(formatAngle((7.5 * Math.PI) / 180, { minutes: true })).toBe("7°30'");
    expect(formatAngle((7.9999 * Math.PI) / 180, { minutes: true })).toBe("8°00'");
    expect(formatAngle((-0.25 * Math.PI) / 180, { minutes: true })).toBe("−0°15'");
  });

  it('reads back what it shows, to the minute', () => {
    fc.assert(
      fc.property(fc.integer({ min: -21_000, max: 21_000 }), (minutes) => {
        const shown = formatAngle((minutes / 60 / 180) * Math.PI, { minutes: true });
        expect(answer(parseAngle(shown)).degrees * 60).toBeCloseTo(minutes, 6);
      }),
    );
  });
});

describe('figures off a data sheet', () => {
  it.each([
    ['4.6', 'ohm', 4.6],
    ['0,52', 'millihenry', 0.52],
    ['3.6 ohm', 'ohm', 3.6],
    ['3.6 Ω', 'ohm', 3.6],
    ['3.6 \u2126', 'ohm', 3.6],
    ['12 mΩ', 'ohm', 0.012],
    ['1.2 kW', 'watt', 1200],
    ['800 mw', 'watt', 0.8],
    ['0.00052 H', 'millihenry', 0.52],
    ['14.4v', 'volt', 14.4],
    ['31.5 hz', 'hertz', 31.5],
    ['-3 dB', 'decibel', -3],
    ['12', 'none', 12],
    ['18 T·m', 'tesla-metre', 18],
  ] as const)('reads %s in a field of %s as %d', (typed, unit, value) => {
    expect(answer(parseNumber(typed, { unit })).value).toBeCloseTo(value, 9);
  });

  it('asks about a range instead of taking one end', () => {
    expect(why(parseNumber('3.2-3.8', { unit: 'ohm' }))).toBe(
      'Is 3.2-3.8 a range? Type the one figure to work with.',
    );
    expect(why(parseNumber('3–4 Ω', { unit: 'ohm' }))).toContain('a range?');
  });

  it('refuses another unit, an exponent, and what is out of range', () => {
    expect(why(parseNumber('4 V', { unit: 'ohm' }))).toBe(
      'Part of that is neither a number nor a unit known here. Type a number such as 4.6 Ω.',
    );
    expect(why(parseNumber('1e309', { unit: 'none' }))).toContain('neither a number nor a unit');
    expect(why(parseNumber('0', { unit: 'ohm', min: 0.1, max: 32 }))).toContain('it takes 0.1 Ω to 32 Ω');
  });

  it('shows decimals as needed', () => {
    expect(formatNumber(3.6, 'ohm')).toBe('3.6 Ω');
    expect(formatNumber(0.5204, 'millihenry', { decimalComma: true })).toBe('0,52 mH');
    expect(formatNumber(-0.0001, 'none')).toBe('0');
  });
});

describe('temperatures and percentages', () => {
  it('turns Fahrenheit into Celsius and back', () => {
    expect(answer(parseTemperature('68 °F', { unit: '°C' })).celsius).toBeCloseTo(20, 12);
    expect(answer(parseTemperature('68', { unit: '°F' })).celsius).toBeCloseTo(20, 12);
    expect(answer(parseTemperature('-40 ℃', { unit: '°F' })).celsius).toBe(-40);
    expect(formatTemperature(20, '°F')).toBe('68 °F');
    expect(formatTemperature(18.25, '°C', { decimalComma: true })).toBe('18,3 °C');
    expect(why(parseTemperature('900', { unit: '°C' }))).toContain('it takes −60 °C to 150 °C');
  });

  it('reads percent to basis points, keeping third and fourth decimals of tax rates', () => {
    expect(answer(parsePercent('7.25 %')).basisPoints).toBe(725);
    expect(answer(parsePercent('8.875')).basisPoints).toBe(887.5);
    expect(answer(parsePercent('20')).basisPoints).toBe(2000);
    expect(why(parsePercent('8.87512'))).toContain('at most four decimals');
    expect(why(parsePercent('101'))).toContain('0 % to 100 %');
    expect(formatPercent(887.5)).toBe('8.875 %');
    expect(formatPercent(2000)).toBe('20 %');
  });
});

describe('working times', () => {
  it.each([
    ['110', 110],
    ['1 h 50', 110],
    ['1h50', 110],
    ['1:50', 110],
    ['1.5 h', 90],
    ['1 1/2 h', 90],
    ['90 min', 90],
    ['1 d 2 h', 1560],
    ['0', 0],
  ])('reads %s as %d minutes', (typed, minutes) => {
    expect(answer(parseMinutes(typed)).minutes).toBe(minutes);
  });

  it.each([
    ['1:5', 'written 1:05'],
    ['1 h 75', '60 minutes'],
    ['50 min 1 h', 'hours, then minutes'],
    ['-5', 'not below nothing'],
    ['soon', 'Type a time such as'],
    ['1:', 'written 1:05'],
  ])('refuses %s', (typed, reason) => {
    expect(why(parseMinutes(typed))).toContain(reason);
  });

  it('shows hours and minutes, and reads them back', () => {
    expect(formatMinutes(110)).toBe('1 h 50');
    expect(formatMinutes(65)).toBe('1 h 05');
    expect(formatMinutes(120)).toBe('2 h');
    expect(formatMinutes(45)).toBe('45 min');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), (minutes) => {
        expect(answer(parseMinutes(formatMinutes(minutes))).minutes).toBe(minutes);
      }),
    );
  });
});

describe('every reader', () => {
  it('answers any text with a finite number or a sentence, and never throws', () => {
    const readers = [
      (text: string) => parseVolume(text, { unit: 'L' }),
      (text: string) => parseMass(text, { unit: 'kg' }),
      (text: string) => parseArea(text, { unit: 'm²' }),
      (text: string) => parseAngle(text),
      (text: string) => parseNumber(text, { unit: 'ohm' }),
      (text: string) => parseTemperature(text, { unit: '°C' }),
      (text: string) => parsePercent(text),
      (text: string) => parseMinutes(text),
    ];
    const words = fc.constantFrom(
      '1',
      '.',
      ',',
      '/',
      '-',
      ' ',
      '½',
      'ft³',
      '°',
      "'",
      'h',
      ':',
      'kg',
      '%',
      'Ω',
      '9'.repeat(40),
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 150 }),
      fc.array(words, { maxLength: 8 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(text, (typed) => {
        for (const read of readers) {
          const result = read(typed);
          if (isRefusal(result)) expect(result.refusal.why).toMatch(/[.?]$/);
          else {
            for (const value of Object.values(result)) {
              if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
            }
          }
        }
      }),
      { numRuns: 3000 },
    );
  });
});
