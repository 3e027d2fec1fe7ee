// Level of a volume flow at one metre, half space, and what the car adds to it.
import type { Cabin } from '@gusset/contracts/acoustics';
import { REFERENCE_AIR } from '../air.ts';
import { addCabin, cabinGain } from '../cabin.ts';
import { GAIN_DB, GAIN_FIGURES } from '../transfer.ts';
import { SEARCH_FREQUENCIES_HZ } from './aims.ts';

const REFERENCE_PRESSURE_PA = 20e-6;
const DISTANCE_M = 1;
const SILENT_FLOW = 1e-18; // m³/s: no logarithm of nothing
const PER_FLOW = REFERENCE_AIR.densityKgPerM3 / (2 * Math.PI * DISTANCE_M) / REFERENCE_PRESSURE_PA;

/** dB of `flow` m³/s rms. */
export function levelDb(flow: number, omega: number): number {
  return 20 * Math.log10(Math.max(flow, SILENT_FLOW) * omega * PER_FLOW);
}

/** dB at the frequencies of the search; zeros outdoors. */
export function cabinGainsDb(cabin: Cabin | null): Float64Array {
  if (cabin === null) return new Float64Array(SEARCH_FREQUENCIES_HZ.length);
  const body = cabinGain(cabin, REFERENCE_AIR);
  return Float64Array.from(SEARCH_FREQUENCIES_HZ, (frequencyHz) => {
    const gains = new Float64Array(GAIN_FIGURES);
    addCabin(body, frequencyHz, gains);
    return gains[GAIN_DB] ?? 0;
  });
}
