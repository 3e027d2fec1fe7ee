// Many systems over the same frequencies, into lists that are used again: a search opens one sweep and runs thousands
// of systems through it; `solveResponse` is one run. The circuit is solved at one volt; filters scale it before the
// amplifier, the cabin acts on the pressure alone. Half space; all sources at one point; no propagation phase, no
// directivity. Holds up to where box and ports are small beside the wavelength (see `soundVerdict`).
import { addCabin } from './cabin.ts';
import type { CompiledSystem } from './compiled-system.ts';
import { at } from './linear-solve.ts';
import { solveSlope } from './network-slope.ts';
import { readDelay, readLevel, readLoad, readLoudest, readPhase, readTravel } from './read-curves.ts';
import { solveNetwork } from './solve-network.ts';
import { addTransfer, GAIN_FIGURES } from './transfer.ts';

/** What a run works out; the lists of a group that is not asked for keep what they held. */
export type CurveGroup = 'level' | 'phase' | 'delay' | 'load' | 'travel' | 'loudest';

const CURVE_LISTS = 15; // lists of `SweepCurves` that hold floating numbers
const GROUPS: readonly CurveGroup[] = ['level', 'phase', 'delay', 'load', 'travel', 'loudest'];

/** Curves of one run, parallel to the frequencies; 0 where a part isn't there. Units as in `ResponseResult`. */
export type SweepCurves = {
  /** Group `level`. */
  readonly splDb: Float64Array;
  readonly splFreeDb: Float64Array;
  /** Group `phase`. */
  readonly phaseRad: Float64Array;
  /** Group `delay`. */
  readonly groupDelayMs: Float64Array;
  /** Group `load`. */
  readonly impedanceOhm: Float64Array;
  readonly impedancePhaseRad: Float64Array;
  readonly currentArms: Float64Array;
  readonly realPowerWatts: Float64Array;
  readonly apparentPowerVa: Float64Array;
  /** Group `travel`. */
  readonly excursionMm: Float64Array;
  readonly innerExcursionMm: Float64Array;
  readonly radiatorExcursionMm: Float64Array;
  readonly portSpeedMps: Float64Array;
  readonly rearPortSpeedMps: Float64Array;
  /** Group `loudest`: the level where the first limit binds, and which (a place in `LIMIT_CAUSES`). */
  readonly maxSplDb: Float64Array;
  readonly maxSplLimit: Uint8Array;
};

export type Sweep = {
  readonly frequenciesHz: Float64Array;
  readonly curves: SweepCurves;
  readonly wants: Readonly<Record<CurveGroup, boolean>>;
  /** Of filters, then of the cabin, at the frequency in hand. */
  readonly drive: Float64Array;
  readonly body: Float64Array;
  /** Volts that the limits leave at the frequency in hand, and which limit it is. */
  readonly limit: Float64Array;
};

/** Lists for systems over `frequenciesHz` (each above 0); `groups` says what is wanted of them. */
export function openSweep(frequenciesHz: ArrayLike<number>, groups: readonly CurveGroup[] = GROUPS): Sweep {
  const count = frequenciesHz.length;
  const room = new Float64Array(CURVE_LISTS * count); // one room for all: as many rooms take longer than the circuit
  let taken = 0;
  const list = () => new Float64Array(room.buffer, 8 * count * taken++, count);
  return {
    frequenciesHz: new Float64Array(frequenciesHz),
    curves: {
      splDb: list(),
      splFreeDb: list(),
      phaseRad: list(),
      groupDelayMs: list(),
      impedanceOhm: list(),
      impedancePhaseRad: list(),
      currentArms: list(),
      realPowerWatts: list(),
      apparentPowerVa: list(),
      excursionMm: list(),
      innerExcursionMm: list(),
      radiatorExcursionMm: list(),
      portSpeedMps: list(),
      rearPortSpeedMps: list(),
      maxSplDb: list(),
      maxSplLimit: new Uint8Array(count),
    },
    wants: {
      level: groups.includes('level'),
      phase: groups.includes('phase'),
      delay: groups.includes('delay'),
      load: groups.includes('load'),
      travel: groups.includes('travel'),
      loudest: groups.includes('loudest'),
    },
    drive: new Float64Array(GAIN_FIGURES),
    body: new Float64Array(GAIN_FIGURES),
    limit: new Float64Array(2),
  };
}

/** Fills the sweep's curves with those of `system`, which no other run is using. Allocates nothing. */
export function runSweep(sweep: Sweep, system: CompiledSystem): void {
  const { frequenciesHz, wants } = sweep;
  for (let i = 0; i < frequenciesHz.length; i++) {
    const frequencyHz = at(frequenciesHz, i);
    const omega = 2 * Math.PI * frequencyHz;
    readGains(sweep, system, frequencyHz);
    solveNetwork(system.network, omega);
    if (wants.level) readLevel(sweep, system, i, omega);
    if (wants.load) readLoad(sweep, system, i);
    if (wants.travel) readTravel(sweep, system, i, omega);
    if (wants.loudest) readLoudest(sweep, system, i, omega);
    if (wants.phase) readPhase(sweep, system, i);
    if (!wants.delay) continue;
    solveSlope(system.network, omega);
    readDelay(sweep, system, i);
  }
}

/** Levels add up in dB, so that many steep filters can't run below the smallest number. */
function readGains({ drive, body }: Sweep, { filters, cabin }: CompiledSystem, frequencyHz: number): void {
  clearGains(drive);
  for (const filter of filters) addTransfer(filter, frequencyHz, drive);
  clearGains(body);
  if (cabin !== null) addCabin(cabin, frequencyHz, body);
}

function clearGains(gains: Float64Array): void {
  for (let i = 0; i < GAIN_FIGURES; i++) gains[i] = 0;
}
