import type { PlanFacts, PlanInput, PlanResult } from '@gusset/contracts/plan';
import { type PlanUpstream, planSheet } from '@gusset/sheets';
import { takeTasks } from '../../tasks/task.service.ts';
import type { SheetBinding } from '../sheet-binding.ts';

/** Sheet 09: names of whoever is pinned; issuing it makes the tasks that the bays work on. */
export const planBinding: SheetBinding<PlanInput, PlanFacts, PlanUpstream, PlanResult> = {
  definition: planSheet,
  async loadFacts({ tx, actor }, input) {
    const { shopId } = actor;
    const ids = (pick: 'personId' | 'bayId') => input.pins.flatMap((pin) => pin[pick] ?? []);
    const people = await tx.person.findMany({
      where: { shopId, id: { in: ids('personId') } },
      select: { id: true, name: true },
      take: 200,
    });
    const bays = await tx.bay.findMany({
      where: { shopId, id: { in: ids('bayId') } },
      select: { id: true, name: true },
      take: 100,
    });
    return { names: [...people, ...bays].sort((a, b) => (a.id < b.id ? -1 : 1)) };
  },
  onIssued: (scope, { result }) => takeTasks(scope, result),
};
