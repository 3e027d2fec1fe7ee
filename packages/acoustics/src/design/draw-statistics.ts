// What many draws say: percentiles, a share with its uncertainty, and how much of a figure goes with a parameter.

const Z_95 = 1.959964; // standard deviations that hold 95 % of a normal distribution

/** Value below which `share` of the draws lie, straight between neighbours; `sorted` rises and isn't empty. */
export function percentile(sorted: ArrayLike<number>, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below] ?? 0;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? low;
  return low + (place - below) * (high - low);
}

/** 95 % interval of a share by E. B. Wilson, J. Am. Stat. Assoc. 22, 1927: honest near 0 and 1 too. */
export function shareInterval(met: number, draws: number): { readonly least: number; readonly most: number } {
  const share = met / draws;
  const z2 = Z_95 ** 2 / draws;
  const middle = share + z2 / 2;
  const half = Z_95 * Math.sqrt((share * (1 - share) + z2 / 4) / draws);
  return {
    least: Math.max(0, (middle - half) / (1 + z2)),
    most: Math.min(1, (middle + half) / (1 + z2)),
  };
}

/** Squared correlation: the share of `figure`'s variance that goes with `cause`, 0 where either stands still. */
export function varianceShare(cause: readonly number[], figure: readonly number[]): number {
  const [a, b] = [mean(cause), mean(figure)];
  let [together, causeSpread, figureSpread] = [0, 0, 0];
  for (const [i, value] of figure.entries()) {
    const [da, db] = [(cause[i] ?? 0) - a, value - b];
    together += da * db;
    causeSpread += da * da;
    figureSpread += db * db;
  }
  return causeSpread === 0 || figureSpread < STILL ? 0 : together ** 2 / (causeSpread * figureSpread);
}

const STILL = 1e-18; // sum of squares that is rounding

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
