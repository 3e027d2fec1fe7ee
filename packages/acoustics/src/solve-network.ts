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
  const { matrix, branches } = network;
  startCells(network);
  admit(branches, omega);
  scatter(branches.pattern, branches.admittance, matrix);
  addCoils(network, omega);
  if (!factorise(matrix)) return false;
  substitute(matrix, network.right, network.unknowns);
  return true;
}

function startCells({ matrix: { re, im }, constants }: CompiledNetwork): void {
  for (let cell = 0; cell < constants.length; cell++) {
    re[cell] = at(constants, cell);
    im[cell] = 0;
  }
}

function admit({ resistance, mass, stiffness, admittance }: Branches, omega: number): void {
  const { re, im } = admittance;
  const perOmega = 1 / omega;
  for (let b = 0; b < resistance.length; b++) {
    const real = at(resistance, b);
    const imaginary = omega * at(mass, b) - perOmega * at(stiffness, b);
    const perSquared = 1 / (real * real + imaginary * imaginary);
    re[b] = real * perSquared;
    im[b] = -imaginary * perSquared;
  }
}

/** Adds every part's value to its cells. */
function scatter({ parts, cells, factors }: Pattern, values: ComplexList, into: ComplexList): void {
  const { re, im } = into;
  const { re: valuesRe, im: valuesIm } = values;
  for (let entry = 0; entry < cells.length; entry++) {
    const part = wholeAt(parts, entry);
    const cell = wholeAt(cells, entry);
    const factor = at(factors, entry);
    re[cell] = at(re, cell) + factor * at(valuesRe, part);
    im[cell] = at(im, cell) + factor * at(valuesIm, part);
  }
}

/** The other way round: every part's sum over its cells. */
export function gather({ parts, cells, factors }: Pattern, values: ComplexList, into: ComplexList): void {
  const { re, im } = into;
  const { re: valuesRe, im: valuesIm } = values;
  for (let part = 0; part < re.length; part++) {
    re[part] = 0;
    im[part] = 0;
  }
  for (let entry = 0; entry < cells.length; entry++) {
    const part = wholeAt(parts, entry);
    const cell = wholeAt(cells, entry);
    const factor = at(factors, entry);
    re[part] = at(re, part) + factor * at(valuesRe, cell);
    im[part] = at(im, part) + factor * at(valuesIm, cell);
  }
}

/** Coils held still: R + s Le + (s L2 parallel R2). */
function addCoils({ matrix, coil, coilCells, coilCounts }: CompiledNetwork, omega: number): void {
  let coilRe = coil.resistanceOhm;
  let coilIm = omega * coil.leH;
  if (coil.lossy !== null) {
    const l2Ohm = omega * coil.lossy.l2H;
    const { r2Ohm } = coil.lossy;
    const share = (l2Ohm * r2Ohm) / (l2Ohm * l2Ohm + r2Ohm * r2Ohm);
    coilRe += share * l2Ohm;
    coilIm += share * r2Ohm;
  }
  const { re, im } = matrix;
  for (let s = 0; s < coilCells.length; s++) {
    const cell = wholeAt(coilCells, s);
    const count = at(coilCounts, s);
    re[cell] = at(re, cell) + count * coilRe;
    im[cell] = at(im, cell) + count * coilIm;
  }
}

/** The taps, and the sums over them. */
function readSums(network: CompiledNetwork): void {
  const { unknowns, sums, copies, chamberCount, leaks, taps } = network;
  const { re: unknownsRe, im: unknownsIm } = unknowns;
  let currentRe = 0;
  let currentIm = 0;
  for (let s = 0; s < copies.length; s++) {
    currentRe += at(copies, s) * at(unknownsRe, chamberCount + s);
    currentIm += at(copies, s) * at(unknownsIm, chamberCount + s);
  }
  let outsideRe = 0;
  let outsideIm = 0;
  for (let k = 0; k < chamberCount; k++) {
    outsideRe += at(leaks, k) * at(unknownsRe, k);
    outsideIm += at(leaks, k) * at(unknownsIm, k);
  }
  readTaps(network);
  const { re, im } = taps.value;
  for (let tap = 0; tap < re.length; tap++) {
    outsideRe += at(taps.outside, tap) * at(re, tap);
    outsideIm += at(taps.outside, tap) * at(im, tap);
  }
  sums.re[CURRENT] = currentRe;
  sums.im[CURRENT] = currentIm;
  sums.re[OUTSIDE] = outsideRe;
  sums.im[OUTSIDE] = outsideIm;
}

/** Each tap is its branch's admittance times its force. */
function readTaps({ taps, branches, unknowns }: CompiledNetwork): void {
  gather(taps.forces, unknowns, taps.force);
  const { re, im } = taps.value;
  const { re: forceRe, im: forceIm } = taps.force;
  const { re: admitRe, im: admitIm } = branches.admittance;
  for (let tap = 0; tap < re.length; tap++) {
    const branch = wholeAt(taps.branches, tap);
    const a = at(admitRe, branch);
    const b = at(admitIm, branch);
    const c = at(forceRe, tap);
    const d = at(forceIm, tap);
    re[tap] = a * c - b * d;
    im[tap] = a * d + b * c;
  }
}
