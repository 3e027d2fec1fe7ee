// Filters before the amplifier, as transfer functions. They multiply the source voltage.
// Butterworth by its poles; Linkwitz-Riley of order n is Butterworth of order n/2 twice (S. Linkwitz, JAES 24, 1976);
// Bessel by the reverse Bessel polynomial, scaled so that its corner lies at -3.01 dB. A high-pass is the low-pass
// with u turned to 1/u. No polarity inversion is added.
import type { Filter } from '@gusset/contracts/acoustics';
import { type Complex, magnitude, multiply, ONE } from './complex.ts';
import { type RationalTransfer, transferAt } from './transfer.ts';

/** Gain and phase at a frequency, Hz. */
export type Transfer = (frequencyHz: number) => Complex;

export function filterTransfer(filter: Filter): Transfer {
  const sections = filterSections(filter);
  return (frequencyHz) =>
    sections.reduce((gain, section) => multiply(gain, transferAt(section, frequencyHz)), ONE);
}

/** The filter as a chain: what the sections do adds up in dB, radians and seconds. */
export function filterSections(filter: Filter): RationalTransfer[] {
  if (filter.kind === 'peaking') return [peaking(filter.centreHz, filter.gainDb, filter.q)];
  const referenceHz = filter.cornerHz;
  return lowPassDenominators(filter.alignment, filter.order).map((denominator) => {
    const [constant = 1] = denominator;
    if (filter.kind === 'lowpass') return { referenceHz, numerator: [constant], denominator };
    const numerator = denominator.map((_, power) => (power === denominator.length - 1 ? constant : 0));
    return { referenceHz, numerator, denominator: denominator.toReversed() };
  });
}

type Polynomial = readonly number[]; // constant term first

function lowPassDenominators(
  alignment: 'butterworth' | 'linkwitz-riley' | 'bessel',
  order: number,
): Polynomial[] {
  if (alignment === 'bessel') return [besselDenominator(order)];
  if (alignment === 'butterworth') return butterworthDenominators(order);
  const half = butterworthDenominators(order / 2);
  return [...half, ...half];
}

/** Qs of the second-order sections of a Butterworth filter, lowest first. */
export function butterworthQs(order: number): number[] {
  return Array.from({ length: Math.floor(order / 2) }, (_, k) => {
    const angle = order % 2 === 0 ? ((2 * k + 1) * Math.PI) / (2 * order) : ((k + 1) * Math.PI) / order;
    return 1 / (2 * Math.cos(angle));
  });
}

function butterworthDenominators(order: number): Polynomial[] {
  const pairs = butterworthQs(order).map((q) => [1, 1 / q, 1]);
  return order % 2 === 1 ? [[1, 1], ...pairs] : pairs;
}

/** Coefficients of the reverse Bessel polynomial. */
function besselCoefficients(order: number): number[] {
  return Array.from(
    { length: order + 1 },
    (_, k) => factorial(2 * order - k) / (factorial(order - k) * factorial(k) * 2 ** (order - k)),
  );
}

function factorial(n: number): number {
  return n < 2 ? 1 : n * factorial(n - 1);
}

const HALF_POWER = Math.SQRT1_2;
const BISECTIONS = 60; // halvings of [0.5, 8]: down to rounding

/** With u counted from the corner, where the level is -3.01 dB. */
function besselDenominator(order: number): Polynomial {
  const coefficients = besselCoefficients(order);
  const raw: RationalTransfer = {
    referenceHz: 1,
    numerator: coefficients.slice(0, 1),
    denominator: coefficients,
  };
  let [low, high] = [0.5, 8];
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (low + high) / 2;
    if (magnitude(transferAt(raw, middle)) > HALF_POWER) low = middle;
    else high = middle;
  }
  const corner = (low + high) / 2;
  return coefficients.map((coefficient, power) => coefficient * corner ** power);
}

/** (u² + u A/Q + 1)/(u² + u/(A Q) + 1), A = 10^(G/40): a cut is the inverse of the boost. */
function peaking(centreHz: number, gainDb: number, q: number): RationalTransfer {
  const a = 10 ** (gainDb / 40);
  return { referenceHz: centreHz, numerator: [1, a / q, 1], denominator: [1, 1 / (a * q), 1] };
}
