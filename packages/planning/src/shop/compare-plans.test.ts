import { describe, expect, it } from 'vitest';
import { comparePlans } from './compare-plans.ts';
import { withLeave, withPartDate } from './plan-changes.ts';
import { away, changed, job, planned, soloShop, task } from './small-shop.ts';

describe('comparePlans', () => {
  it('says which promises a leave moved, and that it was the leave', () => {
    const input = soloShop([job(1, [task('cut', 60)], { rank: 1 }), job(2, [task('cut', 60)], { rank: 2 })]);
    const before = planned(input);
    const leave = changed(withLeave(input, 'ilves', away('2026-11-24', '2026-11-26')));
    const after = planned(leave, { keepOrderOf: before });
    expect(comparePlans(before, after, leave)).toMatchObject([
      {
        number: 1,
        from: '2026-11-24',
        to: '2026-11-27',
        movedDays: 3,
        because: { code: 'person-away', personName: 'Ilves' },
      },
      { number: 2, from: '2026-11-24', to: '2026-11-27', movedDays: 3, because: { code: 'person-away' } },
    ]);
    expect(comparePlans(before, before, input)).toEqual([]);
  });

  it('names the late part at the job that it holds', () => {
    const part = {
      lineKey: 'p',
      description: 'Medlar amplifier',
      receivedOn: null,
      neededByTaskKeys: ['fit'],
    };
    const partDates = [{ ...part, expectedOn: '2026-11-25' }];
    const input = soloShop([job(1, [task('fit', 60)], { partDates }), job(2, [task('cut', 60)])]);
    const before = planned(input);
    const later = changed(withPartDate(input, 'j1', 'p', '2026-11-27'));
    expect(comparePlans(before, planned(later), later)).toMatchObject([
      {
        number: 1,
        from: '2026-11-26',
        to: '2026-11-30', // Friday 14:00 and 4 shop hours end on Monday
        movedDays: 4,
        because: { code: 'part-due', description: 'Medlar amplifier', expectedOn: '2026-11-27' },
      },
    ]);
  });
});
