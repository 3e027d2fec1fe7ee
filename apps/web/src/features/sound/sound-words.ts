// Sentences for what the engine found: the verdict first, then the number, then how sure we are.
import type { SoundFinding } from '@gusset/contracts/acoustics';
import type { SoundResult } from '@gusset/contracts/sound';

const whole = (value: number): string => String(Math.round(value));
const one = (value: number): string => value.toFixed(1);

/** The headline: how deep it reaches, and where the cone runs out of travel. */
export function soundHeadline(result: SoundResult): {
  readonly tone: 'pass' | 'check';
  readonly words: string;
  readonly detail: string;
} {
  const where = result.cabinLongestM === null ? 'outdoors' : 'in this car';
  const reach =
    result.reachesHz === null
      ? `Plays below ${whole(result.curves.frequenciesHz[0] ?? 10)} Hz ${where}`
      : `Reaches ${whole(result.reachesHz)} Hz ${where}`;
  const travel =
    result.travelBelowHz === null
      ? `the cone stays within its travel at ${whole(result.driveWatts)} W`
      : `the cone runs out of travel below ${whole(result.travelBelowHz)} Hz at ${whole(result.driveWatts)} W`;
  return {
    tone: result.travelBelowHz === null ? 'pass' : 'check',
    words: reach,
    detail: `Within 3 dB of its loudest from there up; ${travel}.`,
  };
}

const DAMPING_WORDS: Readonly<Record<Extract<SoundFinding, { code: 'damping' }>['character'], string>> = {
  overdamped: 'Very tight, little low bass of its own',
  tight: 'Tight, shortest ringing',
  flat: 'Flattest level',
  lifted: 'Fuller, a slight lift above the corner',
  peaky: 'Boomy: a clear hump above the corner',
};

/** The findings that a person can act on, each one line; null = not for this sheet. */
export function findingWords(finding: SoundFinding): string | null {
  switch (finding.code) {
    case 'damping':
      return `${DAMPING_WORDS[finding.character]} (system Q ${finding.qtcWithLosses.toFixed(2)}${finding.peakDb > 0.1 ? `, +${one(finding.peakDb)} dB` : ''})`;
    case 'travel':
      return finding.severity === 'note'
        ? `Cone travels ${one(finding.travelMm)} of ${one(finding.limitMm)} mm at ${whole(finding.frequencyHz)} Hz`
        : `Cone would travel ${one(finding.travelMm)} mm at ${whole(finding.frequencyHz)} Hz, the maker allows ${one(finding.limitMm)}`;
    case 'travel-limited-power':
      return `${whole(finding.watts)} W already moves the cone to its limit at ${whole(finding.frequencyHz)} Hz`;
    case 'heat':
      return finding.severity === 'over'
        ? `More power than the coils are rated for: ${one(finding.voltageVrms)} V, the rating allows ${one(finding.limitVrms)}`
        : null;
    case 'lowest-load':
      return `Lowest load ${one(finding.ohm)} Ω at ${whole(finding.frequencyHz)} Hz`;
    default:
      return null;
  }
}

/**
 * Minutes a day before hearing is at risk, at a level taken as A-weighted: 480 / 2^((L - 85)/3) (NIOSH criteria for a
 * recommended standard, occupational noise). Bass reads lower on a dBA meter, so this errs on the careful side.
 */
export function exposureMinutes(levelDb: number): number {
  return 480 / 2 ** ((levelDb - 85) / 3);
}

export function exposureWords(levelDb: number): string {
  const minutes = exposureMinutes(levelDb);
  if (minutes >= 480) return 'a working day';
  if (minutes >= 90) return `${one(minutes / 60)} hours a day`;
  if (minutes >= 1) return `${whole(minutes)} minutes a day`;
  return `${whole(Math.max(1, minutes * 60))} seconds a day`;
}
