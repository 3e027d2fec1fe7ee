// Filters before the amplifier, as transfer functions. They multiply the source voltage.
// Butterworth by its poles; Linkwitz-Riley of order n is Butterworth of order n/2 twice (S. Linkwitz, JAES 24, 1976);
// Bessel by the reverse Bessel polynomial, scaled so that its corner lies at -3.01 dB. A high-pass is the low-pass
// with u = s/w0 turned to 1/u. No polarity inversion is added.
import type { Filter } from '@gusset/contracts/acoustics';
import {
  add,
  type Complex,
  complex,
  divide,
  magnitude,
  multiply,
  ONE,
  reciprocal,
  scale,
} from './complex.ts';

/** Gain and phase at a frequency, Hz. */
export type Transfer = (frequencyHz: number) => Complex;

export function filterTransfer(filter: Filter): Transfer {
  if (filter.kind === 'peaking') return peaking(filter.centreHz, filter.gainDb, filter.q);
  const lowPass = lowPassPrototype(filter.alignment, filter.order);
  const { cornerHz } = filter;
  return filter.kind === 'lowpass'
    ? (frequencyHz) => lowPass(complex(0, frequencyHz / cornerHz))
    : (frequencyHz) => lowPass(complex(0, -cornerHz / frequencyHz));
}

type Prototype = (u: Complex) => Complex;

function lowPassPrototype(alignment: 'butterworth' | 'linkwitz-riley' | 'bessel', order: number): Prototype {
  if (alignment === 'bessel') return bessel(order);
  if (alignment === 'butterworth') return butterworth(order);
  const half = butterworth(order / 2);
  return (u) => {
    const once = half(u);
    return multiply(once, once);
  };
}

/** Qs of the second-order sections of a Butterworth filter, lowest first. */
export function butterworthQs(order: number): number[] {
  return Array.from({ length: Math.floor(order / 2) }, (_, k) => {
    const angle = order % 2 === 0 ? ((2 * k + 1) * Math.PI) / (2 * order) : ((k + 1) * Math.PI) / order;
    return 1 / (2 * Math.cos(angle));
  });
}

function butterworth(order: number): Prototype {
  const qs = butterworthQs(order);
  return (u) => {
    const squared = multiply(u, u);
    const first = order % 2 === 1 ? reciprocal(add(u, ONE)) : ONE;
    return qs.reduce((gain, q) => divide(gain, add(add(squared, scale(u, 1 / q)), ONE)), first);
  };
}

/** Coefficients of the reverse Bessel polynomial, constant term first. */
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

function bessel(order: number): Prototype {
  const coefficients = besselCoefficients(order);
  const constant = coefficients[0] ?? 1;
  const raw: Prototype = (u) =>
    divide(
      complex(constant),
      coefficients.reduceRight((sum, coefficient) => add(multiply(sum, u), complex(coefficient)), complex(0)),
    );
  let [low, high] = [0.5, 8];
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (low + high) / 2;
    if (magnitude(raw(complex(0, middle))) > HALF_POWER) low = middle;
    else high = middle;
  }
  const corner = (low + high) / 2;
  return (u) => raw(scale(u, corner));
}

/** (u² + u A/Q + 1)/(u² + u/(A Q) + 1), A = 10^(G/40): a cut is the inverse of the boost. */
function peaking(centreHz: number, gainDb: number, q: number): Transfer {
  const a = 10 ** (gainDb / 40);
  return (frequencyHz) => {
    const x = frequencyHz / centreHz;
    return divide(complex(1 - x ** 2, (x * a) / q), complex(1 - x ** 2, x / (a * q)));
  };
}
