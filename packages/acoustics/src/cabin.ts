// What the vehicle's body adds to the pressure: an estimated shelf, or a measured curve.
// The shelf: (s² + s wc/Qc + wc²)/(s² + s wl/Ql + wl²), unity well above fc = c/(2 Lmax), rising 12 dB an octave below
// it, level under fl. Real bodies differ from it by 5 to 10 dB. A measured curve carries no phase: it lifts the level
// and leaves the delay alone.
import type { Cabin } from '@gusset/contracts/acoustics';
import { type Refusal, refuse } from '@gusset/units';
import type { Air } from './air.ts';
import { complex, divide } from './complex.ts';
import type { Transfer } from './filters.ts';

/** Where a cabin starts to lift: half a wavelength in its longest clear length, Hz. */
export function cabinCornerHz(longestM: number, air: Air): number {
  return air.soundSpeedMps / (2 * longestM);
}

export function cabinTransfer(cabin: Cabin, air: Air): Transfer {
  if (cabin.kind === 'curve')
    return (frequencyHz) => complex(10 ** (curveGainDb(cabin.points, frequencyHz) / 20));
  const upperHz = cabinCornerHz(cabin.longestM, air);
  const { lowerHz, upperQ, lowerQ } = cabin;
  return (f) =>
    divide(
      complex(upperHz ** 2 - f ** 2, (f * upperHz) / upperQ),
      complex(lowerHz ** 2 - f ** 2, (f * lowerHz) / lowerQ),
    );
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

type CurvePoint = { readonly frequencyHz: number; readonly gainDb: number };

/** Straight in dB over the logarithm of frequency; held level beyond both ends. */
function curveGainDb(points: readonly CurvePoint[], frequencyHz: number): number {
  const next = points.findIndex((point) => point.frequencyHz >= frequencyHz);
  const above = points[next];
  if (above === undefined) return points.at(-1)?.gainDb ?? 0;
  const below = points[next - 1];
  if (below === undefined) return above.gainDb;
  const share = Math.log(frequencyHz / below.frequencyHz) / Math.log(above.frequencyHz / below.frequencyHz);
  return below.gainDb + share * (above.gainDb - below.gainDb);
}
