// Somebody's planned work and leave as a calendar (RFC 5545). It lies on other people's servers, so it holds no
// customer, no price and no phone number: the task, the job's number, the vehicle, the bay.
import type { PlannedTask } from '@gusset/contracts/planning';
import { addDays, toShopTime } from '@gusset/units';
import ical, { type ICalCalendar, ICalEventTransparency } from 'ical-generator';
import { Temporal } from 'temporal-polyfill';
import { toShopDate } from '../data/dates.ts';
import type { Deps } from '../deps.ts';
import { type ForwardPlan, forwardPlan } from '../planning/forward-plan.ts';
import type { PresentedFeed } from './presented-feed.ts';
import { timeZoneBlock } from './time-zone-block.ts';

/** Calendars that ask by the book come again after this long. */
const REFRESH_SECONDS = 15 * 60;
/** Clock changes are told this far around what is planned. */
const ZONE_DAYS = 400;

/** Null where the person works here no more. */
export function feedOf(deps: Deps, { shopId, tokenId, personId }: PresentedFeed): Promise<string | null> {
  return deps.doors.inShop(shopId, async (tx) => {
    const now = deps.clock.now();
    await tx.accessToken.updateMany({
      where: { shopId, id: tokenId },
      data: { usedCount: { increment: 1 }, lastUsedAt: now },
    });
    const forward = await forwardPlan(deps, tx, { shopId }, 'a calendar was read');
    const person = forward.rows.people.find(({ id }) => id === personId);
    return person === undefined ? null : writeFeed(forward, person, { publicUrl: deps.env.PUBLIC_URL, now });
  });
}

type Person = ForwardPlan['rows']['people'][number];
type Frame = { readonly publicUrl: string; readonly now: Date };

function writeFeed(forward: ForwardPlan, person: Person, { publicUrl, now }: Frame): string {
  const { shop, plan } = forward;
  const zone = shop.timeZone;
  const calendar = ical({
    name: `${person.name}, ${shop.name}`,
    prodId: { company: 'Gusset', product: 'Bays', language: 'EN' },
    ttl: REFRESH_SECONDS,
  });
  const instant = Temporal.Instant.fromEpochMilliseconds(now.getTime());
  const hours = { hours: ZONE_DAYS * 24 };
  calendar.timezone({
    name: zone,
    generator: () => timeZoneBlock(zone, instant.subtract(hours), instant.add(hours)),
  });
  for (const task of plan.tasks.filter(({ personId }) => personId === person.id)) {
    addTask(calendar, forward, task, { publicUrl, now });
  }
  for (const leave of person.leaves) {
    const [fromOn, toOn] = [toShopDate(leave.fromOn), toShopDate(leave.toOn)];
    if (fromOn === null || toOn === null) continue;
    calendar.createEvent({
      id: `leave-${person.id}-${fromOn}@gusset`,
      start: Temporal.PlainDate.from(fromOn),
      end: Temporal.PlainDate.from(addDays(toOn, 1)),
      allDay: true,
      summary: 'Away',
      stamp: now,
      transparency: ICalEventTransparency.OPAQUE,
    });
  }
  return calendar.toString();
}

/** One event for each day that the task is worked on; the same day of the same task keeps its UID. */
function addTask(calendar: ICalCalendar, forward: ForwardPlan, task: PlannedTask, { publicUrl, now }: Frame) {
  const { rows, shop, revisions } = forward;
  const job = rows.jobs.find(({ id }) => id === task.jobId);
  if (job === undefined) return;
  const bay = rows.bays.find(({ id }) => id === task.bayId);
  const vehicle = job.vehicle === null ? '' : ` · ${job.vehicle.model.make} ${job.vehicle.model.model}`;
  const zoned = (at: string) => Temporal.Instant.from(at).toZonedDateTimeISO(shop.timeZone);
  for (const [i, day] of daysOf(task, shop.timeZone).entries()) {
    calendar.createEvent({
      id: `${task.taskId}-${i + 1}@gusset`,
      sequence: revisions[task.taskId] ?? 0,
      start: zoned(day.startsAt),
      end: zoned(day.endsAt),
      timezone: shop.timeZone,
      summary: `${task.title} · job ${job.number}${vehicle}`,
      location: bay?.name ?? null,
      description: `${STATE_WORDS[task.state]}. ${publicUrl}/jobs/${job.number}/plan`,
      stamp: now,
    });
  }
}

const STATE_WORDS: Readonly<Record<PlannedTask['state'], string>> = {
  planned: 'Planned; it may move',
  running: 'Begun',
  done: 'Done',
};

type Stretch = { readonly startsAt: string; readonly endsAt: string };

/** From the first to the last minute of each day, breaks included. */
function daysOf(task: PlannedTask, zone: string): Stretch[] {
  const worked = task.startsAt === null ? [] : [{ startsAt: task.startsAt, endsAt: task.endsAt }];
  const stretches = task.state === 'done' ? worked : task.segments;
  const days = new Map<string, Stretch>();
  for (const stretch of stretches) {
    const on = toShopTime(stretch.startsAt, zone).date;
    days.set(on, { startsAt: days.get(on)?.startsAt ?? stretch.startsAt, endsAt: stretch.endsAt });
  }
  return [...days.values()];
}
