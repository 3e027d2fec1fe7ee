// Frequencies to look at: even over the octaves, as an ear and a chart read them.

/** `count` frequencies (2 or more) from `lowHz` to `highHz`, both exactly among them. */
export function frequencyGrid({
  lowHz,
  highHz,
  count,
}: {
  readonly lowHz: number;
  readonly highHz: number;
  readonly count: number;
}): number[] {
  return Array.from({ length: count }, (_, i) => {
    if (i === 0) return lowHz;
    return i === count - 1 ? highHz : lowHz * (highHz / lowHz) ** (i / (count - 1));
  });
}
