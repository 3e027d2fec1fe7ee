// The shop planner's door: what cannot be planned, said in the shop's words and at the field.
import type { PlanJob, PlanTask, ShopPlanInput } from '@gusset/contracts/planning';
import { TASK_MINUTES_LIMIT } from '@gusset/contracts/planning';
import { type Refusal, refuse } from '@gusset/units';
import { orderArcs } from '../core/project-arcs.ts';

/** Skill that everybody has. */
export const ANY_SKILL = 'any';

/** The first thing that makes planning impossible, or null. The zone is checked by the clock. */
export function firstShopFault(input: ShopPlanInput): Refusal | null {
  const repeated =
    repeatedId('people', input.people) ?? repeatedId('bays', input.bays) ?? repeatedId('jobs', input.jobs);
  if (repeated !== null) return repeated;
  const seen = new Map<string, string>();
  for (const [j, job] of input.jobs.entries()) {
    const field = `jobs[${j}]`;
    for (const [t, task] of job.tasks.entries()) {
      const at = `${field}.tasks[${t}]`;
      const twice = seen.get(task.id);
      if (twice !== undefined) {
        return refuse(`${at}.id`, { allowed: 'each task id once', got: task.id, why: `${twice} has it too` });
      }
      seen.set(task.id, at);
      const wrong = task.state === 'done' ? null : taskFault(input, job, task, at);
      if (wrong !== null) return wrong;
    }
    const wrong = jobFault(job, field);
    if (wrong !== null) return wrong;
  }
  return null;
}

function taskFault(input: ShopPlanInput, job: PlanJob, task: PlanTask, at: string): Refusal | null {
  return lengthFault(task, at) ?? personFault(input, job, task, at) ?? bayFault(input, job, task, at);
}

/** A running task that has used up its hours is no fault: it is reckoned with one quarter hour more. */
function lengthFault({ remainingMinutes, state, title }: PlanTask, at: string): Refusal | null {
  const above = state === 'running' ? remainingMinutes >= 0 : remainingMinutes > 0;
  if (above && remainingMinutes <= TASK_MINUTES_LIMIT) return null;
  return refuse(`${at}.remainingMinutes`, {
    allowed: `above 0 and at most ${TASK_MINUTES_LIMIT} minutes (1000 h)`,
    got: remainingMinutes,
    why: above ? `${title} is longer than any one task can be` : `${title} has no work left but isn't done`,
  });
}

function personFault({ people }: ShopPlanInput, job: PlanJob, task: PlanTask, at: string): Refusal | null {
  const { pinnedPersonId, skill, title, state } = task;
  const able = people.filter((person) => skill === ANY_SKILL || person.skills.includes(skill));
  if (pinnedPersonId !== null) {
    const pinned = people.find(({ id }) => id === pinnedPersonId);
    // whoever is at it now is evidently able
    if (pinned !== undefined && (state === 'running' || able.includes(pinned))) return null;
    if (pinned !== undefined || state !== 'running') {
      return refuse(`${at}.pinnedPersonId`, {
        allowed:
          able.length > 0 ? `one of: ${able.map(({ name }) => name).join(', ')}` : 'somebody of the shop',
        got: pinned?.name ?? pinnedPersonId,
        why:
          pinned === undefined
            ? `nobody here has this id, asked for by ${title} of job ${job.number}`
            : `${pinned.name} has no skill "${skill}", which ${title} of job ${job.number} needs`,
      });
    }
  }
  if (able.length > 0) return null;
  const skills = [...new Set(people.flatMap((person) => person.skills))].sort();
  return refuse(`${at}.skill`, {
    allowed:
      skills.length > 0 ? `a skill that somebody has: ${skills.join(', ')}` : 'a shop with people in it',
    got: skill,
    why: `nobody can do ${title} of job ${job.number}`,
  });
}

function bayFault({ bays }: ShopPlanInput, job: PlanJob, task: PlanTask, at: string): Refusal | null {
  const { pinnedBayId, bayKind, title } = task;
  if (pinnedBayId !== null && !bays.some(({ id }) => id === pinnedBayId)) {
    return refuse(`${at}.pinnedBayId`, {
      allowed: `one of: ${bays.map(({ name }) => name).join(', ')}`,
      got: pinnedBayId,
      why: `no bay has this id, asked for by ${title} of job ${job.number}`,
    });
  }
  if (bayKind === null || pinnedBayId !== null || bays.some(({ kinds }) => kinds.includes(bayKind)))
    return null;
  return refuse(`${at}.bayKind`, {
    allowed: `a kind that a bay has: ${[...new Set(bays.flatMap(({ kinds }) => kinds))].sort().join(', ') || 'none yet'}`,
    got: bayKind,
    why: `the shop has no ${bayKind} bay for ${title} of job ${job.number}`,
  });
}

function jobFault(job: PlanJob, field: string): Refusal | null {
  const index = new Map(job.tasks.map((task, t) => [task.key, t]));
  for (const [t, task] of job.tasks.entries()) {
    if (index.get(task.key) !== t) {
      return refuse(`${field}.tasks[${t}].key`, {
        allowed: 'each key once in a job',
        got: task.key,
        why: `two tasks of job ${job.number} have it`,
      });
    }
    const unknown = task.prerequisites.findIndex(({ taskKey }) => !index.has(taskKey));
    if (unknown >= 0) {
      return refuse(`${field}.tasks[${t}].prerequisites[${unknown}].taskKey`, {
        allowed: 'the key of another task of the job',
        got: task.prerequisites[unknown]?.taskKey ?? null,
        why: `${task.title} waits for a task that job ${job.number} doesn't have`,
      });
    }
  }
  return circleFault(job, index, field) ?? partFault(job, index, field);
}

function circleFault(job: PlanJob, index: ReadonlyMap<string, number>, field: string): Refusal | null {
  const arcs = job.tasks.flatMap((task, to) =>
    task.prerequisites.map(({ taskKey }) => ({
      from: index.get(taskKey) ?? 0,
      fromEnd: true,
      to,
      toEnd: false,
      lag: 0,
    })),
  );
  const ordered = orderArcs(
    arcs,
    [],
    job.tasks.map(() => 1),
  );
  if (!('cycle' in ordered)) return null;
  const titles = ordered.cycle.map((t) => job.tasks[t]?.title ?? '');
  const first = ordered.cycle[0] ?? 0;
  return refuse(`${field}.tasks[${first}].prerequisites`, {
    allowed: 'an order without circles',
    got: [...titles, titles[0] ?? ''].join(' > '),
    why: `in job ${job.number} each of these waits for the one before it, so none can begin`,
  });
}

function partFault(job: PlanJob, index: ReadonlyMap<string, number>, field: string): Refusal | null {
  for (const [p, part] of job.partDates.entries()) {
    const unknown = part.neededByTaskKeys.findIndex((key) => !index.has(key));
    if (unknown < 0) continue;
    return refuse(`${field}.partDates[${p}].neededByTaskKeys[${unknown}]`, {
      allowed: 'the key of a task of the job',
      got: part.neededByTaskKeys[unknown] ?? null,
      why: `${part.description} is needed by a task that job ${job.number} doesn't have`,
    });
  }
  return null;
}

function repeatedId(field: string, items: readonly { readonly id: string }[]): Refusal | null {
  const at = items.findIndex(({ id }, i) => items.findIndex((other) => other.id === id) !== i);
  if (at < 0) return null;
  const id = items[at]?.id ?? null;
  return refuse(`${field}[${at}].id`, {
    allowed: 'each id once',
    got: id,
    why: `${id} stands twice in ${field}`,
  });
}
