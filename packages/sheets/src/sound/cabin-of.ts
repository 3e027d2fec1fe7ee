// What the car adds: its own measured transfer, or a shelf from its longest inside length, or nothing.
import { cabinCornerHz, REFERENCE_AIR } from '@gusset/acoustics';
import type { Cabin } from '@gusset/contracts/acoustics';
import type { CabinChoice, SoundFacts } from '@gusset/contracts/sound';
import type { Missing } from '../sheet-definition.ts';

/** Where the cabin's rise levels out, as a share of its corner, and its damping: a middling car body, an estimate. */
const CABIN_FLOOR_SHARE = 0.35;
const CABIN_Q = 0.7;

export type UsedCabin = {
  /** An estimate without a length is none. */
  readonly choice: CabinChoice;
  readonly cabin: Cabin | null;
  readonly longestM: number | null;
  readonly label: string | null;
};

const OUTDOORS: UsedCabin = { choice: 'none', cabin: null, longestM: null, label: null };

export function missingOfCabin(choice: CabinChoice, { cabinCurve = null }: SoundFacts): readonly Missing[] {
  if (choice !== 'measured' || cabinCurve !== null) return [];
  return [{ field: 'cabin', what: 'a measurement of this car, or take the estimate' }];
}

export function cabinOf(choice: CabinChoice, { longestCabinM, cabinCurve = null }: SoundFacts): UsedCabin {
  if (choice === 'measured' && cabinCurve !== null) {
    const cabin = { kind: 'curve', points: cabinCurve.points } as const;
    return { choice, cabin, longestM: null, label: cabinCurve.label };
  }
  if (choice !== 'estimate' || longestCabinM === null) return OUTDOORS;
  return { choice, cabin: shelf(longestCabinM), longestM: longestCabinM, label: null };
}

/** Rise below c/(2 L), levelling out where the body leaks: an estimate, real cars differ by 5 to 10 dB. */
function shelf(longestM: number): Cabin {
  const lowerHz = cabinCornerHz(longestM, REFERENCE_AIR) * CABIN_FLOOR_SHARE;
  return { kind: 'shelf', longestM, upperQ: CABIN_Q, lowerHz, lowerQ: CABIN_Q };
}
