import { HATCH_ESTATE } from '@gusset/cargo';
import { describe, expect, it } from 'vitest';
import { plusMinusSteps, readEntry } from './reading-entry.ts';

const dimension = (key: string) => {
  const found = HATCH_ESTATE.dimensions.find((each) => each.key === key);
  if (found === undefined) throw new Error(`no ${key}`);
  return found;
};
const entry = (text: string) => ({ text, method: 'tape', plusMinus: null }) as const;

describe('readEntry', () => {
  it('keeps what was typed with its unit and takes the usual ± of the method, soft trim counted', () => {
    expect(readEntry(dimension('seatHeight'), entry('19 5/8'), 'in')).toEqual({
      kind: 'reading',
      reading: { key: 'seatHeight', value: 498.475, typed: '19 5/8 in', plusMinus: 4.5, method: 'tape' },
    });
    expect(readEntry(dimension('opening'), entry('59.7 cm'), 'in')).toMatchObject({
      reading: { value: 597, typed: '59.7 cm', plusMinus: 1.5 },
    });
  });

  it('reads degrees at an angle', () => {
    const read = readEntry(dimension('seatLean'), entry('18'), 'mm');
    expect(read).toMatchObject({ kind: 'reading', reading: { typed: '18°' } });
    expect(read.kind === 'reading' && read.reading.value).toBeCloseTo(Math.PI / 10, 9);
  });

  it('says what would be accepted where it cannot be', () => {
    const refused = readEntry(dimension('opening'), entry('5'), 'mm');
    expect(refused.kind === 'refused' && refused.why).toContain('100');
    expect(readEntry(dimension('opening'), entry('abc'), 'mm').kind).toBe('refused');
    expect(readEntry(dimension('opening'), entry('  '), 'mm')).toEqual({ kind: 'empty' });
  });
});

describe('plusMinusSteps', () => {
  it('offers the usual one first and once', () => {
    expect(plusMinusSteps(dimension('opening'), 'laser')).toEqual([2, 1, 3, 5, 10]);
  });
});
