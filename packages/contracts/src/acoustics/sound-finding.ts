// What a person should know about a response: a code and its numbers. The sentence is made in the view.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { quantity } from './quantity.ts';
import { FREQUENCY_HZ } from './ranges.ts';
import { limitCauseSchema, portRoleSchema } from './result.ts';

const severity = z.enum(['note', 'caution', 'over']);
const at = { frequencyHz: z.number() };
const portAir = { severity, role: portRoleSchema, speedMps: z.number(), ...at };

export const soundFindingSchema = z.discriminatedUnion('code', [
  /** How a closed box is damped, by its Q without losses. */
  z.strictObject({
    code: z.literal('damping'),
    severity,
    character: z.enum(['overdamped', 'tight', 'flat', 'lifted', 'peaky']),
    qtc: z.number(),
    qtcWithLosses: z.number(),
    peakDb: z.number(),
  }),
  /** Where the response stays within `belowDb` of its highest level; null = beyond what was asked for. */
  z.strictObject({
    code: z.literal('band'),
    severity,
    belowDb: z.number(),
    lowHz: z.number().nullable(),
    highHz: z.number().nullable(),
  }),
  /** Farthest travel in the band beside what the maker allows. */
  z.strictObject({
    code: z.literal('travel'),
    severity,
    part: z.enum(['cone', 'inner-cone', 'radiator']),
    travelMm: z.number(),
    limitMm: z.number(),
    ...at,
  }),
  /** Least electrical power in the band that already moves the cone to its limit. */
  z.strictObject({ code: z.literal('travel-limited-power'), severity, watts: z.number(), ...at }),
  /** Source voltage beside what the rated power of all drivers allows. */
  z.strictObject({ code: z.literal('heat'), severity, voltageVrms: z.number(), limitVrms: z.number() }),
  /** Highest voltage after the filters beside what the amplifier has, and highest current beside its own. */
  z.strictObject({
    code: z.literal('amplifier-voltage'),
    severity,
    voltageVrms: z.number(),
    limitVrms: z.number(),
    ...at,
  }),
  z.strictObject({
    code: z.literal('amplifier-current'),
    severity,
    currentArms: z.number(),
    limitArms: z.number(),
    ...at,
  }),
  /** Lowest magnitude of the load in the band. */
  z.strictObject({ code: z.literal('lowest-load'), severity, ohm: z.number(), ...at }),
  z.strictObject({ code: z.literal('port-quiet'), ...portAir }),
  z.strictObject({ code: z.literal('port-needs-rounding'), ...portAir }),
  z.strictObject({ code: z.literal('port-needs-flares'), ...portAir }),
  z.strictObject({ code: z.literal('port-chuffs'), ...portAir }),
  /** The wanted tuning leaves no length for this mouth, or less than its flares. */
  z.strictObject({
    code: z.literal('port-unbuildable'),
    severity,
    role: portRoleSchema,
    lengthMm: z.number(),
    tuningHz: z.number(),
  }),
  /** The pipe rings at `frequencyHz`; the model holds to `modelHoldsToHz`. */
  z.strictObject({
    code: z.literal('pipe-resonance'),
    severity,
    role: portRoleSchema,
    modelHoldsToHz: z.number(),
    ...at,
  }),
  z.strictObject({ code: z.literal('box-mode'), severity, modelHoldsToHz: z.number(), ...at }),
  /** The cone stops being small beside the wavelength (ka = 1). */
  z.strictObject({ code: z.literal('cone-directive'), severity, ...at }),
  /** Air that the radiators can move beside twice that of the drivers. */
  z.strictObject({
    code: z.literal('radiator-air'),
    severity,
    radiatorCm3: z.number(),
    wantedCm3: z.number(),
  }),
  /** Quietest of the loudest levels in the band, and what limits it there. */
  z.strictObject({ code: z.literal('loudest'), severity, splDb: z.number(), limit: limitCauseSchema, ...at }),
]);
export type SoundFinding = DeepReadonly<z.infer<typeof soundFindingSchema>>;

/** What the shop looks at and where it draws its lines. */
export const verdictSettingSchema = z.strictObject({
  lowHz: FREQUENCY_HZ.default(20),
  highHz: FREQUENCY_HZ.default(120),
  /** Longest clear inside dimension of the largest chamber; null = not known. */
  longestInsideMm: quantity(10, 20_000, 'mm').nullable().default(null),
  /** Port air, peak: plain edges below the first; round both ends below the second; flare below the third. */
  quietMps: quantity(1, 100, 'm/s').default(10),
  roundedMps: quantity(1, 100, 'm/s').default(17),
  flaredMps: quantity(1, 100, 'm/s').default(25),
});
export type VerdictSettingInput = DeepReadonly<z.input<typeof verdictSettingSchema>>;
export type VerdictSetting = DeepReadonly<z.infer<typeof verdictSettingSchema>>;
