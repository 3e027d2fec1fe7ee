// How long a level may be listened to.

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
  if (minutes >= 90) return `${(minutes / 60).toFixed(1)} hours a day`;
  if (minutes >= 1) return `${Math.round(minutes)} minutes a day`;
  return `${Math.round(Math.max(1, minutes * 60))} seconds a day`;
}

/** The caution that stands on screen and paper wherever a level is predicted. */
export function exposureCaution(loudestDb: number): string {
  return (
    `Mind your hearing. About ${Math.round(loudestDb)} dB in the low band at this power. Taken as dBA that is safe for ` +
    `${exposureWords(loudestDb)}. An estimate, no promise of level; wear protection when tuning, and local law on ` +
    'loudness applies.'
  );
}
