// Sweeps as files would bring them, from the engine itself.
import { frequencyGrid, solveResponse } from '@gusset/acoustics';
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';

const GRID = frequencyGrid({ lowHz: 8, highHz: 600, count: 240 });

function solved(system: Omit<SoundSystemInput, 'frequenciesHz'>) {
  const answer = solveResponse({ ...system, frequenciesHz: GRID });
  if (isRefusal(answer)) throw new Error(JSON.stringify(answer.refusal));
  return answer;
}

/** Frequency, ohm, degrees. */
export function impedanceText(system: Omit<SoundSystemInput, 'frequenciesHz'>): string {
  const { impedanceOhm, impedancePhaseRad } = solved(system);
  const rows = GRID.map((hz, i) =>
    [hz, impedanceOhm[i] ?? 0, ((impedancePhaseRad[i] ?? 0) * 180) / Math.PI]
      .map((value) => value.toFixed(5))
      .join('\t'),
  );
  return ['Hz\tohm\tdeg', ...rows].join('\n');
}

/** Frequency and dB, with the gain of a microphone on top. */
export function levelText(system: Omit<SoundSystemInput, 'frequenciesHz'>, gainDb = 0): string {
  const { splDb } = solved(system);
  return GRID.map((hz, i) => `${hz.toFixed(4)} ${((splDb[i] ?? 0) + gainDb).toFixed(3)}`).join('\n');
}

/** The same level everywhere. */
export function noiseText(levelDb: number): string {
  return GRID.map((hz) => `${hz.toFixed(4)} ${levelDb}`).join('\n');
}
