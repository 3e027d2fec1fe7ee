// Repeatable random numbers: Weyl sequence with a mixing step ("mulberry32", public domain, T. Ettinger 2017).

/** Numbers in [0, 1), the same ones for the same seed. */
export type SeededRandom = () => number;

export function seededRandom(seed: number): SeededRandom {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
