// At the end of the story somebody is at work in the bays, also where the demo is set up at night: what is ready is
// begun through the API by whom the plan has in mind, which refuses what still waits.
import { ShopError } from '@gusset/api/errors';
import { TRPCError } from '@trpc/server';
import { type Caller, DANIEL, INES, MIRA, TOMAS } from '../demo-staff.ts';
import type { DemoStaff } from '../set-up-shop.ts';

const AT_WORK = 2;

export async function startReadyTasks(staff: DemoStaff): Promise<void> {
  const { plan, tasks } = await staff.mira.plan.current();
  const rows = new Map(tasks.map((task) => [task.id, task]));
  const inBay = new Set(plan.tasks.filter(({ state }) => state !== 'planned').map(({ jobId }) => jobId));
  const busy = new Set(plan.tasks.filter(({ state }) => state === 'running').map(({ personId }) => personId));
  const next = plan.tasks.filter(({ state, jobId }) => state === 'planned' && inBay.has(jobId));
  for (const { taskId, personId } of next) {
    if (busy.size >= AT_WORK) return;
    const row = rows.get(taskId);
    const caller = callerOf(staff, personId);
    if (row === undefined || caller === null || busy.has(personId)) continue;
    if (await begins(caller, { taskId, version: row.version })) busy.add(personId);
  }
}

/** False where the task still waits for something. */
async function begins(
  caller: Caller,
  task: { readonly taskId: string; readonly version: number },
): Promise<boolean> {
  try {
    await caller.task.start({ ...task, evenThough: null });
    return true;
  } catch (error) {
    if (error instanceof TRPCError && error.cause instanceof ShopError) {
      if (error.cause.code === 'TASK_NOT_READY') return false;
    }
    throw error;
  }
}

function callerOf(staff: DemoStaff, personId: string | null): Caller | null {
  const name = [...staff.personIds].find(([, id]) => id === personId)?.[0];
  if (name === MIRA.name) return staff.mira;
  if (name === DANIEL.name) return staff.daniel;
  if (name === TOMAS.name) return staff.tomas;
  return name === INES.name ? staff.ines : null;
}
