import { describe, expect, it } from 'vitest';
import { type PadKey, pressPadKey, TAPE_FRACTIONS } from './length-pad-keys.ts';

const digit = (text: string): PadKey => ({ kind: 'digit', digit: text });
const fraction = (text: (typeof TAPE_FRACTIONS)[number]): PadKey => ({ kind: 'fraction', fraction: text });
const press = (keys: readonly PadKey[], start = ''): string => keys.reduce(pressPadKey, start);

describe('pressPadKey', () => {
  it('types 17 1/4 in three keys', () => {
    expect(press([digit('1'), digit('7'), fraction('1/4')])).toBe('17 1/4');
  });

  it('replaces one fraction by another and takes the same one off again', () => {
    expect(press([fraction('3/8')], '17 1/4')).toBe('17 3/8');
    expect(press([fraction('1/4')], '17 1/4')).toBe('17');
  });

  it('takes a fraction alone and then reads digits as the whole before it', () => {
    expect(press([fraction('5/16')])).toBe('5/16');
    expect(press([digit('2')], '5/16')).toBe('2 5/16');
  });

  it('sets, changes and drops the unit', () => {
    expect(press([{ kind: 'unit', unit: 'in' }], '47')).toBe('47 in');
    expect(press([{ kind: 'unit', unit: 'mm' }], '47 in')).toBe('47 mm');
    expect(press([{ kind: 'unit', unit: 'mm' }], '47 mm')).toBe('47');
  });

  it('keeps digits before the unit', () => {
    expect(press([digit('5')], '47 mm')).toBe('475 mm');
  });

  it('allows one decimal point', () => {
    expect(press([{ kind: 'point' }, digit('5'), { kind: 'point' }], '43')).toBe('43.5');
  });

  it('turns the sign over', () => {
    expect(press([{ kind: 'sign' }], '12')).toBe('-12');
    expect(press([{ kind: 'sign' }], '-12')).toBe('12');
  });

  it('erases unit, then fraction, then digit by digit, and stops at nothing', () => {
    const erase: PadKey = { kind: 'erase' };
    expect(press([erase], '17 1/4 in')).toBe('17 1/4');
    expect(press([erase, erase], '17 1/4 in')).toBe('17');
    expect(press([erase, erase, erase, erase, erase], '17 1/4 in')).toBe('');
  });

  it('reads what the field shows: thin space and double prime', () => {
    expect(press([fraction('1/2')], '17\u20091/4″')).toBe('17 1/2 in');
  });

  it('goes on at the end of a sum it cannot take apart', () => {
    expect(press([digit('8')], '400-2*1')).toBe('400-2*18');
    expect(press([{ kind: 'erase' }], '400-2*18')).toBe('400-2*1');
  });

  it('adds two readings of the tape', () => {
    const plus: PadKey = { kind: 'plus' };
    expect(press([digit('1'), digit('7'), fraction('1/4'), plus, digit('3'), fraction('1/2')])).toBe(
      '17 1/4 + 3 1/2',
    );
    expect(press([plus])).toBe('');
  });

  it('clears everything', () => {
    expect(press([{ kind: 'clear' }], '17 1/4 + 3')).toBe('');
    expect(press([{ kind: 'clear' }], '17 1/4 in')).toBe('');
  });

  it('offers the fifteen sixteenths in the order of the tape', () => {
    const sizes = TAPE_FRACTIONS.map((text) => text.split('/').map(Number)).map(
      ([over = 0, under = 1]) => over / under,
    );
    expect(sizes).toEqual(Array.from({ length: 15 }, (_, index) => (index + 1) / 16));
  });
});
