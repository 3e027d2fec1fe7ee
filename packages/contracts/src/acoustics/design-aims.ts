// What a box is chosen for, as numbers: the best volume for an aim, the evenest in a car, and the corner that keeps the
// cone in its travel.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { designBandSchema, designSystemSchema } from './design-system.ts';
import { quantity } from './quantity.ts';
import { CHAMBER_RANGES, FREQUENCY_HZ, PORT_RANGES } from './ranges.ts';
import { searchAimSchema } from './search.ts';
import type { Filter } from './system.ts';

/** 30 to 80 Hz: where a low-frequency system in a vehicle is listened to. */
const aimBand = designBandSchema.prefault({ lowHz: 30, highHz: 80 });

export const bestBoxSchema = z
  .strictObject({
    /** Closed or vented; the port keeps its mouth and ends, net volume and tuning are what is looked for. */
    system: designSystemSchema,
    /** The numbers behind the words stand in the acoustics package, `design/band-figures.ts`. */
    aim: searchAimSchema,
    litres: z.strictObject({ leastLitres: CHAMBER_RANGES.netLitres, mostLitres: CHAMBER_RANGES.netLitres }),
    /** Not looked at in a closed box. */
    tuning: z
      .strictObject({ leastHz: PORT_RANGES.tuningHz, mostHz: PORT_RANGES.tuningHz })
      .prefault({ leastHz: 15, mostHz: 80 }),
    band: aimBand,
    /** Longest port that would be built, along its middle. */
    mostPortMm: PORT_RANGES.lengthMm.default(800),
  })
  .refine(({ litres }) => litres.leastLitres < litres.mostLitres, {
    error: 'more than the least volume',
    path: ['litres', 'mostLitres'],
  })
  .refine(({ tuning }) => tuning.leastHz < tuning.mostHz, {
    error: 'more than the lowest tuning',
    path: ['tuning', 'mostHz'],
  });
export type BestBoxInput = DeepReadonly<z.input<typeof bestBoxSchema>>;
export type BestBoxQuestion = DeepReadonly<z.infer<typeof bestBoxSchema>>;

export type FlattestInCarInput = Omit<BestBoxInput, 'aim'>;

/** The three aims of one system over one band. */
export type BandFigures = {
  /** Mean of the level within all limits, dB. `loud` is the highest. */
  readonly outputDb: number;
  /** Down to where that level stays within 3 dB of its loudest in the band. `deep` is the lowest. */
  readonly lowCornerHz: number;
  /** Root mean square of the level without limits about its mean, dB. `smooth` is the least. */
  readonly deviationDb: number;
};

export type BoxPoint = BandFigures & {
  readonly netLitres: number;
  readonly tuningHz: number | null;
  /** Of the system's own mouth for that tuning; null = no port. */
  readonly portLengthMm: number | null;
};

export type BestBox = {
  readonly best: BoxPoint;
  /** The system as it was given. */
  readonly asGiven: BandFigures;
  /** Small first; each volume with the tuning that serves the aim best. Volumes that no buildable port tunes are left out. */
  readonly tradeOff: readonly BoxPoint[];
  /** Level of the best box, cabin included, at the given voltage. */
  readonly curve: { readonly frequenciesHz: readonly number[]; readonly splDb: readonly number[] };
};

export const subsonicSchema = z.strictObject({
  /** At the voltage that it will be driven with. Its own filters stay as they are: leave a subsonic one out. */
  system: designSystemSchema,
  order: z.literal([2, 4], { error: '2 or 4' }).default(4),
  alignment: z.enum(['butterworth', 'linkwitz-riley']).default('butterworth'),
  /** Where the cost in level is wanted. */
  heardHz: z
    .array(FREQUENCY_HZ)
    .max(40, { error: 'at most 40 frequencies' })
    .default([20, 25, 30, 35, 40, 50]),
  /** A corner above this would take what the system is for: then only less voltage helps. */
  highestCornerHz: FREQUENCY_HZ.default(80),
  /** Share of the stated travel that may be used. */
  travelShare: quantity(0.3, 1.5, '').default(1),
});
export type SubsonicInput = DeepReadonly<z.input<typeof subsonicSchema>>;
export type SubsonicQuestion = DeepReadonly<z.infer<typeof subsonicSchema>>;

export type TravelPart = 'cone' | 'inner-cone' | 'radiator';

/** How far a part travels at its worst beside what is allowed. */
export type WorstTravel = {
  readonly part: TravelPart;
  readonly travelMm: number;
  readonly limitMm: number;
  readonly frequencyHz: number;
};

export type SubsonicCorner =
  /** Nothing runs out of travel at any frequency. */
  | { readonly code: 'not-needed'; readonly worst: WorstTravel }
  | {
      readonly code: 'suggested';
      readonly filter: Filter;
      readonly cornerHz: number;
      /** Without the filter the travel is too much from here down. */
      readonly runsOutBelowHz: number;
      readonly worst: WorstTravel;
      /** What the filter takes, dB (0 or less). */
      readonly costs: readonly { readonly frequencyHz: number; readonly db: number }[];
      readonly lowCornerBeforeHz: number;
      readonly lowCornerAfterHz: number;
      /** Travel that is too much above the filter's reach even so, and the voltage at which it is not; null = none. */
      readonly stillOver: (WorstTravel & { readonly mostVrms: number }) | null;
    }
  /** What runs out lies above the tuning, or asks for a corner above the highest: only less voltage helps. */
  | { readonly code: 'turn-down'; readonly worst: WorstTravel; readonly mostVrms: number };
