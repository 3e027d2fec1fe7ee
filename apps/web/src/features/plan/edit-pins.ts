// What a person decided about a task; a pin that decides nothing is not kept.

import type { PlanInput, TaskPin } from '@gusset/contracts/plan';

export function pinOf({ pins }: Pick<PlanInput, 'pins'>, taskKey: string): TaskPin {
  return (
    pins.find((pin) => pin.taskKey === taskKey) ?? { taskKey, personId: null, bayId: null, earliestOn: null }
  );
}

export function changePin(
  input: PlanInput,
  taskKey: string,
  changes: Partial<Omit<TaskPin, 'taskKey'>>,
): Pick<PlanInput, 'pins'> {
  const pin = { ...pinOf(input, taskKey), ...changes };
  const others = input.pins.filter((other) => other.taskKey !== taskKey);
  const decidesNothing = pin.personId === null && pin.bayId === null && pin.earliestOn === null;
  return { pins: decidesNothing ? others : [...others, pin] };
}
