// The forward plan of the whole shop: every open job, in shop hours, with a promise and what stands behind it.
import type { ShopPlan, ShopPlanInput } from '@gusset/contracts/planning';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type CompiledProject, compileProject } from '../core/compile-project.ts';
import { bindings, type DryingStand, type Stand } from './binding.ts';
import { dayLists, plannedTasks, settingIntervals } from './plan-lists.ts';
import { type FoundPlan, jobsInOrder, searchPlan } from './plan-search.ts';
import { plannedJobs } from './planned-jobs.ts';
import { dayOfDate, gridUnits, instantMs, type ShopClock, shopClock } from './shop-clock.ts';
import { firstShopFault } from './shop-faults.ts';
import { dryingId, type ShopProject, shopProject } from './shop-project.ts';

export type PlanShopOptions = {
  /** Schedules to compare, at least 1: 1 = the shop's own order of jobs and nothing else. */
  readonly schedules?: number;
  readonly seed?: number;
  /**
   * A plan whose people, bays and turns are kept: whatever changed can then only push tasks, not reshuffle them.
   * Tasks that it doesn't hold are fitted in behind. Where its order can't be kept any more, it is planned afresh.
   */
  readonly keepOrderOf?: ShopPlan | null;
};

const DEFAULT_SCHEDULES = 16; // under 100 ms for 12 jobs of 24 tasks on the slowest machine measured
const FIRST_HORIZON_WEEKS = 6;
const WEEK_UNITS = 7 * 24 * 4;
const LAST_HORIZON_WEEKS = 160; // three years: further ahead nothing is a plan

export function planShop(input: ShopPlanInput, options: PlanShopOptions = {}): ShopPlan | Refusal {
  const clock = shopClock(input.now, input.calendar.timeZone);
  if (clock === null) {
    return refuse('calendar.timeZone', {
      allowed: 'a time zone by its IANA name, such as Europe/Lisbon',
      got: input.calendar.timeZone,
      why: 'no time zone has this name',
    });
  }
  const fault = firstShopFault(input);
  if (fault !== null) return fault;
  const seed = options.seed ?? 1;
  const schedules = Math.max(1, options.schedules ?? DEFAULT_SCHEDULES);
  const keep = options.keepOrderOf ?? null;
  for (let weeks = firstWeeks(input, clock); ; weeks = Math.min(weeks * 2, LAST_HORIZON_WEEKS)) {
    const shop = shopProject(input, clock, weeks * WEEK_UNITS, keep);
    const compiled = compileProject(shop.project);
    if (isRefusal(compiled))
      return keep === null ? compiled : planShop(input, { ...options, keepOrderOf: null });
    const found = searchPlan(input, shop, compiled, { schedules, seed });
    if (found.broken === 0) return written(input, shop, compiled, found);
    if (weeks >= LAST_HORIZON_WEEKS) return noRoom(input, compiled, found);
  }
}

/** Weeks that the work would take half the people, from the last thing that is waited for. */
function firstWeeks(input: ShopPlanInput, clock: ShopClock): number {
  const open = input.jobs.flatMap(({ tasks }) => tasks.filter(({ state }) => state !== 'done'));
  const work = open.reduce((sum, { remainingMinutes }) => sum + gridUnits(remainingMinutes), 0);
  const weekly = Object.values(input.calendar.weeklyHours).flat();
  const weeklyUnits = weekly.length === 0 ? 160 : weekly.length * 12;
  const dates = input.jobs.flatMap(({ partDates, tasks }) => [
    ...partDates.flatMap(({ expectedOn }) =>
      expectedOn === null ? [] : [clock.wallMs(dayOfDate(expectedOn), 0)],
    ),
    ...tasks.flatMap(({ earliestStart }) => (earliestStart === null ? [] : [instantMs(earliestStart)])),
  ]);
  const last = Math.max(0, ...dates.map((ms) => clock.unitAtOrAfter(ms)));
  const waits = Math.max(
    0,
    ...input.jobs.map(({ tasks }) =>
      tasks.reduce(
        (sum, { prerequisites }) =>
          sum + Math.max(0, ...prerequisites.map(({ waitMinutes }) => gridUnits(waitMinutes))),
        0,
      ),
    ),
  );
  const needed = (last + waits * input.settings.waitFactor) / WEEK_UNITS;
  const labour = work / weeklyUnits / Math.max(1, input.people.length / 2);
  return Math.min(LAST_HORIZON_WEEKS, Math.ceil(FIRST_HORIZON_WEEKS + needed + labour));
}

function noRoom(input: ShopPlanInput, compiled: CompiledProject, found: FoundPlan): Refusal {
  const at = compiled.activities.findIndex((_, i) => found.placed.stands[i] !== 1);
  const id = compiled.activities[at]?.id ?? '';
  const j = input.jobs.findIndex(({ tasks }) => tasks.some((task) => task.id === id));
  const job = input.jobs[j];
  const t = job?.tasks.findIndex((task) => task.id === id) ?? 0;
  const title = job?.tasks[t]?.title ?? id;
  return refuse(`jobs[${Math.max(0, j)}].tasks[${Math.max(0, t)}]`, {
    allowed: 'a task that somebody can work on within the next three years',
    got: title,
    why: `${title} finds no hours: look at the shop's hours, closed dates and leave`,
  });
}

function written(
  input: ShopPlanInput,
  shop: ShopProject,
  compiled: CompiledProject,
  { placed, tried }: FoundPlan,
): ShopPlan {
  const stands = standsOf(shop, compiled, placed);
  const drying = dryingStands(input, compiled, placed);
  const bound = bindings(input, shop, stands, drying);
  const jobs = plannedJobs(input, shop, stands, bound);
  const late = jobs.filter(({ lateDays }) => lateDays !== null && lateDays > 0);
  return {
    plannedAt: input.now,
    timeZone: input.calendar.timeZone,
    jobs: jobsInOrder(input.jobs).flatMap(({ id }) => jobs.filter(({ jobId }) => jobId === id)),
    tasks: plannedTasks(input, shop, stands, bound),
    settingIntervals: settingIntervals(input, shop, stands),
    dayLists: dayLists(shop, stands),
    findings: [
      ...shop.findings,
      ...withoutSecondPerson(stands),
      ...late.map(
        ({ jobId, lateDays }) => ({ code: 'promise-missed', jobId, lateDays: lateDays ?? 0 }) as const,
      ),
    ],
    schedulesTried: tried,
  };
}

function standsOf(shop: ShopProject, compiled: CompiledProject, placed: FoundPlan['placed']): Stand[] {
  const stands = compiled.activities.flatMap((activity, i): Stand[] => {
    const open = shop.open.get(activity.id);
    if (open === undefined) return [];
    const end = placed.end[i] ?? 0;
    return [
      {
        open,
        start: placed.start[i] ?? 0,
        end,
        personId: compiled.workerIds[placed.worker[i] ?? -1] ?? '',
        bayId: compiled.places[placed.place[i] ?? -1]?.id ?? null,
        bayUntil: end + activity.keepsPlace,
      },
    ];
  });
  return stands.sort((a, b) => a.start - b.start || a.open.task.id.localeCompare(b.open.task.id));
}

function dryingStands(
  input: ShopPlanInput,
  compiled: CompiledProject,
  placed: FoundPlan['placed'],
): DryingStand[] {
  const index = new Map(compiled.activities.map(({ id }, i) => [id, i]));
  return input.jobs.flatMap((job) =>
    job.tasks.flatMap((task): DryingStand[] => {
      const i = index.get(dryingId(task.id));
      if (i === undefined || task.pinnedBayId === null) return [];
      return [{ taskId: task.id, jobId: job.id, bayId: task.pinnedBayId, until: placed.end[i] ?? 0 }];
    }),
  );
}

/** Sign-offs that fell to the person they were to be kept from, because nobody else can do them. */
function withoutSecondPerson(stands: readonly Stand[]) {
  const personOf = new Map(stands.map(({ open, personId }) => [open.task.id, personId]));
  return stands.flatMap(({ open, personId }) => {
    const own = open.waits.some(({ prerequisite, before }) => {
      const who = before.state === 'done' ? before.pinnedPersonId : personOf.get(before.id);
      return prerequisite.byAnotherPerson && who === personId;
    });
    return own ? [{ code: 'no-second-person', jobId: open.job.id, taskId: open.task.id } as const] : [];
  });
}
