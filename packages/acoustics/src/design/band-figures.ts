// The three aims as numbers, read from two curves over a band in which every part of an octave counts the same.
//
//   reach   at each frequency the level at the listener (filters and cabin included) at the voltage given, held back where
//           heat, travel, the amplifier or the air in a port (Mach 0.1) stops first
//   even    the same without those limits: what is heard at an ordinary level
//
//   output     mean of reach over the band, dB                                                  loud = highest
//   low corner lowest frequency down to which reach stays within 3 dB of its loudest point in    deep = lowest
//              the band, going down from there; 10 Hz (or a third of the band's start) at least
//   deviation  root mean square of even about its mean over the band, dB                        smooth = least
import type { BandFigures, DesignBand, SearchAim } from '@gusset/contracts/acoustics';
import type { CompiledSystem } from '../compiled-system.ts';
import { frequencyGrid } from '../frequency-grid.ts';
import { openSweep, runSweep, type Sweep } from '../sweep.ts';

const LOWEST_HZ = 10;
const POINTS = 60;
const CORNER_DB = 3;
const FASTEST_AIR_MACH = 0.1; // beyond it a port gives nothing more (guidance, about 34 m/s)

/** A sweep from well below a band up to its end. */
export type BandSweep = { readonly sweep: Sweep; readonly bandStart: number; readonly reachDb: Float64Array };

export function openBandSweep({ lowHz, highHz }: DesignBand): BandSweep {
  const frequenciesHz = frequencyGrid({ lowHz: Math.min(LOWEST_HZ, lowHz / 3), highHz, count: POINTS });
  return {
    sweep: openSweep(frequenciesHz, ['level', 'travel', 'loudest']),
    bandStart: frequenciesHz.findIndex((frequencyHz) => frequencyHz >= lowHz),
    reachDb: new Float64Array(POINTS),
  };
}

/** Runs `system` through the sweep, whose curves then hold its levels. */
export function bandFigures(band: BandSweep, system: CompiledSystem): BandFigures {
  runSweep(band.sweep, system);
  fillReach(band, system);
  const outputDb = meanDb(band.reachDb, band.bandStart);
  return {
    outputDb,
    lowCornerHz: cornerOf(band.sweep.frequenciesHz, band.reachDb, loudestPlace(band.reachDb, band.bandStart)),
    deviationDb: deviationDb(band.sweep.curves.splDb, band.bandStart),
  };
}

function fillReach({ sweep, reachDb }: BandSweep, system: CompiledSystem): void {
  const { splDb, maxSplDb, portSpeedMps, rearPortSpeedMps } = sweep.curves;
  const isLimited =
    system.voltageLimit !== null ||
    system.maxCurrentArms !== null ||
    system.travelLimits.coneMm !== null ||
    system.travelLimits.radiatorMm !== null;
  const fastestMps = FASTEST_AIR_MACH * system.air.soundSpeedMps;
  for (let i = 0; i < reachDb.length; i++) {
    const level = splDb[i] ?? 0;
    const speedMps = Math.max(portSpeedMps[i] ?? 0, rearPortSpeedMps[i] ?? 0);
    const airDb = speedMps > fastestMps ? 20 * Math.log10(speedMps / fastestMps) : 0;
    reachDb[i] = Math.min(level - airDb, isLimited ? (maxSplDb[i] ?? 0) : level);
  }
}

/** Where a curve has fallen 3 dB below place `from`, going down from there; straight over the logarithm of frequency. */
export function cornerOf(frequenciesHz: Float64Array, levelsDb: Float64Array, from: number): number {
  const floorDb = (levelsDb[from] ?? 0) - CORNER_DB;
  const frequencyAt = (i: number) => frequenciesHz[i] ?? LOWEST_HZ;
  for (let i = from - 1; i >= 0; i--) {
    const below = levelsDb[i] ?? 0;
    if (below >= floorDb) continue;
    const share = (floorDb - below) / ((levelsDb[i + 1] ?? 0) - below);
    return frequencyAt(i) * (frequencyAt(i + 1) / frequencyAt(i)) ** share;
  }
  return frequencyAt(0);
}

export function loudestPlace(levelsDb: Float64Array, start: number, end = levelsDb.length): number {
  let best = start;
  for (let i = start; i < end; i++) if ((levelsDb[i] ?? 0) > (levelsDb[best] ?? 0)) best = i;
  return best;
}

export function meanDb(levelsDb: Float64Array, start: number, end = levelsDb.length): number {
  let sum = 0;
  for (let i = start; i < end; i++) sum += levelsDb[i] ?? 0;
  return sum / (end - start);
}

export function deviationDb(levelsDb: Float64Array, start: number): number {
  const mean = meanDb(levelsDb, start);
  let squares = 0;
  for (let i = start; i < levelsDb.length; i++) squares += ((levelsDb[i] ?? 0) - mean) ** 2;
  return Math.sqrt(squares / (levelsDb.length - start));
}

/** Lower is better. */
export function aimScore(aim: SearchAim, figures: BandFigures): number {
  if (aim === 'deep') return figures.lowCornerHz;
  return aim === 'loud' ? -figures.outputDb : figures.deviationDb;
}
