// What the vehicle's body adds to the pressure: an estimated shelf, or a measured curve.
// The shelf: (s² + s wc/Qc + wc²)/(s² + s wl/Ql + wl²), unity well above fc = c/(2 Lmax), rising 12 dB an octave below
// it, level under fl. Real bodies differ from it by 5 to 10 dB. A measured curve carries no phase: it lifts the level
// and leaves the delay alone.
import type { Cabin } from '@gusset/contracts/acoustics';
import { type Refusal, refuse } from '@gusset/units';
import type { Air } from './air.ts';
import { at } from './linear-solve.ts';
import { addTransfer, GAIN_DB, type RationalTransfer } from './transfer.ts';

/** A cabin ready to be asked at any frequency. */
export type CabinGain =
  | { readonly kind: 'shelf'; readonly transfer: RationalTransfer }
  | { readonly kind: 'curve'; readonly logHz: Float64Array; readonly gainDb: Float64Array };

/** Where a cabin starts to lift: half a wavelength in its longest clear length, Hz. */
export function cabinCornerHz(longestM: number, air: Air): number {
  return air.soundSpeedMps / (2 * longestM);
}

export function cabinGain(cabin: Cabin, air: Air): CabinGain {
  if (cabin.kind === 'curve') {
    return {
      kind: 'curve',
      logHz: Float64Array.from(cabin.points, ({ frequencyHz }) => Math.log(frequencyHz)),
      gainDb: Float64Array.from(cabin.points, ({ gainDb }) => gainDb),
    };
  }
  const { lowerHz, upperQ, lowerQ } = cabin;
  const span = cabinCornerHz(cabin.longestM, air) / lowerHz;
  return {
    kind: 'shelf',
    transfer: {
      referenceHz: lowerHz,
      numerator: [span ** 2, span / upperQ, 1],
      denominator: [1, 1 / lowerQ, 1],
    },
  };
}

/** Adds what the body does at a frequency to `gains`; a measured curve lifts the level alone. */
export function addCabin(cabin: CabinGain, frequencyHz: number, gains: Float64Array): void {
  if (cabin.kind === 'shelf') addTransfer(cabin.transfer, frequencyHz, gains);
  else gains[GAIN_DB] = at(gains, GAIN_DB) + curveGainDb(cabin.logHz, cabin.gainDb, Math.log(frequencyHz));
}

export function refuseCabin(cabin: Cabin, air: Air): Refusal | null {
  if (cabin.kind === 'curve') return null;
  const upperHz = cabinCornerHz(cabin.longestM, air);
  if (cabin.lowerHz < upperHz) return null;
  return refuse('cabin.lowerHz', {
    allowed: `below ${upperHz.toFixed(1)} Hz`,
    got: cabin.lowerHz,
    why: `a body ${cabin.longestM} m long lifts below ${upperHz.toFixed(1)} Hz; the rise must level out under that`,
  });
}

/** Straight in dB over the logarithm of frequency; held level beyond both ends. */
function curveGainDb(logHz: Float64Array, gainDb: Float64Array, wanted: number): number {
  let [below, above] = [0, logHz.length - 1];
  if (wanted <= at(logHz, below)) return at(gainDb, below);
  if (wanted >= at(logHz, above)) return at(gainDb, above);
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if (at(logHz, middle) <= wanted) below = middle;
    else above = middle;
  }
  const share = (wanted - at(logHz, below)) / (at(logHz, above) - at(logHz, below));
  return at(gainDb, below) + share * (at(gainDb, above) - at(gainDb, below));
}
