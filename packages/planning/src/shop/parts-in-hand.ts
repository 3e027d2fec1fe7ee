// When the parts of a job can be counted on, as moments of the grid.
import type { PartDate, PlanFinding, PlanJob, PlanSettings } from '@gusset/contracts/planning';
import { dateOfDay, dayOfDate, minuteOfDay, type ShopClock } from './shop-clock.ts';

export type ExpectedPart = {
  readonly part: PartDate;
  /** In hand from this moment of the grid. */
  readonly unit: number;
};

/** Parts that are still to come, by the key of each task they hold, with what somebody should ask about. */
export function expectedParts(
  clock: ShopClock,
  settings: PlanSettings,
  job: PlanJob,
): {
  readonly byTaskKey: ReadonlyMap<string, readonly ExpectedPart[]>;
  readonly findings: readonly PlanFinding[];
} {
  const byTaskKey = new Map<string, ExpectedPart[]>();
  const findings: PlanFinding[] = [];
  for (const part of job.partDates) {
    if (part.receivedOn !== null) continue;
    const { unit, day, overdue } = whenInHand(clock, settings, part);
    const named = { jobId: job.id, lineKey: part.lineKey, description: part.description };
    if (part.expectedOn === null) {
      findings.push({ code: 'part-without-date', ...named, reckonedOn: dateOfDay(day) });
    } else if (overdue) {
      findings.push({ code: 'part-overdue', ...named, expectedOn: part.expectedOn });
    }
    for (const key of part.neededByTaskKeys) {
      const others = byTaskKey.get(key) ?? [];
      byTaskKey.set(key, [...others, { part, unit }]);
    }
  }
  return { byTaskKey, findings };
}

/** An overdue part is reckoned for the next delivery: later today, or tomorrow. */
function whenInHand(clock: ShopClock, settings: PlanSettings, part: PartDate) {
  const today = clock.dayOf(clock.originMs);
  const at = minuteOfDay(settings.partsInHandAt);
  const wished = part.expectedOn === null ? today + settings.unknownPartDays : dayOfDate(part.expectedOn);
  const unitOn = (day: number) => clock.unitAtOrAfter(clock.wallMs(day, at));
  const overdue = unitOn(wished) <= 0;
  const day = !overdue ? wished : unitOn(today) > 0 ? today : today + 1;
  return { unit: unitOn(day), day, overdue };
}
