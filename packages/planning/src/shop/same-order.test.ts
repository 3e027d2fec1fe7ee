import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quarryRoad } from '../../bench/quarry-road.ts';
import { withLeave, withPartDate } from './plan-changes.ts';
import { away, changed, jobOf, planned } from './small-shop.ts';

describe('planShop with the order kept', () => {
  it('repeats the plan it keeps when nothing changed', () => {
    const input = quarryRoad(5, 3);
    const before = planned(input);
    const again = planned(input, { keepOrderOf: before, schedules: 1 });
    expect(again.tasks.map(({ taskId, endsAt }) => [taskId, endsAt])).toEqual(
      before.tasks.map(({ taskId, endsAt }) => [taskId, endsAt]),
    );
  });

  // A plan made afresh may gain by bad news: with another order forced on it, a list can come out shorter
  // (R. L. Graham, "Bounds on multiprocessing timing anomalies", 1969). With people, bays and turns kept it can't.
  it('never finishes any job earlier for more leave', () => {
    fc.assert(
      fc.property(
        fc.nat(1_000),
        fc.constantFrom('ilves', 'sato', 'bello', 'nowak'),
        fc.nat(12),
        (seed, who, day) => {
          const input = quarryRoad(4, seed);
          const before = planned(input, { schedules: 2 });
          const on = `2026-12-${String(1 + day).padStart(2, '0')}`;
          const after = planned(changed(withLeave(input, who, away(on, on))), {
            keepOrderOf: before,
            schedules: 1,
          });
          for (const { jobId, finishesAt } of before.jobs) {
            expect(jobOf(after, jobId)?.finishesAt?.localeCompare(finishesAt ?? '')).toBeGreaterThanOrEqual(
              0,
            );
          }
        },
      ),
      { numRuns: 12 },
    );
  }, 60_000);

  it('never finishes any job earlier for a later part', () => {
    fc.assert(
      fc.property(fc.nat(1_000), fc.nat(3), fc.integer({ min: 1, max: 9 }), (seed, j, days) => {
        const input = quarryRoad(4, seed);
        const before = planned(input, { schedules: 2 });
        const on = `2026-12-${String(3 + days).padStart(2, '0')}`;
        const later = changed(withPartDate(input, `job-${2400 + j}`, 'drivers', on));
        const after = planned(later, { keepOrderOf: before, schedules: 1 });
        for (const { jobId, finishesAt } of before.jobs) {
          expect(jobOf(after, jobId)?.finishesAt?.localeCompare(finishesAt ?? '')).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 12 },
    );
  }, 60_000);

  it('never finishes a job before its own part is in, planned afresh too', () => {
    const input = changed(withPartDate(quarryRoad(3), 'job-2401', 'drivers', '2026-12-14'));
    expect((jobOf(planned(input), 'job-2401')?.finishesAt ?? '') > '2026-12-14T13:00:00Z').toBe(true);
  });
});
