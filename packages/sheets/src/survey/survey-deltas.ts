// A customer's own car: what reads otherwise than on the model that was measured.
import type { Reading, SurveyDelta, TakenReading } from '@gusset/contracts/survey';

/** This car's readings take the place of the model's. Those equal to the model's own say nothing and are left out. */
export function withDeltas(
  model: readonly TakenReading[],
  car: readonly Reading[],
): { readonly readings: readonly TakenReading[]; readonly deltas: readonly SurveyDelta[] } {
  const own = new Map(model.map((reading) => [reading.key, reading]));
  const differing = car.filter((reading) => {
    const known = own.get(reading.key);
    return known === undefined || known.value !== reading.value || known.plusMinus !== reading.plusMinus;
  });
  const replaced = new Set(differing.map(({ key }) => key));
  return {
    readings: [
      ...model.filter(({ key }) => !replaced.has(key)),
      ...differing.map((reading) => ({ ...reading, takenBy: '', takenAt: '' })),
    ],
    deltas: differing.map(({ key, value }) => ({ key, model: own.get(key)?.value ?? null, car: value })),
  };
}
