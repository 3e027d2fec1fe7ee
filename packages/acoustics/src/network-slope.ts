// How the air that a network moves out changes with frequency, from the factors of its last solution: no second
// model and no small difference of large numbers. With A x = b and b constant, A x' = -A' x; a dash is d/dw.
import { type Branches, type CompiledNetwork, OUTSIDE_SLOPE } from './compiled-network.ts';
import { at, type ComplexList, substitute, wholeAt } from './linear-solve.ts';
import { addToCoils, gather, scatter } from './solve-network.ts';

/** To be asked straight after `solveNetwork(network, omega)`: fills the sum `OUTSIDE_SLOPE`, m³ per volt. */
export function solveSlope(network: CompiledNetwork, omega: number): void {
  const { branches, matrixSlope, matrix, rightSlope, unknownSlopes } = network;
  for (let cell = 0; cell < matrixSlope.re.length; cell++) {
    matrixSlope.re[cell] = 0;
    matrixSlope.im[cell] = 0;
  }
  slopeOfBranches(branches, omega);
  scatter(branches.pattern, branches.slope, matrixSlope);
  addCoilSlope(network, omega);
  multiplyNegative(network);
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

/** Of a coil held still: j Le + j L2 R2²/(R2 + j w L2)². */
function addCoilSlope(network: CompiledNetwork, omega: number): void {
  const { coil, matrixSlope } = network;
  if (coil.lossy === null) {
    addToCoils(network, matrixSlope, 0, coil.leH);
    return;
  }
  const { l2H, r2Ohm } = coil.lossy;
  const l2Ohm = omega * l2H;
  const squared = r2Ohm * r2Ohm + l2Ohm * l2Ohm;
  const [cosine, sine] = [(r2Ohm * r2Ohm) / squared, (r2Ohm * l2Ohm) / squared]; // R2/(R2 + j w L2) = cosine - j sine
  const re = 2 * l2H * cosine * sine;
  const im = l2H * (cosine * cosine - sine * sine);
  addToCoils(network, matrixSlope, re, coil.leH + im);
}

/** -A' x as the right-hand side. */
function multiplyNegative({ matrix, matrixSlope, unknowns, rightSlope }: CompiledNetwork): void {
  for (let row = 0; row < matrix.size; row++) {
    let re = 0;
    let im = 0;
    for (let column = 0; column < matrix.size; column++) {
      const cell = row * matrix.size + column;
      re -= productRe(matrixSlope, cell, unknowns, column);
      im -= productIm(matrixSlope, cell, unknowns, column);
    }
    rightSlope.re[row] = re;
    rightSlope.im[row] = im;
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
