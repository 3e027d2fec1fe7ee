import { HATCH_ESTATE } from '@gusset/cargo';
import { describe, expect, it } from 'vitest';
import { spokenFindings } from './finding-words.ts';
import { plusMinusWords, valueWords } from './reading-words.ts';

const metric = { unit: 'mm', denominator: 16 } as const;
const inches = { unit: 'in', denominator: 16 } as const;

describe('spokenFindings', () => {
  it('puts contradictions before assumptions and names the letter', () => {
    const spoken = spokenFindings(
      [
        { code: 'assumed', key: 'floorRise', unit: 'length', value: 0, why: 'floor taken as level' },
        {
          code: 'check-disagrees',
          key: 'sealHeight',
          measuredMm: 740,
          derivedMm: 715,
          byMm: 25,
          allowedMm: 12,
        },
      ],
      HATCH_ESTATE,
      metric,
    );
    expect(spoken.map(({ tone }) => tone)).toEqual(['fail', 'check']);
    expect(spoken[0]?.words).toMatch(/^L reads 740.mm; the other letters make it 715.mm/u);
    expect(spoken[1]?.words).toContain('floor taken as level');
  });
});

describe('words of a reading', () => {
  it('follow the unit of the device, and degrees for angles', () => {
    expect(valueWords({ unit: 'length' }, 498.475, inches)).toBe('19\u20095/8″');
    expect(valueWords({ unit: 'angle' }, Math.PI / 10, metric)).toContain('18');
    expect(plusMinusWords({ unit: 'length' }, 4.5, metric)).toBe('±4.5');
    expect(plusMinusWords({ unit: 'length' }, 4.5, inches)).toBe('±0.18″');
    expect(plusMinusWords({ unit: 'angle' }, Math.PI / 180, metric)).toBe('±1°');
  });
});
