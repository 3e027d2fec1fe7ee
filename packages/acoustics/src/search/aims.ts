// The three aims as numbers, read from two curves over the low band.
//
//   reach   at each frequency the level in the car (cabin included, at one metre) that the design may play with the power
//           that the amplifier gives into it, held back where heat (maker's watts), travel (maker's one-way travel, cone and
//           radiator) or the air in a port (Mach 0.1) stops first
//   even    the same without those limits: what is heard at an ordinary level
//
//   output     mean of `reach` over 30 to 80 Hz, dB; every part of an octave counts the same
//   low corner the lowest frequency down to which `reach` stays within 3 dB of its loudest point in the band, going
//              down from there; straight between frequencies, over their logarithm. What stays up to the end counts as 10 Hz
//   deviation  root mean square of `even` about its mean over 30 to 80 Hz, dB
//
//   deep = lowest low corner    loud = highest output    smooth = least deviation
import type { FoundDesign, SearchAim } from '@gusset/contracts/acoustics';
import { frequencyGrid } from '../frequency-grid.ts';

export const BAND_HZ = { low: 30, high: 80 };
const LOWEST_HZ = 10;
const POINTS = 60;
const CORNER_DB = 3;

/** Where designs are solved: from the lowest corner that is told apart to the top of the band. */
export const SEARCH_FREQUENCIES_HZ: readonly number[] = frequencyGrid({
  lowHz: LOWEST_HZ,
  highHz: BAND_HZ.high,
  count: POINTS,
});

/** First place of the band in the frequencies; it goes on to their end. */
export const BAND_START = SEARCH_FREQUENCIES_HZ.findIndex((hz) => hz >= BAND_HZ.low);
const BAND_POINTS = POINTS - BAND_START;

/** What the band alone tells. */
export type BandFigures = {
  readonly outputDb: number;
  readonly deviationDb: number;
  readonly loudestDb: number;
};

export function bandFigures(reachDb: Float64Array, evenDb: Float64Array): BandFigures {
  return {
    outputDb: bandMeanDb(reachDb),
    deviationDb: deviationDb(evenDb),
    loudestDb: reachDb[loudestInBand(reachDb)] ?? 0,
  };
}

/** True once the way down from the loudest point has ended at or above place `from`: what lies lower has no say. */
export function hasEnded(reachDb: Float64Array, from: number): boolean {
  const loudest = loudestInBand(reachDb);
  const floorDb = (reachDb[loudest] ?? 0) - CORNER_DB;
  for (let i = loudest - 1; i >= from; i--) if ((reachDb[i] ?? 0) < floorDb) return true;
  return false;
}

export type AimFigures = Pick<FoundDesign, 'lowCornerHz' | 'outputDb' | 'deviationDb'>;

/** Levels in dB at `SEARCH_FREQUENCIES_HZ`. */
export function aimFigures(reachDb: Float64Array, evenDb: Float64Array): AimFigures {
  const outputDb = bandMeanDb(reachDb);
  return { outputDb, lowCornerHz: lowCornerHz(reachDb), deviationDb: deviationDb(evenDb) };
}

export function bandMeanDb(levelsDb: Float64Array): number {
  let sum = 0;
  for (let i = BAND_START; i < POINTS; i++) sum += levelsDb[i] ?? 0;
  return sum / BAND_POINTS;
}

function deviationDb(levelsDb: Float64Array): number {
  const mean = bandMeanDb(levelsDb);
  let squares = 0;
  for (let i = BAND_START; i < POINTS; i++) squares += ((levelsDb[i] ?? 0) - mean) ** 2;
  return Math.sqrt(squares / BAND_POINTS);
}

function lowCornerHz(reachDb: Float64Array): number {
  const loudest = loudestInBand(reachDb);
  const floorDb = (reachDb[loudest] ?? 0) - CORNER_DB;
  for (let i = loudest - 1; i >= 0; i--) {
    const below = reachDb[i] ?? 0;
    if (below >= floorDb) continue;
    const above = reachDb[i + 1] ?? floorDb;
    const share = (floorDb - below) / (above - below);
    return frequencyAt(i) * (frequencyAt(i + 1) / frequencyAt(i)) ** share;
  }
  return LOWEST_HZ;
}

function loudestInBand(reachDb: Float64Array): number {
  let loudest = BAND_START;
  for (let i = BAND_START + 1; i < POINTS; i++) {
    if ((reachDb[i] ?? 0) > (reachDb[loudest] ?? 0)) loudest = i;
  }
  return loudest;
}

function frequencyAt(index: number): number {
  return SEARCH_FREQUENCIES_HZ[index] ?? LOWEST_HZ;
}

/**
 * A corner that a design can't go below when `mostDb` bounds its `reach` and its loudest point in the band has at least
 * `loudestDb` (a mean that is asked for will do): where even the bound lies 3 dB under that, the way down has ended.
 */
export function cornerBoundHz(mostDb: Float64Array, loudestDb: number | null): number {
  if (loudestDb === null) return LOWEST_HZ;
  for (let i = BAND_START - 1; i >= 0; i--) {
    if ((mostDb[i] ?? 0) < loudestDb - CORNER_DB) return frequencyAt(i);
  }
  return LOWEST_HZ;
}

/** Lower is better. */
export function scoreFor(aim: SearchAim, figures: AimFigures): number {
  if (aim === 'deep') return figures.lowCornerHz;
  return aim === 'loud' ? -figures.outputDb : figures.deviationDb;
}
