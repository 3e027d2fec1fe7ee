// Response of a whole system: level, impedance, excursion, delay and the loudest level, frequency by frequency.
//
// The circuit is solved at one volt; filters scale it before the amplifier, the cabin acts on the pressure alone.
// Half space; all sources at one point; no propagation phase, no directivity. Linear: travel grows with voltage.
// Holds up to where box and ports are small beside the wavelength (see `soundVerdict`).
import {
  firstRefusal,
  type ResponseResult,
  type SoundSystem,
  type SoundSystemInput,
  soundSystemSchema,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal } from '@gusset/units';
import { type Air, airAt } from './air.ts';
import { type BuiltNetwork, buildNetwork } from './build-network.ts';
import { cabinTransfer, refuseCabin } from './cabin.ts';
import {
  type Complex,
  complex,
  divide,
  magnitude,
  multiply,
  phaseRad,
  reciprocal,
  subtract,
} from './complex.ts';
import { filterTransfer, type Transfer } from './filters.ts';
import { loudestVolts } from './max-level.ts';
import { type NetworkState, solveNetwork } from './network.ts';
import { refusePort } from './port.ts';
import { soundFigures } from './sound-figures.ts';
import { type Travel, travelPerVolt } from './travel.ts';

const REFERENCE_PRESSURE_PA = 20e-6;
const SILENCE_PA = 1e-15; // below this a level is written as this: no logarithm of nothing
const DELAY_STEP = 1e-4; // relative, to each side: small beside any resonance, large beside rounding

/** One frequency, per volt before the filters, cabin left out. */
type Point = {
  readonly frequencyHz: number;
  readonly state: NetworkState;
  readonly pressurePa: Complex;
};

type Setup = {
  readonly system: SoundSystem;
  readonly air: Air;
  readonly built: BuiltNetwork;
  readonly filters: readonly Transfer[];
  readonly cabin: Transfer | null;
};

/** Everything that `system` does at its `frequenciesHz`, in that order. Refused where the input can't be. */
export function solveResponse(input: SoundSystemInput): ResponseResult | Refusal {
  const setup = prepare(input);
  if (isRefusal(setup)) return setup;
  const points = setup.system.frequenciesHz.map((frequencyHz) => pointAt(setup, frequencyHz));
  const states = points.map(({ state }) => state);
  const travel = travelPerVolt(setup.built, states);
  const gains = gainCurves(setup);
  return {
    frequenciesHz: setup.system.frequenciesHz,
    ...levelCurves(setup, points, gains),
    ...impedanceCurves(setup, states),
    ...travelCurves(setup, travel, gains),
    groupDelayMs: points.map((point) => groupDelayMs(setup, point)),
    ...loudestCurves(setup, points, travel, gains),
    figures: soundFigures(setup.system, setup.built, setup.air),
  };
}

/** dB, by frequency: before the amplifier, and what the body adds to the pressure. */
type Gains = { readonly filtersDb: readonly number[]; readonly cabinDb: readonly number[] };

function gainCurves({ system, filters, cabin }: Setup): Gains {
  return {
    filtersDb: system.frequenciesHz.map((frequencyHz) => gainDb(filters, frequencyHz)),
    cabinDb: system.frequenciesHz.map((frequencyHz) => (cabin === null ? 0 : gainDb([cabin], frequencyHz))),
  };
}

function levelCurves({ system }: Setup, points: readonly Point[], { filtersDb, cabinDb }: Gains) {
  const sourceDb = 20 * Math.log10(system.source.voltageVrms);
  const splFreeDb = points.map(({ pressurePa }, i) => levelDb(pressurePa) + (filtersDb[i] ?? 0) + sourceDb);
  return { splFreeDb, splDb: splFreeDb.map((db, i) => db + (cabinDb[i] ?? 0)) };
}

/** At the amplifier's terminals: the whole loop less the amplifier's own resistance. */
function impedanceCurves({ system }: Setup, states: readonly NetworkState[]) {
  const output = complex(system.source.outputOhm);
  const impedance = states.map(({ current }) => subtract(reciprocal(current), output));
  return { impedanceOhm: impedance.map(magnitude), impedancePhaseRad: impedance.map(phaseRad) };
}

function travelCurves({ system }: Setup, travel: Travel, { filtersDb }: Gains) {
  const volts = filtersDb.map((db) => system.source.voltageVrms * 10 ** (db / 20));
  const driven = (perVolt: readonly number[]) => perVolt.map((value, i) => value * (volts[i] ?? 0));
  return {
    excursionMm: driven(travel.excursion),
    innerExcursionMm: travel.inner && driven(travel.inner),
    radiatorExcursionMm: travel.radiator && driven(travel.radiator),
    portSpeedMps: travel.portSpeed && driven(travel.portSpeed),
    rearPortSpeedMps: travel.rearPortSpeed && driven(travel.rearPortSpeed),
  };
}

/** Filters have no say here: whatever they take, the amplifier may make up until a limit binds. */
function loudestCurves({ system }: Setup, points: readonly Point[], travel: Travel, { cabinDb }: Gains) {
  const loudest = loudestVolts(system, travel);
  if (loudest === null) return { maxSplDb: null, maxSplLimit: null };
  return {
    maxSplDb: points.map(
      ({ pressurePa }, i) =>
        levelDb(pressurePa) + (cabinDb[i] ?? 0) + 20 * Math.log10(loudest[i]?.volts ?? 1),
    ),
    maxSplLimit: loudest.map(({ cause }) => cause),
  };
}

function prepare(input: SoundSystemInput): Setup | Refusal {
  const parsed = soundSystemSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const system = parsed.data;
  const air = airAt(system.air);
  const refusal = refusePorts(system) ?? (system.cabin === null ? null : refuseCabin(system.cabin, air));
  if (refusal !== null) return refusal;
  return {
    system,
    air,
    built: buildNetwork(system, air),
    filters: system.filters.map(filterTransfer),
    cabin: system.cabin === null ? null : cabinTransfer(system.cabin, air),
  };
}

function refusePorts({ enclosure }: SoundSystem): Refusal | null {
  if (enclosure.kind === 'vented') return refusePort(enclosure.port, 'enclosure.port');
  const rear =
    enclosure.kind === 'dual-tuned-bandpass' ? refusePort(enclosure.rearPort, 'enclosure.rearPort') : null;
  return rear ?? ('frontPort' in enclosure ? refusePort(enclosure.frontPort, 'enclosure.frontPort') : null);
}

function pointAt({ built, system, air }: Setup, frequencyHz: number): Point {
  const state = solveNetwork(built.network, frequencyHz);
  const perFlow = (state.omega * air.densityKgPerM3) / (2 * Math.PI * system.distanceM);
  return { frequencyHz, state, pressurePa: multiply(state.outsideFlow, complex(0, perFlow)) };
}

function levelDb(pressurePa: Complex): number {
  return 20 * Math.log10(Math.max(magnitude(pressurePa), SILENCE_PA) / REFERENCE_PRESSURE_PA);
}

/** Summed in dB, so that many steep filters can't run below the smallest number. */
function gainDb(transfers: readonly Transfer[], frequencyHz: number): number {
  return transfers.reduce((db, transfer) => db + 20 * Math.log10(magnitude(transfer(frequencyHz))), 0);
}

/** -d(phase)/dw of circuit, filters and cabin by central difference of the ratio: no phase is ever unwrapped. */
function groupDelayMs(setup: Setup, { frequencyHz }: Point): number {
  const [below, above] = [frequencyHz * (1 - DELAY_STEP), frequencyHz * (1 + DELAY_STEP)];
  const transfers = setup.cabin === null ? setup.filters : [...setup.filters, setup.cabin];
  const circuit = turn(pointAt(setup, above).pressurePa, pointAt(setup, below).pressurePa);
  const turned = transfers.reduce((sum, transfer) => sum + turn(transfer(above), transfer(below)), circuit);
  return (-turned * 1e3) / (2 * Math.PI * (above - below));
}

/** Phase from `from` to `to`, radians; 0 where there is nothing to turn. */
function turn(to: Complex, from: Complex): number {
  return magnitude(from) === 0 ? 0 : phaseRad(divide(to, from));
}
