// The second-order high-pass that a closed box or a baffle makes of a driver: s²/(s² + s wc/Q + wc²).
// R. H. Small, "Closed-Box Loudspeaker Systems", Part I, J. Audio Eng. Soc. 20(10), 1972.

/** -3 dB from the flat part, Hz. */
export function cornerF3Hz(resonanceHz: number, q: number): number {
  const b = 1 / q ** 2 - 2;
  return resonanceHz * Math.sqrt(halfPowerRoot(b));
}

/** (b + sqrt(b² + 4))/2, in the form that keeps its digits where b is far below zero (a very high Q). */
function halfPowerRoot(b: number): number {
  const root = Math.sqrt(b ** 2 + 4);
  return b > 0 ? (b + root) / 2 : 2 / (root - b);
}

/** Rise above the flat part, dB; 0 where there is none. */
export function peakDb(q: number): number {
  return q <= Math.SQRT1_2 ? 0 : 20 * Math.log10(q ** 2 / Math.sqrt(q ** 2 - 1 / 4));
}

/** Where it peaks, Hz; null where it doesn't. */
export function peakHz(resonanceHz: number, q: number): number | null {
  return q <= Math.SQRT1_2 ? null : resonanceHz / Math.sqrt(1 - 1 / (2 * q ** 2));
}
