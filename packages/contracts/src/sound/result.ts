// Sheet 03, Sound: the records it reads and what it says.
import type { DriverParameters, PortRole, ResponseResult, SoundFinding } from '../acoustics/index.ts';
import type { DriverFigures } from '../records/index.ts';
import type { EnclosureKind } from './enclosure-parts.ts';
import type { CabinChoice, DesignLetter } from './input.ts';

export type DriverFact = { readonly id: string; readonly name: string; readonly figures: DriverFigures };

/** What a body adds to the level, as measured in this car. */
export type CabinCurve = {
  /** Which measurement, for people: its name and day. */
  readonly label: string;
  readonly points: readonly { readonly frequencyHz: number; readonly gainDb: number }[];
};

export type SoundFacts = {
  readonly driver: DriverFact | null;
  /** Drivers of the designs beside it; left out by sheets issued before there were any. */
  readonly otherDrivers?: readonly DriverFact[];
  /** Longest clear length inside the vehicle, m; null = not known. */
  readonly longestCabinM: number | null;
  /** Left out by sheets issued before cars were measured; null = nobody has. */
  readonly cabinCurve?: CabinCurve | null;
};

/** A stretch of frequencies, Hz. */
export type Stretch = { readonly fromHz: number; readonly toHz: number };

export type SoundChamber = { readonly role: 'only' | 'rear' | 'front'; readonly netLitres: number };

/** A port as it must be built; lengths in mm, flares included in the length. */
export type SoundPortResult = {
  readonly role: PortRole;
  readonly chamber: SoundChamber['role'];
  readonly shape: 'round' | 'slot';
  readonly count: number;
  /** Null for a slot. */
  readonly diameterMm: number | null;
  /** Null for a round one. */
  readonly widthMm: number | null;
  readonly heightMm: number | null;
  readonly outerFlareMm: number;
  readonly innerFlareMm: number;
  /** Panels that run on past the inner end. */
  readonly walls: 0 | 1 | 2;
  readonly lengthMm: number;
  readonly tuningHz: number;
  /** All of them together. */
  readonly openAreaCm2: number;
  /** Air inside all of them, litres: what they take from the box at least, their own wall not counted. */
  readonly airLitres: number;
  /** False where this mouth cannot reach the tuning. */
  readonly buildable: boolean;
  /** Fastest air in the band that verdicts look at, peak. */
  readonly fastestMps: number;
};

export type SoundRadiatorResult = {
  readonly count: number;
  readonly sdCm2: number;
  readonly addedMassGrams: number;
  readonly xmaxMm: number | null;
  readonly tuningHz: number;
  /** Where they cancel the output. */
  readonly notchHz: number;
};

export type SoundAmplifierResult = {
  /** What sets the voltage. */
  readonly limitedBy: 'power' | 'volts';
  /** Most current at this voltage, rms, and where. */
  readonly mostAmps: number;
  readonly mostAmpsAtHz: number;
  /** Null = not stated. */
  readonly maxAmps: number | null;
};

export type Contradiction = {
  readonly field: string;
  readonly given: number;
  readonly implied: number;
  readonly percent: number;
};

/** One design, worked out. Figures that a kind of box does not have are null. */
export type SolvedDesign = {
  readonly driverId: string;
  readonly driverName: string;
  readonly count: number;
  readonly isobaric: boolean;
  readonly parameters: DriverParameters;
  readonly contradictions: readonly Contradiction[];
  readonly enclosure: EnclosureKind;
  /** Air of all chambers together: what the box sheet aims at. Null = a trunk wall has no box. */
  readonly netLitres: number | null;
  readonly chambers: readonly SoundChamber[];
  readonly ports: readonly SoundPortResult[];
  readonly radiator: SoundRadiatorResult | null;
  readonly displacementLitres: number;
  readonly driveWatts: number;
  readonly driveVolts: number;
  readonly amplifier: SoundAmplifierResult;
  /** Nominal load that the amplifier sees: direct-current resistance of the whole array. */
  readonly rdcOhm: number;
  /** With leak and absorption. */
  readonly qtc: number | null;
  readonly fcHz: number | null;
  readonly f3Hz: number | null;
  readonly peakDb: number | null;
  readonly alpha: number | null;
  /** Of the port or radiators; of the front chamber in a bandpass box. */
  readonly tuningHz: number | null;
  readonly rearTuningHz: number | null;
  /** Lowest frequency that is still within 3 dB of the loudest, in the car where a cabin is given. */
  readonly reachesHz: number | null;
  readonly reachesToHz: number | null;
  /** Below this the cone runs out of travel at full power; null = it does not, or the travel is not stated. */
  readonly travelBelowHz: number | null;
  /** All stretches where it does, lowest first. */
  readonly travelStretches: readonly Stretch[];
  /** Power up to which the cone stays within its travel in the low band, filters included; null = travel not stated. */
  readonly travelLimitWatts: number | null;
  /** Loudest level in the low band at this power, dB at one metre (or in the car). */
  readonly loudestDb: number;
  readonly curves: ResponseResult;
  readonly findings: readonly SoundFinding[];
};

/** The curves of a design that is only compared: what is laid over the other, five figures each. */
export type ComparedCurves = Pick<
  ResponseResult,
  | 'frequenciesHz'
  | 'splDb'
  | 'splFreeDb'
  | 'excursionMm'
  | 'impedanceOhm'
  | 'groupDelayMs'
  | 'portSpeedMps'
  | 'maxSplDb'
>;

/** What the comparison lists, and the curves it lays over the chosen ones. */
export type ComparedDesign = Omit<
  SolvedDesign,
  'curves' | 'findings' | 'parameters' | 'contradictions' | 'displacementLitres' | 'amplifier'
> & { readonly curves: ComparedCurves };

export type SoundVariantResult = { readonly letter: DesignLetter; readonly name: string } & (
  | { readonly state: 'ready'; readonly design: ComparedDesign }
  | { readonly state: 'open'; readonly why: string }
);

export type TargetResult = {
  readonly lowHz: number;
  readonly highHz: number;
  readonly levelDb: number;
  readonly plusMinusDb: number;
  /** Stretches between the two where the level stands outside. */
  readonly outside: readonly Stretch[];
};

export type SoundResult = SolvedDesign & {
  readonly letter: DesignLetter;
  readonly name: string;
  /** What the curves were worked out with: an estimate without a length is none. */
  readonly cabin: CabinChoice;
  readonly cabinLongestM: number | null;
  /** Which measurement of the car; null = none used. */
  readonly cabinLabel: string | null;
  readonly target: TargetResult | null;
  readonly variants: readonly SoundVariantResult[];
};
