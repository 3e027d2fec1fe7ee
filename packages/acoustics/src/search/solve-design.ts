// One design solved by the circuit: how loud it may play at each frequency, and how even it is.
import type { SoundSystem } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { REFERENCE_AIR } from '../air.ts';
import { type BuiltNetwork, buildNetwork } from '../build-network.ts';
import { type CompiledSystem, compileSystem } from '../compiled-system.ts';
import { openSweep, runSweep, type Sweep } from '../sweep.ts';
import {
  type AimFigures,
  aimFigures,
  BAND_START,
  type BandFigures,
  bandFigures,
  hasEnded,
  SEARCH_FREQUENCIES_HZ,
} from './aims.ts';
import type { BuiltBox } from './box-enclosure.ts';
import type { OutletLimit } from './level-bounds.ts';
import { PORT_SPEED_LIMIT_MPS, type Trial } from './trial.ts';

/** Some neighbouring frequencies, from place `start` on. */
type Stretch = { readonly start: number; readonly sweep: Sweep };

/** Rooms for curves that are used again for every design: the band, then the way down from it. */
export type Curves = {
  readonly band: Stretch;
  readonly below: readonly Stretch[];
  readonly reachDb: Float64Array;
  readonly evenDb: Float64Array;
};

/** Frequencies below the band that are solved at a time, until the way down has ended. */
const STRETCH_POINTS = 3;

export function makeCurves(): Curves {
  const points = SEARCH_FREQUENCIES_HZ.length;
  const below: Stretch[] = [];
  for (let end = BAND_START; end > 0; end -= STRETCH_POINTS) {
    below.push(stretchOf(Math.max(end - STRETCH_POINTS, 0), end));
  }
  return {
    band: stretchOf(BAND_START, points),
    below,
    reachDb: new Float64Array(points),
    evenDb: new Float64Array(points),
  };
}

function stretchOf(start: number, end: number): Stretch {
  return { start, sweep: openSweep(SEARCH_FREQUENCIES_HZ.slice(start, end), ['level', 'travel']) };
}

/** A trial in a box at the most volts: no resistance before the array, air at rest conditions, no car. */
export function systemFor({ driver, wired, mostVolts }: Trial, { enclosure }: BuiltBox): SoundSystem {
  return {
    frequenciesHz: SEARCH_FREQUENCIES_HZ,
    air: { temperatureC: 20, pressurePa: 101_325 },
    source: {
      voltageVrms: mostVolts,
      outputOhm: 0,
      cableOhm: 0,
      maxVoltageVrms: null,
      maxCurrentArms: null,
    },
    filters: [],
    driver: driver.parameters,
    array: wired.array,
    enclosure,
    cabin: null,
    distanceM: 1,
  };
}

export function networkFor(system: SoundSystem): BuiltNetwork {
  return buildNetwork(system, REFERENCE_AIR);
}

/** What an outlet may move at most: air in a port by its speed, a radiator by its travel; m³/s peak. */
export function outletLimitOf({ enclosure }: SoundSystem, { network }: BuiltNetwork): OutletLimit {
  const areaM2 = network.outlets[0]?.areaM2 ?? 0;
  if (enclosure.kind !== 'passive-radiator') return () => areaM2 * PORT_SPEED_LIMIT_MPS;
  const { xmaxMm } = enclosure.radiator;
  return (omega) => (xmaxMm === null ? Number.POSITIVE_INFINITY : (areaM2 * omega * xmaxMm) / 1e3);
}

/**
 * Solves the band and, where that alone doesn't show that the design `isBeaten`, goes down from it until the corner is
 * found; null = it was beaten. With no `isBeaten` every frequency is solved.
 */
export function solveDesign(
  system: SoundSystem,
  cabinDb: Float64Array,
  curves: Curves,
  isBeaten: ((band: BandFigures) => boolean) | null,
): AimFigures | null {
  const compiled = compileSystem(system);
  if (isRefusal(compiled)) throw new Error(`the search made a box that can't be: ${compiled.refusal.why}`);
  const { band, below, reachDb, evenDb } = curves;
  solveStretch(band, compiled, system, cabinDb, curves);
  if (isBeaten?.(bandFigures(reachDb, evenDb))) return null;
  let solvedFrom = band.start;
  for (const stretch of below) {
    if (isBeaten !== null && hasEnded(reachDb, solvedFrom)) break;
    solveStretch(stretch, compiled, system, cabinDb, curves);
    solvedFrom = stretch.start;
  }
  return aimFigures(reachDb, evenDb);
}

/** Travel and flow grow with the volts, so the furthest of them over its limit is what the level is held back by. */
function solveStretch(
  { start, sweep }: Stretch,
  compiled: CompiledSystem,
  { driver, enclosure }: SoundSystem,
  cabinDb: Float64Array,
  { reachDb, evenDb }: Curves,
): void {
  runSweep(sweep, compiled);
  const { splFreeDb, excursionMm, radiatorExcursionMm, portSpeedMps } = sweep.curves;
  const coneMm = driver.xmaxMm ?? Number.POSITIVE_INFINITY;
  const radiatorMm =
    (enclosure.kind === 'passive-radiator' ? enclosure.radiator.xmaxMm : null) ?? Number.POSITIVE_INFINITY;
  for (let i = 0; i < splFreeDb.length; i++) {
    const level = (splFreeDb[i] ?? 0) + (cabinDb[start + i] ?? 0);
    const held = Math.max(
      1,
      (excursionMm[i] ?? 0) / coneMm,
      (radiatorExcursionMm[i] ?? 0) / radiatorMm,
      (portSpeedMps[i] ?? 0) / PORT_SPEED_LIMIT_MPS,
    );
    evenDb[start + i] = level;
    reachDb[start + i] = level - 20 * Math.log10(held);
  }
}
