// Repeatable draws. Evenly spread numbers: Weyl sequence with a mixing step ("mulberry32", public domain, T. Ettinger
// 2017). From them the normal distribution by G. E. P. Box, M. E. Muller, Ann. Math. Stat. 29, 1958.

const MOST_DEVIATIONS = 3; // parts beyond are sorted out before they reach a shop

export type SeededDraws = {
  /** In [0, 1). */
  readonly even: () => number;
  /** Mean 0, standard deviation 1, nothing beyond three. */
  readonly normal: () => number;
};

/** The same numbers for the same seed. */
export function seededDraws(seed: number): SeededDraws {
  let state = seed >>> 0;
  const even = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const normal = () => {
    for (;;) {
      const drawn = Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
      if (Math.abs(drawn) <= MOST_DEVIATIONS) return drawn;
    }
  };
  return { even, normal };
}
