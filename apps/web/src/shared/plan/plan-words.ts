// Sentences of the forward plan: why a task begins no earlier, why a job is not ready earlier, what a change moved.

import type { BoundBy, ChangedPromise, PlanReason, ShopPlan, WaitReason } from '@gusset/contracts/planning';
import { SKILL_NAME, SKILLS } from '@gusset/contracts/shop';
import { formatInstant, formatShopDate, toShopTime } from '@gusset/units';

export type PlanFrame = {
  readonly zone: string;
  readonly locale: string;
  /** Today at the shop: its times are given without the day. */
  readonly today: string;
};

/** `13:00` today, else `Thu 26 Nov, 13:00`. */
export function whenWords(instant: string, { zone, locale, today }: PlanFrame): string {
  const { date } = toShopTime(instant, zone);
  const time = formatInstant(instant, { zone, locale, style: 'time' });
  return date === today ? time : `${formatShopDate(date, locale, 'day')}, ${time}`;
}

const SETS: Readonly<Record<WaitReason, string>> = {
  glue: 'the glue sets',
  coat: 'the coat dries',
  adhesive: 'the adhesive sets',
  customer: 'the customer answers',
};

export function settingWords(reason: WaitReason | null): string {
  return reason === null ? 'it rests' : SETS[reason];
}

/** Why a task begins no earlier, under its name. */
export function boundWords(bound: BoundBy, frame: PlanFrame, jobNumber: number | null): string {
  const until = whenWords(bound.until, frame);
  const onJob = jobNumber === null ? '' : ` (job ${jobNumber})`;
  switch (bound.kind) {
    case 'prerequisite':
      return `follows ${bound.what}, done ${until}`;
    case 'wait':
      return `waits until ${until} after ${bound.what}`;
    case 'person':
      return bound.taskId === null
        ? `waits for ${bound.what}, away until ${until}`
        : `waits for ${bound.what}, at other work${onJob} until ${until}`;
    case 'bay':
      return bound.taskId === null
        ? `waits for ${bound.what}, free from ${until}`
        : `waits for ${bound.what}, taken${onJob} until ${until}`;
    case 'part':
      return `waits for part: ${bound.what}, due ${until}`;
    case 'hours':
      return `waits for working hours, ${until}`;
    case 'earliest-start':
      return `not wished before ${until}`;
  }
}

/** The one line why a job is not ready earlier; `heldJob` where the held task is of another job. */
export function reasonWords(reason: PlanReason, frame: PlanFrame, heldJob: number | null = null): string {
  if (reason.code === 'nothing-left') return 'Nothing is left to do.';
  if (reason.code === 'work') return 'Nothing holds it: it takes as long as the work itself.';
  const until = whenWords(reason.until, frame);
  const task = heldJob === null ? reason.heldTitle : `${reason.heldTitle} (job ${heldJob})`;
  switch (reason.code) {
    case 'setting':
      return `${task} waits until ${until}, while ${settingWords(reason.reason)} (${reason.afterTitle}).`;
    case 'person-busy':
      return `${task} waits for ${reason.personName}, who is at ${reason.onTitle} of job ${reason.onJobNumber} until ${until}.`;
    case 'person-away':
      return `${task} waits for ${reason.personName}, who is away until ${until}.`;
    case 'bay-taken':
      return `${task} waits for ${reason.bayName}, where ${reason.onTitle} of job ${reason.onJobNumber} is until ${until}.`;
    case 'part-due':
      return reason.expectedOn === null
        ? `${task} waits for ${reason.description}; nobody knows when it comes, ${until} is reckoned.`
        : `${task} waits for ${reason.description}, due ${until}.`;
    case 'after-task':
      return `${task} follows ${reason.afterTitle}, done ${until}.`;
    case 'shop-closed':
      return `${task} waits for working hours, ${until}.`;
    case 'earliest-start':
      return `${task} is not wished before ${until}.`;
  }
}

/** How a promise moved: `Thu 26 Nov to Mon 30 Nov, 4 days later`. */
export function moveWords({ from, to, movedDays }: ChangedPromise, { locale }: PlanFrame): string {
  if (from === null) return to === null ? 'not in the plan' : `new: ${formatShopDate(to, locale, 'day')}`;
  if (to === null) return `was ${formatShopDate(from, locale, 'day')}, not in the plan any more`;
  const days = Math.abs(movedDays ?? 0);
  const moved =
    days === 0
      ? 'the same day, another hour'
      : `${days} ${days === 1 ? 'day' : 'days'} ${(movedDays ?? 0) > 0 ? 'later' : 'earlier'}`;
  return `${formatShopDate(from, locale, 'day')} to ${formatShopDate(to, locale, 'day')}, ${moved}`;
}

/** A pin that the plan could not keep, and what it does instead. */
export function lapsedPinWords({
  title,
  personName,
  skill,
}: {
  readonly title: string;
  readonly personName: string;
  readonly skill: string;
}): string {
  const named = SKILLS.find((known) => known === skill);
  const what = named === undefined ? skill : SKILL_NAME[named].toLowerCase();
  return `${title} was pinned on ${personName}, who does not do ${what}. The pin is left aside: whoever does it takes the task.`;
}

/** `2 days late`; null for a job that keeps its promise or has none. */
export function lateWords(lateDays: number | null): string | null {
  if (lateDays === null || lateDays <= 0) return null;
  return `${lateDays} ${lateDays === 1 ? 'day' : 'days'} late`;
}

/** The number of the other job whose task holds this one; null where it is the job's own. */
export function heldJobOf(
  { because, jobId }: Pick<ChangedPromise, 'because' | 'jobId'>,
  {
    plan,
    jobs,
  }: {
    readonly plan: Pick<ShopPlan, 'tasks'>;
    readonly jobs: readonly { readonly id: string; readonly number: number }[];
  },
): number | null {
  if (!('heldTaskId' in because)) return null;
  const held = plan.tasks.find(({ taskId }) => taskId === because.heldTaskId);
  if (held === undefined || held.jobId === jobId) return null;
  return jobs.find(({ id }) => id === held.jobId)?.number ?? null;
}
