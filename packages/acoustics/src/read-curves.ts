// From a solved network to the curves of a sweep, one frequency at a time.
import { type LimitCause, limitCauseSchema } from '@gusset/contracts/acoustics';
import { CURRENT, OUTSIDE, OUTSIDE_SLOPE } from './compiled-network.ts';
import type { CompiledSystem } from './compiled-system.ts';
import { at } from './linear-solve.ts';
import type { Sweep } from './sweep.ts';
import { DELAY_S, GAIN_DB, PHASE_RAD } from './transfer.ts';

const REFERENCE_PRESSURE_PA = 20e-6;
const SILENCE_PA = 1e-15; // below this a level is written as this: no logarithm of nothing
const SILENT_FLOW_SQUARED = 1e-290; // (m³/s)² per volt²: beyond this there is no phase left to turn
const LEAST_PER_VOLT = 1e-30; // mm or A per volt: far below any real one, so that no limit is infinite
const PEAK = Math.SQRT2; // phasors are rms
const MM_PER_M = 1e3;
const TURN_RAD = 2 * Math.PI;

/** What `maxSplLimit` of a sweep counts from 0. */
export const LIMIT_CAUSES: readonly LimitCause[] = limitCauseSchema.options;
/** Places in the limit that a sweep has in hand: the volts that are left, and what leaves no more. */
const VOLTS = 0;
const CODE = 1;
const NO_CODE = -1;
const codeOf = (cause: LimitCause): number => LIMIT_CAUSES.indexOf(cause);
const CURRENT_CODE = codeOf('amplifier-current');
const CONE_CODE = codeOf('excursion');
const INNER_CODE = codeOf('inner-excursion');
const RADIATOR_CODE = codeOf('radiator-excursion');

/** dB of one volt with neither filters nor cabin. */
function perVoltDb({ network, pressurePerAcceleration }: CompiledSystem, omega: number): number {
  const re = at(network.sums.re, OUTSIDE);
  const im = at(network.sums.im, OUTSIDE);
  const pressurePa = omega * pressurePerAcceleration * Math.sqrt(re * re + im * im);
  return 20 * Math.log10(Math.max(pressurePa, SILENCE_PA) / REFERENCE_PRESSURE_PA);
}

/** After the filters. */
function driveVolts({ drive }: Sweep, { voltageVrms, filters }: CompiledSystem): number {
  return filters.length === 0 ? voltageVrms : voltageVrms * 10 ** (at(drive, GAIN_DB) / 20);
}

export function readLevel(sweep: Sweep, system: CompiledSystem, i: number, omega: number): void {
  const { curves, drive, body } = sweep;
  const freeDb = perVoltDb(system, omega) + at(drive, GAIN_DB) + system.voltageDb;
  curves.splFreeDb[i] = freeDb;
  curves.splDb[i] = freeDb + at(body, GAIN_DB);
}

/** p = j w rho U / (2 pi r): a quarter turn ahead of the flow. */
export function readPhase({ curves, drive, body }: Sweep, { network }: CompiledSystem, i: number): void {
  const flow = Math.atan2(at(network.sums.im, OUTSIDE), at(network.sums.re, OUTSIDE));
  const phase = flow + TURN_RAD / 4 + at(drive, PHASE_RAD) + at(body, PHASE_RAD);
  curves.phaseRad[i] = phase - TURN_RAD * Math.round(phase / TURN_RAD);
}

/** -d(phase)/dw, which U' / U holds. */
export function readDelay({ curves, drive, body }: Sweep, { network }: CompiledSystem, i: number): void {
  const { re, im } = network.sums;
  const flowRe = at(re, OUTSIDE);
  const flowIm = at(im, OUTSIDE);
  const squared = flowRe * flowRe + flowIm * flowIm;
  const turning =
    squared < SILENT_FLOW_SQUARED
      ? 0
      : (at(im, OUTSIDE_SLOPE) * flowRe - at(re, OUTSIDE_SLOPE) * flowIm) / squared;
  curves.groupDelayMs[i] = (at(drive, DELAY_S) + at(body, DELAY_S) - turning) * 1e3;
}

/** At the amplifier's terminals: the whole loop less the amplifier's own resistance. */
export function readLoad(sweep: Sweep, system: CompiledSystem, i: number): void {
  const { curves } = sweep;
  const re = at(system.network.sums.re, CURRENT);
  const im = at(system.network.sums.im, CURRENT);
  const squared = re * re + im * im;
  const loadRe = re / squared - system.outputOhm;
  const loadIm = -im / squared;
  const ohm = Math.sqrt(loadRe * loadRe + loadIm * loadIm);
  const volts = driveVolts(sweep, system);
  const currentSquared = squared * volts * volts;
  curves.impedanceOhm[i] = ohm;
  curves.impedancePhaseRad[i] = Math.atan2(loadIm, loadRe);
  curves.currentArms[i] = Math.sqrt(currentSquared);
  curves.realPowerWatts[i] = currentSquared * loadRe;
  curves.apparentPowerVa[i] = currentSquared * ohm;
}

/** Of the motor at a place, mm peak one way per volt into the circuit; 0 where there is none. */
function conePerVolt({ network }: CompiledSystem, motor: number, omega: number): number {
  return motor < network.motorCount ? (PEAK * MM_PER_M * tapSize(network, motor)) / omega : 0;
}

/** Of the outlet at a place, m/s peak at the throat per volt; 0 where there is none. */
function airPerVolt({ network, outletAreasM2 }: CompiledSystem, outlet: number): number {
  const areaM2 = outletAreasM2[outlet];
  return areaM2 === undefined ? 0 : (PEAK * tapSize(network, network.motorCount + outlet)) / areaM2;
}

function tapSize({ taps }: CompiledSystem['network'], tap: number): number {
  const re = at(taps.value.re, tap);
  const im = at(taps.value.im, tap);
  return Math.sqrt(re * re + im * im);
}

export function readTravel(sweep: Sweep, system: CompiledSystem, i: number, omega: number): void {
  const { curves } = sweep;
  const volts = driveVolts(sweep, system);
  curves.excursionMm[i] = conePerVolt(system, 0, omega) * volts;
  curves.innerExcursionMm[i] = conePerVolt(system, 1, omega) * volts;
  const airMps = airPerVolt(system, 0) * volts;
  const isRadiator = system.built.radiator !== null;
  curves.radiatorExcursionMm[i] = isRadiator ? (airMps * MM_PER_M) / omega : 0;
  curves.portSpeedMps[i] = isRadiator ? 0 : airMps;
  curves.rearPortSpeedMps[i] = airPerVolt(system, 1) * volts;
}

/**
 * Level at the most volts that the first limit leaves. Filters have no say here: whatever they take, the amplifier may
 * make up until a limit binds.
 */
export function readLoudest(sweep: Sweep, system: CompiledSystem, i: number, omega: number): void {
  const { curves, body, limit } = sweep;
  const { network, voltageLimit, travelLimits, maxCurrentArms } = system;
  limit[VOLTS] = voltageLimit === null ? Number.POSITIVE_INFINITY : voltageLimit.volts;
  limit[CODE] = voltageLimit === null ? NO_CODE : codeOf(voltageLimit.cause);
  if (maxCurrentArms !== null) {
    const re = at(network.sums.re, CURRENT);
    const im = at(network.sums.im, CURRENT);
    hold(limit, maxCurrentArms / Math.max(Math.sqrt(re * re + im * im), LEAST_PER_VOLT), CURRENT_CODE);
  }
  if (travelLimits.coneMm !== null) {
    const outer = conePerVolt(system, 0, omega);
    hold(limit, travelLimits.coneMm / Math.max(outer, LEAST_PER_VOLT), CONE_CODE);
    const inner = conePerVolt(system, 1, omega);
    hold(limit, travelLimits.coneMm / Math.max(inner, LEAST_PER_VOLT), INNER_CODE);
  }
  if (travelLimits.radiatorMm !== null) {
    const travel = (airPerVolt(system, 0) * MM_PER_M) / omega;
    hold(limit, travelLimits.radiatorMm / Math.max(travel, LEAST_PER_VOLT), RADIATOR_CODE);
  }
  const code = at(limit, CODE);
  curves.maxSplLimit[i] = Math.max(code, 0);
  curves.maxSplDb[i] =
    code === NO_CODE ? 0 : perVoltDb(system, omega) + at(body, GAIN_DB) + 20 * Math.log10(at(limit, VOLTS));
}

function hold(limit: Float64Array, volts: number, code: number): void {
  if (volts >= at(limit, VOLTS)) return;
  limit[VOLTS] = volts;
  limit[CODE] = code;
}
