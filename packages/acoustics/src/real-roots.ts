// Real roots of small polynomials, by the roots of their derivatives: between two of those a polynomial is monotone.

const HALVINGS = 200; // more than the 64 bits of a number ever need

/** The edge in [low, high] between where `isBelow` holds (at low) and where it doesn't (at high). */
export function bisect(isBelow: (x: number) => boolean, low: number, high: number): number {
  let [below, above] = [low, high];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (below + above) / 2;
    if (middle === below || middle === above) break;
    if (isBelow(middle)) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}

/** Coefficients with the constant first. */
export function evaluate(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}

/** All real roots where the sign changes, rising. The last coefficient isn't 0. */
export function realRoots(coefficients: readonly number[]): number[] {
  if (coefficients.length < 2) return [];
  const lead = coefficients.at(-1) ?? 1;
  const bound = 1 + Math.max(...coefficients.map((coefficient) => Math.abs(coefficient / lead))); // Cauchy
  const slope = coefficients.slice(1).map((coefficient, k) => coefficient * (k + 1));
  const edges = [-bound, ...realRoots(slope), bound];
  return edges.slice(1).flatMap((high, i) => {
    const low = edges[i] ?? high;
    const sign = Math.sign(evaluate(coefficients, low));
    if (sign === 0 || Math.sign(evaluate(coefficients, high)) === sign) return [];
    return [bisect((x) => Math.sign(evaluate(coefficients, x)) === sign, low, high)];
  });
}
