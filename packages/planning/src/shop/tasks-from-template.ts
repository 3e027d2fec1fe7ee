// A template's tasks as a job's own, and the part lines' hold on them.
import type { PartGroup, PlanTask, TaskHours, TaskTemplate } from '@gusset/contracts/planning';

export type TasksFromTemplateOptions = {
  readonly pace: keyof TaskHours;
  /** Makes each task's id; the job's id and the task's key are a natural choice. */
  readonly idOf: (taskKey: string) => string;
  /** Wait in minutes for the customer's answer after the design; 0 = approved already. */
  readonly approvalMinutes?: number;
};

export function tasksFromTemplate(
  template: readonly TaskTemplate[],
  options: TasksFromTemplateOptions,
): PlanTask[] {
  return template.map((task) => ({
    id: options.idOf(task.key),
    key: task.key,
    title: task.title,
    skill: task.skill,
    remainingMinutes: Math.round(task.hours[options.pace] * 60),
    prerequisites: task.prerequisites.map((prerequisite) =>
      prerequisite.reason === 'customer'
        ? { ...prerequisite, waitMinutes: options.approvalMinutes ?? 0 }
        : prerequisite,
    ),
    bayKind: task.bayKind,
    vehicleOnSite: task.vehicleOnSite,
    breakable: task.breakable,
    state: 'planned',
    startedAt: null,
    finishedAt: null,
    pinnedPersonId: null,
    pinnedBayId: null,
    earliestStart: null,
  }));
}

/** Keys of the tasks that a part of this group holds. */
export function tasksNeeding(template: readonly TaskTemplate[], group: PartGroup): string[] {
  return template.filter(({ needsParts }) => needsParts.includes(group)).map(({ key }) => key);
}
