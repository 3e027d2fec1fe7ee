// Noise that is the same every time: for tests and for demonstration sweeps. Marsaglia xorshift (2003) and the polar
// form of Box and Muller; quality enough for a curve, not for secrets.

/** Draws from a normal distribution, mean 0, deviation 1. `seed` is any whole number but 0. */
export function seededNoise(seed: number): () => number {
  let state = seed | 0 || 1;
  const uniform = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4_294_967_296;
  };
  for (let i = 0; i < 16; i++) uniform(); // small seeds start alike
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}
