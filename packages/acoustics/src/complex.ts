// Complex numbers for the circuit: phasors e^{jwt}, voltages rms.

export type Complex = { readonly re: number; readonly im: number };

export const ZERO: Complex = { re: 0, im: 0 };
export const ONE: Complex = { re: 1, im: 0 };

export function complex(re: number, im = 0): Complex {
  return { re, im };
}

export function add(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

export function subtract(a: Complex, b: Complex): Complex {
  return { re: a.re - b.re, im: a.im - b.im };
}

export function multiply(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

export function scale(a: Complex, factor: number): Complex {
  return { re: a.re * factor, im: a.im * factor };
}

/** a / b; scaled, so that squares of very large or small parts don't overflow. */
export function divide(a: Complex, b: Complex): Complex {
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const ratio = b.im / b.re;
    const denominator = b.re + b.im * ratio;
    return { re: (a.re + a.im * ratio) / denominator, im: (a.im - a.re * ratio) / denominator };
  }
  const ratio = b.re / b.im;
  const denominator = b.re * ratio + b.im;
  return { re: (a.re * ratio + a.im) / denominator, im: (a.im * ratio - a.re) / denominator };
}

export function reciprocal(a: Complex): Complex {
  return divide(ONE, a);
}

/** By the plain square root: circuit values are far from overflow, and it is many times faster than `hypot`. */
export function magnitude(a: Complex): number {
  return Math.sqrt(a.re * a.re + a.im * a.im);
}

/** Argument, radians, -π to π. */
export function phaseRad(a: Complex): number {
  return Math.atan2(a.im, a.re);
}
