// How much longer glue, coats and adhesive take in a cold shop. A rule of thumb (chemistry halves for each 10 °C less),
// not a maker's figure: the data sheet of the tin in use goes before it.
import { type Refusal, refuse } from '@gusset/units';

/** Shop temperature, °C, and how many times the 20 °C wait. */
const ANCHORS: readonly (readonly [number, number])[] = [
  [10, 2],
  [12, 2],
  [15, 1.5],
  [20, 1],
];

/** White wood glue dries without strength below its film temperature (about 4-13 °C): then nothing is glued at all. */
const COLDEST_C = 10;
const HOTTEST_C = 45;

/** Factor for `settings.waitFactor`. Never below 1: a warm shop is no reason to hurry a joint. */
export function waitFactorAt(temperatureC: number): number | Refusal {
  if (!(temperatureC >= COLDEST_C && temperatureC <= HOTTEST_C)) {
    return refuse('temperatureC', {
      allowed: `${COLDEST_C} to ${HOTTEST_C} °C`,
      got: temperatureC,
      why:
        temperatureC < COLDEST_C
          ? 'too cold to glue or coat: a joint made now stays weak however long it waits'
          : 'no shop that glues and coats is at this temperature',
    });
  }
  const at = ANCHORS.findIndex(([anchorC]) => temperatureC <= anchorC);
  const [highC, highFactor] = ANCHORS[at] ?? [temperatureC, 1];
  const [lowC, lowFactor] = ANCHORS[at - 1] ?? [highC, highFactor];
  if (highC === lowC) return highFactor;
  return lowFactor + ((highFactor - lowFactor) * (temperatureC - lowC)) / (highC - lowC);
}
