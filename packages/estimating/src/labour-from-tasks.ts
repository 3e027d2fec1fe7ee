// Planned tasks -> labour lines, one a task, each at the rate of its skill.
import type { LabourRates, LabourTask, QuoteLine } from '@gusset/contracts/estimating';

/** Lines keep the tasks' order and keys; tasks that take no time make no line. */
export function labourFromTasks(tasks: readonly LabourTask[], rates: LabourRates): QuoteLine[] {
  return tasks
    .filter(({ minutes }) => minutes > 0)
    .map(({ key, title, skill, minutes }) => {
      const { hourlyRateMinor, hourlyCostMinor } = rates.bySkill[skill] ?? rates;
      return {
        key,
        kind: 'labour',
        description: title,
        source: null,
        pricing: { by: 'hours', minutes, hourlyCostMinor, hourlyRateMinor },
        taxCodes: null,
        excludeFrom: [],
      };
    });
}
