// The shop's own settings: units, hours, rates, taxes, terms, clearances, saw. Every default is editable.
import { z } from 'zod';
import {
  basisPointsSchema,
  nameSchema,
  notesSchema,
  priceMinorSchema,
  shopDateSchema,
  shortTextSchema,
} from '../common/index.ts';
import { BAY_KINDS, SKILLS } from './skills.ts';

export const lengthUnitSchema = z.enum(['mm', 'in']);
export type LengthUnit = z.infer<typeof lengthUnitSchema>;

/** Opening hours of one weekday: minutes after midnight, in order, not overlapping. */
const intervalsSchema = z
  .array(
    z.strictObject({
      fromMinute: z.number().int().min(0).max(1440),
      toMinute: z.number().int().min(0).max(1440),
    }),
  )
  .max(4)
  .refine(
    (intervals) =>
      intervals.every(
        (interval, i) =>
          interval.fromMinute < interval.toMinute &&
          (i === 0 || (intervals[i - 1]?.toMinute ?? 0) <= interval.fromMinute),
      ),
    'Hours must run from earlier to later and not overlap.',
  );

export const taxCodeSchema = z.strictObject({
  code: z.string().min(1).max(12),
  name: nameSchema,
  rateBasisPoints: basisPointsSchema,
});

export const skillSchema = z.enum(SKILLS);

export const bayKindSchema = z.enum(BAY_KINDS);

export const shopSettingsSchema = z.strictObject({
  lengthUnit: lengthUnitSchema,
  inchDenominator: z.union([z.literal(8), z.literal(16), z.literal(32), z.literal(64)]),
  volumeUnits: z.enum(['litres', 'cubic-feet', 'both']),
  paper: z.enum(['A4', 'Letter', 'A3', 'Tabloid']),
  letterhead: z.strictObject({
    address: notesSchema,
    phone: shortTextSchema,
    email: shortTextSchema,
    taxNumber: shortTextSchema,
  }),
  /** Monday first. */
  weeklyHours: z.array(intervalsSchema).length(7),
  closedDays: z.array(z.strictObject({ on: shopDateSchema, note: shortTextSchema })).max(400),
  labourRateMinor: priceMinorSchema,
  /** Rates that differ from `labourRateMinor` by skill. */
  labourRateBySkillMinor: z.partialRecord(skillSchema, priceMinorSchema),
  materialMarkupBasisPoints: basisPointsSchema,
  partMarkupBasisPoints: basisPointsSchema,
  marginFloorBasisPoints: basisPointsSchema,
  suppliesPercentOfLabourBasisPoints: basisPointsSchema,
  suppliesCapMinor: priceMinorSchema,
  customerPartFeeMinor: priceMinorSchema,
  taxCodes: z.array(taxCodeSchema).min(1).max(12),
  /** Which code each kind of line takes; `null` = not taxed. */
  taxCodeByKind: z.strictObject({
    material: z.string().nullable(),
    part: z.string().nullable(),
    labour: z.string().nullable(),
    supplies: z.string().nullable(),
    subcontract: z.string().nullable(),
    other: z.string().nullable(),
  }),
  pricesIncludeTax: z.boolean(),
  taxRounding: z.enum(['per-line', 'per-document']),
  depositBasisPoints: basisPointsSchema,
  quoteValidDays: z.number().int().min(1).max(365),
  quoteTerms: notesSchema,
  sawKerfMm: z.number().min(0).max(50),
  sheetTrimMm: z.number().min(0).max(50),
  bladeMaxTiltDeg: z.number().min(0).max(60),
  clearances: z.strictObject({
    sideMm: z.number().min(0).max(200),
    seatBackMm: z.number().min(0).max(200),
    aboveMm: z.number().min(0).max(200),
    movingMetalMm: z.number().min(0).max(200),
    openingMm: z.number().min(0).max(200),
  }),
  /** Usual workshop temperature: waits for glue and coats stretch below 20 °C. */
  workshopTemperatureC: z.number().min(-20).max(50),
  promiseBufferMinutes: z.number().int().min(0).max(20_160),
});
export type ShopSettings = z.infer<typeof shopSettingsSchema>;

const day = [
  { fromMinute: 480, toMinute: 720 },
  { fromMinute: 750, toMinute: 1020 },
];

/** What a new shop starts with; figures after common trade practice, all to be edited. */
export function defaultShopSettings(lengthUnit: LengthUnit): ShopSettings {
  return {
    lengthUnit,
    inchDenominator: 16,
    volumeUnits: 'both',
    paper: lengthUnit === 'in' ? 'Letter' : 'A4',
    letterhead: { address: '', phone: '', email: '', taxNumber: '' },
    weeklyHours: [day, day, day, day, day, [], []],
    closedDays: [],
    labourRateMinor: 7_500,
    labourRateBySkillMinor: {},
    materialMarkupBasisPoints: 3_500,
    partMarkupBasisPoints: 2_500,
    marginFloorBasisPoints: 2_000,
    suppliesPercentOfLabourBasisPoints: 400,
    suppliesCapMinor: 12_000,
    customerPartFeeMinor: 4_500,
    taxCodes: [{ code: 'STD', name: 'Standard rate', rateBasisPoints: 2_000 }],
    taxCodeByKind: {
      material: 'STD',
      part: 'STD',
      labour: 'STD',
      supplies: 'STD',
      subcontract: 'STD',
      other: 'STD',
    },
    pricesIncludeTax: false,
    taxRounding: 'per-line',
    depositBasisPoints: 4_000,
    quoteValidDays: 21,
    quoteTerms:
      'Work starts after approval and deposit. Changes are quoted before they are made. Parts brought by the customer are fitted without warranty on the part.',
    sawKerfMm: 3.2,
    sheetTrimMm: 6,
    bladeMaxTiltDeg: 45,
    clearances: { sideMm: 8, seatBackMm: 12, aboveMm: 10, movingMetalMm: 15, openingMm: 10 },
    workshopTemperatureC: 20,
    promiseBufferMinutes: 240,
  };
}
