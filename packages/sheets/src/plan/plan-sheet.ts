// Sheet 09: the priced tasks with their pins. When each is done is the shop's forward plan, not this sheet's.
import { type PlanFacts, type PlanInput, type PlanResult, planInputSchema } from '@gusset/contracts/plan';
import type { PriceResult } from '@gusset/contracts/price';
import { incomplete, ready, refused, type SheetDefinition } from '../sheet-definition.ts';

export type PlanUpstream = { readonly price?: Pick<PriceResult, 'tasks'> | null };

const MINUTES_PER_HOUR = 60;

export const planSheet: SheetDefinition<PlanInput, PlanFacts, PlanUpstream, PlanResult> = {
  kind: 'plan',
  engineVersion: 1,
  optionalReads: ['parts'],
  inputSchema: planInputSchema,
  emptyInput: () => ({ pins: [], rank: 0 }),
  compute(input, _facts, upstream) {
    const tasks = upstream.price?.tasks ?? [];
    if (tasks.length === 0)
      return incomplete([{ field: 'pins', what: 'tasks: take the task template on sheet 08 Price' }]);
    const keys = new Set(tasks.map((task) => task.key));
    const lost = tasks.flatMap((task) =>
      task.prerequisites
        .filter(({ taskKey }) => !keys.has(taskKey))
        .map(({ taskKey }) => ({ task, taskKey })),
    );
    const first = lost[0];
    if (first !== undefined) {
      return refused([
        {
          field: 'pins',
          allowed: 'tasks of this job',
          got: first.taskKey,
          why: `${first.task.title} waits for a task that is not on the price sheet any more`,
        },
      ]);
    }
    const pins = new Map(input.pins.map((pin) => [pin.taskKey, pin]));
    return ready({
      tasks: tasks.map((task) => {
        const pin = pins.get(task.key);
        return {
          ...task,
          personId: pin?.personId ?? null,
          bayId: pin?.bayId ?? null,
          earliestOn: pin?.earliestOn ?? null,
        };
      }),
      rank: input.rank,
      minutes: tasks.reduce((sum, task) => sum + task.minutes, 0),
    });
  },
  keyFigures: (result) => [
    { key: 'hours', label: 'Labour', value: `${(result.minutes / MINUTES_PER_HOUR).toFixed(1)} h` },
    ...result.tasks.map((task) => ({ key: task.key, label: task.title, value: `${task.minutes} min` })),
  ],
  factFigures: (facts) => facts.names.map(({ id, name }) => ({ key: id, label: 'Pinned', value: name })),
};
