// Sheets that were kept before the sheet knew more than closed boxes (first issue of the program) read as the sheet of
// today: a closed box, glued and sealed, one design. Nothing that was typed is changed, and the figures come out as
// they were. The one place that knows the older shape.
import type { ResponseResult } from '../acoustics/index.ts';
import { EMPTY_SOUND_INPUT, type SoundInput, soundInputSchema } from './input.ts';
import type { SoundResult } from './result.ts';

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/** A kept input of any age as today's; null = not an input of this sheet. */
export function keptSoundInput(kept: unknown): SoundInput | null {
  if (!isObject(kept)) return null;
  const full = 'enclosure' in kept ? kept : { ...EMPTY_SOUND_INPUT, ...kept };
  return soundInputSchema.safeParse(full).data ?? null;
}

/** A sheet's own input, brought to today's shape where it is an older one. */
export function toSoundInput(kept: SoundInput): SoundInput {
  // Stored JSON keeps the type it was saved under, so an older one arrives here under today's name.
  return 'enclosure' in kept ? kept : { ...EMPTY_SOUND_INPUT, ...(kept as object) };
}

type ClosedBoxCurves = Omit<
  ResponseResult,
  'phaseRad' | 'currentArms' | 'realPowerWatts' | 'apparentPowerVa' | 'drives'
>;

type ClosedBoxResult = Pick<
  SoundResult,
  | 'driverId'
  | 'driverName'
  | 'count'
  | 'parameters'
  | 'contradictions'
  | 'displacementLitres'
  | 'driveWatts'
  | 'driveVolts'
  | 'rdcOhm'
  | 'reachesHz'
  | 'travelBelowHz'
  | 'loudestDb'
  | 'cabinLongestM'
  | 'findings'
> & {
  readonly netLitres: number;
  readonly qtc: number;
  readonly fcHz: number;
  readonly f3Hz: number;
  readonly peakDb: number;
  readonly alpha: number;
  readonly curves: ClosedBoxCurves;
};

/** An issued result of any age as today's. */
export function toSoundResult(kept: SoundResult): SoundResult {
  if ('enclosure' in kept) return kept;
  const closed: ClosedBoxResult = kept; // narrowed to never: only a result of the older shape has no `enclosure`
  const { findings } = closed;
  const curves = fullCurves(closed.curves, closed.driveVolts);
  const band = findings.find((finding) => finding.code === 'band');
  const limited = findings.find((finding) => finding.code === 'travel-limited-power');
  const [mostAmps, mostAmpsAtHz] = mostCurrent(curves);
  return {
    ...closed,
    curves,
    isobaric: false,
    enclosure: 'closed',
    chambers: [{ role: 'only', netLitres: closed.netLitres }],
    ports: [],
    radiator: null,
    amplifier: { limitedBy: 'power', mostAmps, mostAmpsAtHz, maxAmps: null },
    tuningHz: null,
    rearTuningHz: null,
    reachesToHz: band?.code === 'band' ? band.highHz : null,
    travelStretches:
      closed.travelBelowHz === null
        ? []
        : [{ fromHz: curves.frequenciesHz[0] ?? 0, toHz: closed.travelBelowHz }],
    travelLimitWatts: limited?.code === 'travel-limited-power' ? limited.watts : null,
    letter: 'A',
    name: '',
    cabin: closed.cabinLongestM === null ? 'none' : 'estimate',
    cabinLabel: null,
    target: null,
    variants: [],
  };
}

/** What the circuit did not answer then, from what it did: a plain source of `volts` into the load. */
function fullCurves(curves: ClosedBoxCurves, volts: number): ResponseResult {
  const currentArms = curves.impedanceOhm.map((ohm) => volts / ohm);
  return {
    ...curves,
    phaseRad: [],
    currentArms,
    apparentPowerVa: currentArms.map((amps) => amps * volts),
    realPowerWatts: currentArms.map((amps, i) => amps * volts * Math.cos(curves.impedancePhaseRad[i] ?? 0)),
    drives: [],
  };
}

/** Most current out of the amplifier, rms, and at which frequency. */
export function mostCurrent({
  frequenciesHz,
  currentArms,
}: Pick<ResponseResult, 'frequenciesHz' | 'currentArms'>): readonly [amps: number, atHz: number] {
  const most = currentArms.reduce((best, amps, i) => (amps > (currentArms[best] ?? amps) ? i : best), 0);
  return [currentArms[most] ?? 0, frequenciesHz[most] ?? 0];
}
