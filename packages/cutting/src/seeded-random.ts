// A small seeded generator (32-bit state, multiply-xorshift mixing), so that a search repeats exactly.

export type SeededRandom = {
  /** Uniform in [0, 1). */
  readonly next: () => number;
  /** Uniform whole number in [0, below). */
  readonly below: (limit: number) => number;
};

export function seededRandom(seed: number): SeededRandom {
  let state = seed | 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  return { next, below: (limit) => Math.floor(next() * limit) };
}
