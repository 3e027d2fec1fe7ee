// The planning package's standard tasks as a job's own, and the list edited without leaving loose ends.
import type { TaskTemplate } from '@gusset/contracts/planning';
import type { JobTaskSpec } from '@gusset/contracts/price';
import type { Skill } from '@gusset/contracts/shop';
import { type BoxFinish, standardTaskTemplate } from '@gusset/planning';

/** The template names trades at length; people's records use the shop's short keys. */
const SKILL_OF: Readonly<Record<string, Skill>> = {
  any: 'any',
  sales: 'sales',
  fabrication: 'fab',
  'table-saw': 'saw',
  router: 'router',
  trim: 'trim',
  finishing: 'finish',
  electrical: 'elec',
  tuning: 'tune',
  lead: 'lead',
};

/** The usual tasks of a job with one box, at usual hours. */
export function standardJobTasks(finish: BoxFinish): JobTaskSpec[] {
  return standardTaskTemplate(finish).map((task) => ({
    key: task.key,
    title: task.title,
    skill: skillOf(task),
    minutes: Math.round(task.hours.typical * 60),
    prerequisites: task.prerequisites.map((prerequisite) => ({ ...prerequisite })),
    bayKind: task.bayKind,
    vehicleOnSite: task.vehicleOnSite,
    breakable: task.breakable,
    needsParts: [...task.needsParts],
    phase: task.phase,
  }));
}

function skillOf({ key, skill }: TaskTemplate): Skill {
  const known = SKILL_OF[skill];
  if (known === undefined) throw new Error(`the task ${key} asks for ${skill}, which no person can have`);
  return known;
}

/** Takes a task off the list; what waited for it waits for what it waited for. */
export function withoutTask(tasks: readonly JobTaskSpec[], key: string): JobTaskSpec[] {
  const gone = tasks.find((task) => task.key === key);
  if (gone === undefined) return [...tasks];
  return tasks
    .filter((task) => task.key !== key)
    .map((task) => {
      const link = task.prerequisites.find(({ taskKey }) => taskKey === key);
      if (link === undefined) return task;
      const others = task.prerequisites.filter((one) => one !== link);
      const known = new Set([...others.map(({ taskKey }) => taskKey), task.key]);
      const inherited = gone.prerequisites.filter(({ taskKey }) => !known.has(taskKey));
      return { ...task, prerequisites: [...others, ...inherited] };
    });
}

/** A task of one's own, after all that its phase has; at the end where the phase has none yet. */
export function withTask(
  tasks: readonly JobTaskSpec[],
  added: Pick<JobTaskSpec, 'key' | 'title' | 'skill' | 'minutes' | 'phase'>,
): JobTaskSpec[] {
  const lastOfPhase = tasks.findLastIndex(({ phase }) => phase === added.phase);
  const before = tasks[lastOfPhase === -1 ? tasks.length - 1 : lastOfPhase];
  const task: JobTaskSpec = {
    ...added,
    prerequisites:
      before === undefined
        ? []
        : [
            {
              taskKey: before.key,
              kind: 'finish-start',
              waitMinutes: 0,
              reason: null,
              keepsBayMinutes: 0,
              byAnotherPerson: false,
            },
          ],
    bayKind: before?.bayKind ?? null,
    vehicleOnSite: before?.vehicleOnSite ?? false,
    breakable: true,
    needsParts: [],
  };
  const at = lastOfPhase === -1 ? tasks.length : lastOfPhase + 1;
  return [...tasks.slice(0, at), task, ...tasks.slice(at)];
}
