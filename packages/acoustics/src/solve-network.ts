// A compiled network solved at one frequency, in place.
import { type Branches, type CompiledNetwork, CURRENT, OUTSIDE, type Pattern } from './compiled-network.ts';
import { at, type ComplexList, factorise, substitute, wholeAt } from './linear-solve.ts';

const STEP_ASIDE = 1 + 1e-7; // off a lossless resonance that two chambers share, where only the limit exists

/** Solves at `omega`, rad/s, above 0; what `network` holds is true until the next call. */
export function solveNetwork(network: CompiledNetwork, omega: number): void {
  if (!solveAt(network, omega) && !solveAt(network, omega * STEP_ASIDE)) {
    throw new Error('a network with resistance in its coils has an answer beside any frequency');
  }
  readSums(network);
}

function solveAt(network: CompiledNetwork, omega: number): boolean {
  const { matrix, constants, branches } = network;
  for (let cell = 0; cell < constants.length; cell++) {
    matrix.re[cell] = at(constants, cell);
    matrix.im[cell] = 0;
  }
  admit(branches, omega);
  scatter(branches.pattern, branches.admittance, matrix);
  addCoils(network, omega);
  if (!factorise(matrix)) return false;
  substitute(matrix, network.right, network.unknowns);
  return true;
}

function admit({ resistance, mass, stiffness, admittance }: Branches, omega: number): void {
  for (let b = 0; b < resistance.length; b++) {
    const re = at(resistance, b);
    const im = omega * at(mass, b) - at(stiffness, b) / omega;
    const squared = re * re + im * im;
    admittance.re[b] = re / squared;
    admittance.im[b] = -im / squared;
  }
}

/** Adds each part's value to its cells. */
export function scatter({ starts, cells, factors }: Pattern, values: ComplexList, into: ComplexList): void {
  for (let part = 0; part < values.re.length; part++) {
    const re = at(values.re, part);
    const im = at(values.im, part);
    const end = wholeAt(starts, part + 1);
    for (let entry = wholeAt(starts, part); entry < end; entry++) {
      const cell = wholeAt(cells, entry);
      const factor = at(factors, entry);
      into.re[cell] = at(into.re, cell) + factor * re;
      into.im[cell] = at(into.im, cell) + factor * im;
    }
  }
}

/** The other way round: each part's sum over its cells. */
export function gather({ starts, cells, factors }: Pattern, from: Float64Array, part: number): number {
  const end = wholeAt(starts, part + 1);
  let sum = 0;
  for (let entry = wholeAt(starts, part); entry < end; entry++)
    sum += at(factors, entry) * at(from, wholeAt(cells, entry));
  return sum;
}

/** Of coils held still: R + s Le + (s L2 parallel R2). */
function addCoils(network: CompiledNetwork, omega: number): void {
  const { matrix, coil } = network;
  if (coil.lossy === null) {
    addToCoils(network, matrix, coil.resistanceOhm, omega * coil.leH);
    return;
  }
  const l2Ohm = omega * coil.lossy.l2H;
  const { r2Ohm } = coil.lossy;
  const share = (l2Ohm * r2Ohm) / (l2Ohm * l2Ohm + r2Ohm * r2Ohm);
  addToCoils(network, matrix, coil.resistanceOhm + share * l2Ohm, omega * coil.leH + share * r2Ohm);
}

export function addToCoils(
  { coilCells, coilCounts }: CompiledNetwork,
  into: ComplexList,
  re: number,
  im: number,
): void {
  for (let s = 0; s < coilCells.length; s++) {
    const cell = wholeAt(coilCells, s);
    const count = at(coilCounts, s);
    into.re[cell] = at(into.re, cell) + count * re;
    into.im[cell] = at(into.im, cell) + count * im;
  }
}

/** The taps, and the sums over them. */
function readSums({ unknowns, sums, copies, chamberCount, leaks, taps, branches }: CompiledNetwork): void {
  let currentRe = 0;
  let currentIm = 0;
  for (let s = 0; s < copies.length; s++) {
    currentRe += at(copies, s) * at(unknowns.re, chamberCount + s);
    currentIm += at(copies, s) * at(unknowns.im, chamberCount + s);
  }
  let outsideRe = 0;
  let outsideIm = 0;
  for (let k = 0; k < chamberCount; k++) {
    outsideRe += at(leaks, k) * at(unknowns.re, k);
    outsideIm += at(leaks, k) * at(unknowns.im, k);
  }
  for (let tap = 0; tap < taps.branches.length; tap++) {
    const yRe = at(branches.admittance.re, wholeAt(taps.branches, tap));
    const yIm = at(branches.admittance.im, wholeAt(taps.branches, tap));
    const forceRe = gather(taps.forces, unknowns.re, tap);
    const forceIm = gather(taps.forces, unknowns.im, tap);
    const re = yRe * forceRe - yIm * forceIm;
    const im = yRe * forceIm + yIm * forceRe;
    taps.force.re[tap] = forceRe;
    taps.force.im[tap] = forceIm;
    taps.value.re[tap] = re;
    taps.value.im[tap] = im;
    outsideRe += at(taps.outside, tap) * re;
    outsideIm += at(taps.outside, tap) * im;
  }
  sums.re[CURRENT] = currentRe;
  sums.im[CURRENT] = currentIm;
  sums.re[OUTSIDE] = outsideRe;
  sums.im[OUTSIDE] = outsideIm;
}
