// One day of the bays as lanes: what ran, runs, is planned, sets or is held, in minutes of that day.

import type { PlannedTask, SettingInterval } from '@gusset/contracts/planning';
import type { Lane, LaneTask } from '@gusset/drawings';
import { addDays, formatMinutes, toShopTime, weekdayOf } from '@gusset/units';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { boundWords, type PlanFrame, settingWords, whenWords } from '../../shared/plan/plan-words.ts';

export type CurrentPlan = ApiOutputs['plan']['current'];

const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;
const DAY_MINUTES = 24 * 60;

/** A part or somebody's leave holds it, and somebody can do something about that: drawn in red with its reason. */
export function isHeld({ state, boundBy }: PlannedTask): boolean {
  if (state !== 'planned' || boundBy === null) return false;
  if (boundBy.kind === 'person') return boundBy.taskId === null;
  return boundBy.kind === 'part';
}

/** Opening hours of that day, and whatever lies outside of them. */
export function dayWindow(view: CurrentPlan, day: string): { fromMinute: number; toMinute: number } {
  const weekday = WEEKDAYS[weekdayOf(day) - 1] ?? 'monday';
  const open = view.calendar.closedOn.includes(day) ? [] : view.calendar.weeklyHours[weekday];
  const minutes = (time: string) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
  const from = Math.min(...open.map((stretch) => minutes(stretch.from)));
  const until = Math.max(...open.map((stretch) => minutes(stretch.until)));
  if (open.length === 0) return { fromMinute: 8 * 60, toMinute: 17 * 60 };
  return { fromMinute: from, toMinute: until };
}

export function dayLanes(view: CurrentPlan, day: string, frame: PlanFrame): Lane[] {
  const { plan, bays } = view;
  const inDay = (instant: string) => minuteOn(instant, day, frame.zone);
  const tasksOf = (bayId: string | null): PlannedTask[] => plan.tasks.filter((task) => task.bayId === bayId);
  const bayOf = new Map(plan.tasks.map(({ taskId, bayId }) => [taskId, bayId]));
  // Where the piece stands while it sets: its bay also where that bay may take other work meanwhile.
  const standsIn = (setting: SettingInterval) =>
    setting.bayId ?? bayOf.get(setting.afterTaskId) ?? bayOf.get(setting.beforeTaskId) ?? null;
  const setsIn = (bayId: string | null): SettingInterval[] =>
    plan.settingIntervals.filter((setting) => setting.reason !== 'customer' && standsIn(setting) === bayId);
  const barsIn = (bayId: string | null): LaneTask[] => [
    ...tasksOf(bayId).flatMap((task) => taskBars(task, view, frame, inDay)),
    ...setsIn(bayId).flatMap((setting) => settingBar(setting, view, frame, inDay)),
  ];
  const lanes = bays.map(({ id, name }) => ({
    name,
    caption: jobsIn(view, [...tasksOf(id), ...setsIn(id)], day, frame),
    tasks: barsIn(id),
  }));
  const aside = barsIn(null);
  return aside.length === 0
    ? lanes
    : [...lanes, { name: 'No bay', caption: 'Desk, rack and yard', tasks: aside }];
}

/** Minutes since that day's midnight on the shop's clock; before it negative, after it above a day. */
export function minuteOn(instant: string, day: string, zone: string): number {
  const { date, minuteOfDay } = toShopTime(instant, zone);
  if (date < day) return -1;
  return date > day ? DAY_MINUTES : minuteOfDay;
}

type InDay = (instant: string) => number;

function taskBars(task: PlannedTask, view: CurrentPlan, frame: PlanFrame, inDay: InDay): LaneTask[] {
  const begun = task.startsAt ?? task.endsAt;
  const stretches = task.state === 'planned' ? task.segments : [{ startsAt: begun, endsAt: task.endsAt }];
  const first = stretches[0];
  const last = stretches.at(-1);
  if (first === undefined || last === undefined) return [];
  const onDay = stretches
    .map(({ startsAt, endsAt }) => ({ from: inDay(startsAt), to: inDay(endsAt) }))
    .filter(({ from, to }) => to > 0 && from < DAY_MINUTES && to > from);
  const from = onDay[0]?.from;
  const to = onDay.at(-1)?.to;
  if (from === undefined || to === undefined) return [];
  const person = view.people.find(({ id }) => id === task.personId)?.name ?? '';
  const number = view.jobs.find(({ id }) => id === task.jobId)?.number ?? '';
  const held = isHeld(task);
  const boundBy = task.boundBy;
  return [
    {
      key: task.taskId,
      name: task.title,
      note:
        held && boundBy !== null
          ? boundWords(boundBy, frame, null)
          : [`${number}`, person, progressWords(task, view)].filter(Boolean).join(' · '),
      fromMinute: Math.max(0, from),
      toMinute: Math.min(DAY_MINUTES, to),
      state: held ? 'held' : task.state,
    },
  ];
}

/** In shop hours, nights and weekends left out: `done in 1 h 50`, `48 min of 2 h`. */
export function progressWords({ taskId, state }: PlannedTask, view: Pick<CurrentPlan, 'tasks'>): string {
  const row = view.tasks.find(({ id }) => id === taskId);
  const worked = formatMinutes(row?.workedMinutes ?? 0);
  if (state === 'done') return `done in ${worked}`;
  return state === 'running' ? `${worked} of ${formatMinutes(row?.minutes ?? 0)}` : '';
}

function settingBar(setting: SettingInterval, view: CurrentPlan, frame: PlanFrame, inDay: InDay): LaneTask[] {
  const from = inDay(setting.startsAt);
  const to = inDay(setting.endsAt);
  const number = view.jobs.find(({ id }) => id === setting.jobId)?.number ?? '';
  if (to <= 0 || from >= DAY_MINUTES || to <= from) return [];
  return [
    {
      key: `${setting.afterTaskId}>${setting.beforeTaskId}`,
      name: `${setting.title}: ${settingWords(setting.reason)}`,
      note: `${number} · nobody needed until ${whenWords(setting.endsAt, frame)}`,
      fromMinute: Math.max(0, from),
      toMinute: Math.min(DAY_MINUTES, to),
      state: 'setting',
    },
  ];
}

function jobsIn(
  view: CurrentPlan,
  stays: readonly Pick<PlannedTask, 'jobId' | 'startsAt' | 'endsAt'>[],
  day: string,
  { zone }: PlanFrame,
): string {
  const ids = new Set(
    stays
      .filter(({ startsAt, endsAt }) => {
        const from = toShopTime(startsAt ?? endsAt, zone).date;
        return from <= day && toShopTime(endsAt, zone).date >= day;
      })
      .map(({ jobId }) => jobId),
  );
  const jobs = view.jobs.filter(({ id }) => ids.has(id));
  const [first, ...others] = jobs;
  if (first === undefined) return '';
  // The lane's margin has room for one name.
  return others.length === 0
    ? `${first.vehicle || first.title} · ${first.number}`
    : jobs.map(({ number }) => number).join(', ');
}

/** What somebody has on a day: what runs, what comes next, in order. */
export function myDay(view: CurrentPlan, personId: string | null, day: string, zone: string): PlannedTask[] {
  if (personId === null) return [];
  return view.plan.tasks
    .filter((task) => task.personId === personId)
    .filter((task) => {
      const from = toShopTime(task.startsAt ?? task.endsAt, zone).date;
      const to = toShopTime(task.endsAt, zone).date;
      return task.state === 'running' || (from <= day && to >= day);
    });
}

/** The week that a day lies in, Monday to Sunday. */
export function weekOf(day: string): { readonly from: string; readonly to: string } {
  const from = addDays(day, 1 - weekdayOf(day));
  return { from, to: addDays(from, 6) };
}
