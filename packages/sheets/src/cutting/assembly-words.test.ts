import type { AssemblyPlan, AssemblyStep } from '@gusset/contracts/cutting';
import { describe, expect, it } from 'vitest';
import { stepDetail, stepFigures, waitWords } from './assembly-words.ts';

const STEP: AssemblyStep = {
  order: 4,
  what: 'glue',
  marks: ['E', 'A'],
  seamMm: 2_400,
  screws: 12,
  clamps: 10,
  clampMinutes: 60,
  waitMinutes: 120,
};
const PLAN: AssemblyPlan = {
  steps: [STEP],
  baseMark: 'E',
  closingMark: 'F',
  waitMinutes: 120,
  curingFactor: 1,
};

describe('words of the glue-up', () => {
  it('says what lies flat first, and what is still off when it is tried', () => {
    expect(stepDetail(STEP, PLAN)).toContain('E lies flat');
    expect(stepDetail({ ...STEP, marks: ['B'] }, PLAN)).toContain('open time');
    expect(stepDetail({ ...STEP, what: 'try' }, PLAN)).toContain('with F still off');
  });

  it('counts glue line, screws and clamps, and waits', () => {
    expect(stepFigures(STEP, (mm) => `${mm} mm`)).toBe('2400 mm of glue line, 12 screws, 10 clamps');
    expect(waitWords(STEP)).toBe('in clamps for 1 h, leave it 2 h before it is carried or cut');
    expect(waitWords({ ...STEP, clampMinutes: 0 })).toBe('leave it 2 h before it is carried or cut');
    expect(waitWords({ ...STEP, clampMinutes: 0, waitMinutes: 0 })).toBe('');
  });
});
