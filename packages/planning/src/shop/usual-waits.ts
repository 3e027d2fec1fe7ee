// What the tasks of the standard template are made of: usual waits, and prerequisites with and without one.
import type { TaskHours, TaskPrerequisite, WaitReason } from '@gusset/contracts/planning';

export const HOUR = 60; // minutes
/** PVA joint: clamps off and handled after 2 h, tested and machined after the full 24 h. */
export const GLUE_HANDLED = 2 * HOUR;
export const GLUE_CURED = 24 * HOUR;
/** Water-borne roll-on: next coat after 2-4 h, handled after 24 h, bears load (drivers, stacking) after 72 h. */
export const COAT_RECOATED = 3 * HOUR;
export const COAT_HANDLED = 24 * HOUR;
export const COAT_LOADED = 72 * HOUR;
export const CARPET_BONDED = 24 * HOUR;

export const hours = (min: number, typical: number, max: number): TaskHours => ({ min, typical, max });

export const after = (taskKey: string): TaskPrerequisite => ({
  taskKey,
  kind: 'finish-start',
  waitMinutes: 0,
  reason: null,
  keepsBayMinutes: 0,
  byAnotherPerson: false,
});

export const afterWait = (
  taskKey: string,
  reason: WaitReason,
  waitMinutes: number,
  keepsBayMinutes: number,
): TaskPrerequisite => ({ ...after(taskKey), reason, waitMinutes, keepsBayMinutes });
