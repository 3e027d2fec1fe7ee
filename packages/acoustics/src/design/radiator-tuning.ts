// Mass on passive radiators for a wanted tuning, and where they cancel the output.
// R. H. Small, "Passive-Radiator Loudspeaker Systems", JAES 22(8), 1974: wb² = wp'² (1 + delta), wp' the radiator's own
// resonance with its mass, which is also the notch.
import {
  firstRefusal,
  type RadiatorTuning,
  type RadiatorTuningInput,
  radiatorTuningSchema,
} from '@gusset/contracts/acoustics';
import { type Refusal, refuse } from '@gusset/units';
import { airAt } from '../air.ts';
import { chamberCompliance } from '../chamber.ts';
import { radiatorElements, radiatorTuningRadPerS } from '../radiator.ts';

const GRAMS_PER_KG = 1e3;
const MOST_ADDED_GRAMS = 20_000; // as the schema of a radiator
/** Notch over tuning from which the notch pulls down the lowest octave (delta below 1): rule of thumb. */
const NEAR_NOTCH = Math.SQRT1_2;

/** Refused where even the bare radiators tune the box lower, or no mass that can be put on reaches down. */
export function radiatorForTuning(input: RadiatorTuningInput): RadiatorTuning | Refusal {
  const parsed = radiatorTuningSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const { chamber, radiator, tuningHz, air } = parsed.data;
  const compliance = chamberCompliance(chamber, airAt(air));
  const tunedHz = (addedMassGrams: number) =>
    radiatorTuningRadPerS(radiatorElements({ ...radiator, addedMassGrams }), compliance) / (2 * Math.PI);
  const bare = radiatorElements({ ...radiator, addedMassGrams: 0 });
  const highestTuningHz = tunedHz(0);
  if (tuningHz > highestTuningHz) {
    return refuse('tuningHz', {
      allowed: `at most ${highestTuningHz.toFixed(1)} Hz`,
      got: tuningHz,
      why: 'mass can only lower the tuning, and with none added the radiators tune this box there',
    });
  }
  const delta = bare.acousticCompliance / compliance;
  const bareMassGrams = bare.acousticMass * radiator.count * (radiator.sdCm2 / 1e4) ** 2 * GRAMS_PER_KG;
  const addedMassGrams = bareMassGrams * ((highestTuningHz / tuningHz) ** 2 - 1);
  if (addedMassGrams > MOST_ADDED_GRAMS) {
    return refuse('tuningHz', {
      allowed: `at least ${tunedHz(MOST_ADDED_GRAMS).toFixed(1)} Hz`,
      got: tuningHz,
      why: `it would take more than ${MOST_ADDED_GRAMS / GRAMS_PER_KG} kg on each radiator`,
    });
  }
  const notchHz = tuningHz / Math.sqrt(1 + delta);
  return {
    addedMassGrams,
    bareMassGrams,
    notchHz,
    highestTuningHz,
    delta,
    notchNear: notchHz > NEAR_NOTCH * tuningHz,
  };
}
