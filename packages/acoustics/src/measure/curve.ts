// A column over frequency: its value between rows, its rows within a band, and how much of an octave each row stands
// for.

/** Straight over the logarithm of frequency; held level beyond both ends. `frequenciesHz` rise. */
export function valueAt(
  frequenciesHz: readonly number[],
  values: readonly number[],
  frequencyHz: number,
): number {
  const above = firstAtOrAbove(frequenciesHz, frequencyHz);
  if (above === 0) return values[0] ?? 0;
  if (above === frequenciesHz.length) return values.at(-1) ?? 0;
  const [lowHz, highHz] = [frequenciesHz[above - 1] ?? 1, frequenciesHz[above] ?? 1];
  const [low, high] = [values[above - 1] ?? 0, values[above] ?? 0];
  return low + (Math.log(frequencyHz / lowHz) / Math.log(highHz / lowHz)) * (high - low);
}

/** Place of the first frequency that is not below `frequencyHz`; the length where none is. */
export function firstAtOrAbove(frequenciesHz: readonly number[], frequencyHz: number): number {
  let [low, high] = [0, frequenciesHz.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((frequenciesHz[middle] ?? 0) < frequencyHz) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Share of an octave between the midpoints to both neighbours: a dense end doesn't outweigh a sparse one. */
export function octavesPerRow(frequenciesHz: readonly number[]): number[] {
  return frequenciesHz.map((hz, i) => {
    const below = frequenciesHz[i - 1] ?? hz;
    const above = frequenciesHz[i + 1] ?? hz;
    return Math.log2(above / below) / 2;
  });
}
