// Search over a catalogue: which drivers, how many, in which kind of box, for what a person asks.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import type { DriverParameters } from './driver.ts';
import { type Enclosure, passiveRadiatorSchema } from './enclosure.ts';
import { quantity, wholeNumber } from './quantity.ts';
import { CHAMBER_RANGES, LOSS_Q } from './ranges.ts';
import { type CoilWiring, cabinSchema } from './system.ts';

/** Boxes that the search tries. A radiator box is tried only where radiators are given. */
export const SEARCH_KINDS = [
  'infinite-baffle',
  'closed',
  'vented',
  'passive-radiator',
  'single-tuned-bandpass',
] as const;
export const searchKindSchema = z.enum(SEARCH_KINDS);
export type SearchKind = z.infer<typeof searchKindSchema>;

/** What counts most: a low corner, a high level, or an even one. The numbers behind the words: `src/search/aims.ts`. */
export const SEARCH_AIMS = ['deep', 'loud', 'smooth'] as const;
export const searchAimSchema = z.enum(SEARCH_AIMS);
export type SearchAim = z.infer<typeof searchAimSchema>;

const netLitres = quantity(0.5, 2_000, 'L');

export const searchBriefSchema = z
  .strictObject({
    aim: searchAimSchema,
    kinds: z.array(searchKindSchema).min(1, { error: 'at least one kind of box' }).max(SEARCH_KINDS.length),
    /** One driver up to this many of the same. */
    mostDrivers: wholeNumber(1, 8),
    /** Net air of all chambers together. */
    net: z.strictObject({ leastLitres: netLitres, mostLitres: netLitres }),
    /** What the amplifier gives into each load that it is rated for; the lowest one is the lowest it takes. */
    power: z
      .array(z.strictObject({ loadOhm: quantity(0.25, 64, 'Ω'), watts: quantity(1, 20_000, 'W') }))
      .min(1, { error: 'the power into at least one load' })
      .max(8),
    /** Room behind the panel that a driver may take; null = any. */
    depthMm: quantity(10, 1_000, 'mm').nullable(),
    /** For the drivers alone, at buying price; null = any. */
    budgetMinor: z.int({ error: 'a whole amount' }).min(0).max(1_000_000_000).nullable(),
    /** Designs that play softer than this over the band are left out; null = any. */
    leastOutputDb: quantity(60, 160, 'dB').nullable(),
    cabin: cabinSchema.nullable(),
    /** Of every chamber. */
    losses: z.strictObject({
      fillFactor: CHAMBER_RANGES.fillFactor,
      ql: LOSS_Q.nullable(),
      qa: LOSS_Q.nullable(),
    }),
    radiators: z.array(passiveRadiatorSchema).max(8),
  })
  .refine(({ net }) => net.leastLitres <= net.mostLitres, {
    error: 'the least volume first, then the most',
    path: ['net', 'mostLitres'],
  });
export type SearchBrief = DeepReadonly<z.infer<typeof searchBriefSchema>>;

/** A driver as the search sees it. */
export type SearchDriver = {
  readonly id: string;
  readonly parameters: DriverParameters;
  /** Of one coil, as the maker calls it; null = not stated. */
  readonly nominalOhm: number | null;
  readonly mountingDepthMm: number;
  /** Of one; null = not known, or not for these eyes. */
  readonly costMinor: number | null;
  /** How many there are at most; null = as many as wanted. */
  readonly available: number | null;
};

/** A design and what it does. Lower corner, higher output, fewer litres and less cost are better. */
export type FoundDesign = {
  /** Unique among the designs of one search. */
  readonly key: string;
  readonly driverId: string;
  readonly kind: SearchKind;
  readonly count: number;
  readonly seriesPerString: number;
  readonly coilWiring: CoilWiring;
  /** What the amplifier is loaded with, as loads are named. */
  readonly loadOhm: number;
  /** Into the direct-current resistance of the array. */
  readonly watts: number;
  readonly enclosure: Enclosure;
  /** All chambers; 0 = a baffle. */
  readonly netLitres: number;
  readonly costMinor: number | null;
  readonly tuningHz: number | null;
  readonly port: { readonly diameterMm: number; readonly lengthMm: number } | null;
  readonly lowCornerHz: number;
  readonly outputDb: number;
  readonly deviationDb: number;
};

export type SearchCounts = {
  /** All that driver, count, box, volume and tuning make. */
  readonly designs: number;
  /** Of those, looked at so far. */
  readonly considered: number;
  /** Solved until all three figures were known. */
  readonly evaluated: number;
  /** Solved in the band, which showed that they can't be among the best. */
  readonly beatenInBand: number;
  /** A bound showed it, with nothing solved. */
  readonly ruledOut: number;
  /** Port or radiator that can't be built. */
  readonly unbuildable: number;
};

/** Drivers that were not tried, by the first reason that holds. */
export type LeftOut = {
  /** Travel or power not stated: nothing is made up. */
  readonly limitsUnknown: number;
  readonly tooDeep: number;
  readonly priceUnknown: number;
  readonly overBudget: number;
  readonly noneAvailable: number;
  /** No wiring of them is a load that the amplifier takes. */
  readonly loadTooLow: number;
};

export type SearchProgress = {
  readonly counts: SearchCounts;
  /** The best so far, on the steps of the search. */
  readonly best: FoundDesign | null;
};

export type SearchAnswer = {
  readonly counts: SearchCounts;
  readonly leftOut: LeftOut;
  /** Best first: one design for each driver, count and kind of box. */
  readonly ranked: readonly FoundDesign[];
  /** Designs that no other one beats in corner, output, litres and cost together; by corner. */
  readonly front: readonly FoundDesign[];
};

/** What a person asks: the brief, and whether only drivers on the shelf are tried, no more of them than lie there. */
export const driverSearchInputSchema = z.strictObject({ brief: searchBriefSchema, inStockOnly: z.boolean() });
export type DriverSearchInput = z.infer<typeof driverSearchInputSchema>;
