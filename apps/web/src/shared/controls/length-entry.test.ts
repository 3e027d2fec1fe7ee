import { describe, expect, it } from 'vitest';
import {
  type LengthEntryRules,
  lengthInField,
  lengthNote,
  readLengthEntry,
  stepLength,
} from './length-entry.ts';

const MM: LengthEntryRules = { unit: 'mm', denominator: 16, minMm: 0, maxMm: 3000 };
const IN: LengthEntryRules = { unit: 'in', denominator: 16, minMm: 0, maxMm: 3000 };

describe('readLengthEntry', () => {
  it.each(['438.15', '43.815cm', '17 1/4 in', '17¼"', '1\' 5 1/4"'])('reads %s as 438.15 mm', (text) => {
    expect(readLengthEntry(text, MM)).toMatchObject({ kind: 'value', value: { mm: 438.15, typed: text } });
  });

  it('reads a bare 17 1/4 as inches in a shop that measures in inches', () => {
    expect(readLengthEntry('17 1/4', IN)).toMatchObject({ kind: 'value', value: { mm: 438.15 } });
  });

  it('takes an emptied field as no length', () => {
    expect(readLengthEntry('  ', MM)).toEqual({ kind: 'empty' });
  });

  it('says what is wrong in a sentence and names the range', () => {
    const read = readLengthEntry('4380', MM);
    expect(read.kind).toBe('refused');
    expect(read.kind === 'refused' && read.why).toContain('3000 mm');
  });
});

describe('lengthInField', () => {
  it('shows what reads back as the same length, within half a hundredth', () => {
    for (const rules of [MM, IN]) {
      for (const mm of [0, 0.4, 18, 438.15, 1219.2, 2999.99]) {
        const read = readLengthEntry(lengthInField(mm, rules), rules);
        expect(read.kind === 'value' && Math.abs(read.value.mm - mm)).toBeLessThanOrEqual(0.005);
      }
    }
  });
});

describe('stepLength', () => {
  it('adds one millimetre, ten with a big step', () => {
    expect(stepLength('438.15', 1, MM)?.mm).toBe(439.15);
    expect(stepLength('438', -10, MM)?.mm).toBe(428);
  });

  it('adds a sixteenth of an inch in inches', () => {
    expect(stepLength('17 1/4', 1, IN)?.mm).toBeCloseTo(438.15 + 25.4 / 16, 9);
  });

  it('stops at the ends of the range', () => {
    expect(stepLength('2999.6', 1, MM)?.mm).toBe(3000);
    expect(stepLength('0.4', -1, MM)?.mm).toBe(0);
  });

  it('has nothing to step from where nothing can be read', () => {
    expect(stepLength('', 1, MM)).toBeNull();
    expect(stepLength('wide', 1, MM)).toBeNull();
  });
});

describe('lengthNote', () => {
  it('gives the other unit, and the typed text where the field shows another', () => {
    expect(lengthNote({ mm: 438.15, typed: '17 1/4 in', unit: 'in' }, MM)).toBe(
      '17\u20091/4″ · typed 17 1/4 in',
    );
    expect(lengthNote({ mm: 438.15, typed: '438.15', unit: 'mm' }, MM)).toBe('17\u20091/4″');
    expect(lengthNote(null, MM)).toBeNull();
  });
});
