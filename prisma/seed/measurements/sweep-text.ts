// Files as a meter or an analyser of this shop would write them: the engine's own curves with seeded noise on top, so
// that every demo measures the same.
import { frequencyGrid, seededNoise, solveResponse } from '@gusset/acoustics';
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';

const ROWS_HZ = frequencyGrid({ lowHz: 8, highHz: 500, count: 180 });
/** Standard deviation of one row: a share of the ohms, radians of phase; dB of level. */
const METER_NOISE = 0.004;
const MICROPHONE_NOISE_DB = 0.6;
const DEGREES_PER_RAD = 180 / Math.PI;

type System = Omit<SoundSystemInput, 'frequenciesHz'>;

function solved(system: System) {
  const answer = solveResponse({ ...system, frequenciesHz: ROWS_HZ });
  if (isRefusal(answer)) throw new Error(`the demo measures what cannot be: ${answer.refusal.why}`);
  return answer;
}

/** Frequency, ohm, degrees. */
export function impedanceText(system: System, seed: number): string {
  const draw = seededNoise(seed);
  const { impedanceOhm, impedancePhaseRad } = solved(system);
  const rows = ROWS_HZ.map((hz, i) => {
    const ohm = (impedanceOhm[i] ?? 0) * (1 + METER_NOISE * draw());
    const degrees = ((impedancePhaseRad[i] ?? 0) + METER_NOISE * draw()) * DEGREES_PER_RAD;
    return [hz.toFixed(3), ohm.toFixed(4), degrees.toFixed(2)].join('\t');
  });
  return ['* Quarry Road Sound, bench meter', 'Hz\tohm\tdeg', ...rows, ''].join('\n');
}

/** Frequency and dB; `gainDb` of microphone and input, nothing below the noise of the room. */
export function levelText(
  system: System,
  { gainDb, seed }: { readonly gainDb: number; readonly seed: number },
): string {
  const draw = seededNoise(seed);
  const { splDb } = solved(system);
  const rows = ROWS_HZ.map(
    (hz, i) => `${hz.toFixed(3)}\t${((splDb[i] ?? 0) + gainDb + MICROPHONE_NOISE_DB * draw()).toFixed(2)}`,
  );
  return ['* Quarry Road Sound, microphone', 'Hz\tdB', ...rows, ''].join('\n');
}

/** A parked car on Quarry Road: falling by 6 dB an octave from `at20Db`. */
export function noiseText(at20Db: number, seed: number): string {
  const draw = seededNoise(seed);
  const rows = ROWS_HZ.map(
    (hz) => `${hz.toFixed(3)}\t${(at20Db - 20 * Math.log10(hz / 20) + 1.5 * draw()).toFixed(2)}`,
  );
  return ['* Quarry Road Sound, nothing playing', 'Hz\tdB', ...rows, ''].join('\n');
}
