// Single-tuned bandpass box whose front is tuned to the resonance that the drivers have on the rear chamber: lossless,
// its response is a second-order low-pass of corner sqrt(chi) and Q S = Q sqrt(chi), turned into a band by
// x = p + 1/p. E. R. Geddes, "An Introduction to Band-Pass Loudspeaker Systems", JAES 37(5), 1989; L. R. Fincham, "A
// Bandpass Loudspeaker Enclosure", AES 63rd Convention, 1979. Losses and inductance are left out; the response has them.
import {
  firstRefusal,
  type SymmetricBandpass,
  type SymmetricBandpassInput,
  symmetricBandpassSchema,
} from '@gusset/contracts/acoustics';
import { type Refusal, refuse } from '@gusset/units';
import { airAt, REFERENCE_AIR } from '../air.ts';
import { effectiveDriverCount } from '../build-network.ts';
import { qtsInCircuit } from '../circuit-q.ts';
import { peakDb } from '../second-order.ts';

/** Both chambers, tuning and band for a wanted gain or middle. Refused at or below the Q or resonance of the drivers. */
export function symmetricBandpass(input: SymmetricBandpassInput): SymmetricBandpass | Refusal {
  const parsed = symmetricBandpassSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const { driver, array, fillFactor, seriesOhm, air, shape, by } = parsed.data;
  const qts = qtsInCircuit(driver, array, seriesOhm);
  // chi = (S/Q)², and the middle stands 1/chi above the baffle.
  const qtc = by.aim === 'gain' ? shape * 10 ** (by.gainDb / 40) : (qts * by.centreHz) / driver.fsHz;
  const alpha = (qtc / qts) ** 2 - 1;
  if (!(alpha > 0)) {
    const lowestGainDb = 40 * Math.log10(qts / shape);
    return by.aim === 'gain'
      ? refuse('by.gainDb', {
          allowed: `above ${lowestGainDb.toFixed(1)} dB`,
          got: by.gainDb,
          why: `the rear chamber can only raise the Q of ${qts.toFixed(3)} that the drivers have in free air`,
        })
      : refuse('by.centreHz', {
          allowed: `above ${driver.fsHz} Hz`,
          got: by.centreHz,
          why: 'the rear chamber can only raise the resonance that the drivers have in free air',
        });
  }
  const stiffer = airAt(air).stiffnessPa / REFERENCE_AIR.stiffnessPa;
  const vasLitres = (effectiveDriverCount(array) * driver.vasLitres * stiffer) / fillFactor;
  const chi = (shape / qtc) ** 2;
  const tuningHz = driver.fsHz * Math.sqrt(1 + alpha);
  const halfWidth = (Math.sqrt(chi) * halfPower(shape)) / 2;
  const reach = Math.sqrt(1 + halfWidth ** 2);
  return {
    rearLitres: vasLitres / alpha,
    frontLitres: vasLitres / (1 + alpha) / chi,
    tuningHz,
    lowHz: tuningHz / (reach + halfWidth),
    highHz: tuningHz * (reach + halfWidth),
    gainDb: -20 * Math.log10(chi),
    rippleDb: peakDb(shape),
    qtc,
  };
}

/** -3 dB of a second-order low-pass of Q `q`, over its corner. */
function halfPower(q: number): number {
  const b = 1 / q ** 2 - 2;
  return Math.sqrt((Math.sqrt(b ** 2 + 4) - b) / 2);
}
