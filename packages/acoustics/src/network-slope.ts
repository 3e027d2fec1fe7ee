// How the air that a network moves out changes with frequency, from the factors of its last solution: no second
// model and no small difference of large numbers. With A x = b and b constant, A x' = -A' x; a dash is d/dw.
import { type Branches, type CompiledNetwork, OUTSIDE_SLOPE } from './compiled-network.ts';
import { at, type ComplexList, substitute, wholeAt } from './linear-solve.ts';
import { gather } from './solve-network.ts';

/** To be asked straight after `solveNetwork(network, omega)`: fills the sum `OUTSIDE_SLOPE`, m³ per volt. */
export function solveSlope(network: CompiledNetwork, omega: number): void {
  const { branches, matrix, rightSlope, unknownSlopes } = network;
  slopeOfBranches(branches, omega);
  turnCoils(network, omega);
  turnBranches(network);
  substitute(matrix, rightSlope, unknownSlopes);
  readSlope(network);
}

/** Of an admittance y = 1/(R + j(w M - K/w)): y' = -j y² (M + K/w²). */
function slopeOfBranches({ mass, stiffness, admittance, slope }: Branches, omega: number): void {
  const perOmegaSquared = 1 / (omega * omega);
  for (let b = 0; b < mass.length; b++) {
    const factor = at(mass, b) + perOmegaSquared * at(stiffness, b);
    const re = at(admittance.re, b);
    const im = at(admittance.im, b);
    slope.re[b] = 2 * re * im * factor;
    slope.im[b] = (im * im - re * re) * factor;
  }
}

/** Starts the right-hand side -A' x with the coils held still: j Le + j L2 R2²/(R2 + j w L2)². */
function turnCoils(network: CompiledNetwork, omega: number): void {
  const { coil, chamberCount, coilCounts, unknowns, rightSlope } = network;
  let slopeRe = 0;
  let slopeIm = coil.leH;
  if (coil.lossy !== null) {
    const { l2H, r2Ohm } = coil.lossy;
    const l2Ohm = omega * l2H;
    const perSquared = r2Ohm / (r2Ohm * r2Ohm + l2Ohm * l2Ohm);
    const cosine = r2Ohm * perSquared; // R2/(R2 + j w L2) = cosine - j sine
    const sine = l2Ohm * perSquared;
    slopeRe = 2 * l2H * cosine * sine;
    slopeIm += l2H * (cosine * cosine - sine * sine);
  }
  for (let chamber = 0; chamber < chamberCount; chamber++) {
    rightSlope.re[chamber] = 0;
    rightSlope.im[chamber] = 0;
  }
  for (let s = 0; s < coilCounts.length; s++) {
    const string = chamberCount + s;
    const count = at(coilCounts, s);
    const re = at(unknowns.re, string);
    const im = at(unknowns.im, string);
    rightSlope.re[string] = -count * (slopeRe * re - slopeIm * im);
    rightSlope.im[string] = -count * (slopeRe * im + slopeIm * re);
  }
}

/** Adds the branches to it: each entry's slope times the unknown of its column, into its row. */
function turnBranches({ branches, unknowns, rightSlope }: CompiledNetwork): void {
  const { rows, columns, pattern, slope } = branches;
  const { parts, factors } = pattern;
  const { re: slopeRe, im: slopeIm } = slope;
  const { re: unknownRe, im: unknownIm } = unknowns;
  const { re, im } = rightSlope;
  for (let entry = 0; entry < rows.length; entry++) {
    const row = wholeAt(rows, entry);
    const column = wholeAt(columns, entry);
    const part = wholeAt(parts, entry);
    const a = at(factors, entry) * at(slopeRe, part);
    const b = at(factors, entry) * at(slopeIm, part);
    const c = at(unknownRe, column);
    const d = at(unknownIm, column);
    re[row] = at(re, row) - (a * c - b * d);
    im[row] = at(im, row) - (a * d + b * c);
  }
}

/** d/dw of the air to the listener: leaks, and of every tap y F the two halves y' F + y F'. */
function readSlope({ sums, leaks, chamberCount, taps, branches, unknownSlopes }: CompiledNetwork): void {
  gather(taps.forces, unknownSlopes, taps.forceSlope);
  const { force, forceSlope } = taps;
  const { admittance, slope } = branches;
  let re = 0;
  let im = 0;
  for (let k = 0; k < chamberCount; k++) {
    re += at(leaks, k) * at(unknownSlopes.re, k);
    im += at(leaks, k) * at(unknownSlopes.im, k);
  }
  for (let tap = 0; tap < force.re.length; tap++) {
    const outside = at(taps.outside, tap);
    const branch = wholeAt(taps.branches, tap);
    re += outside * (productRe(slope, branch, force, tap) + productRe(admittance, branch, forceSlope, tap));
    im += outside * (productIm(slope, branch, force, tap) + productIm(admittance, branch, forceSlope, tap));
  }
  sums.re[OUTSIDE_SLOPE] = re;
  sums.im[OUTSIDE_SLOPE] = im;
}

function productRe(a: ComplexList, i: number, b: ComplexList, j: number): number {
  return at(a.re, i) * at(b.re, j) - at(a.im, i) * at(b.im, j);
}

function productIm(a: ComplexList, i: number, b: ComplexList, j: number): number {
  return at(a.re, i) * at(b.im, j) + at(a.im, i) * at(b.re, j);
}
