// Vented box with leak as a fourth-order high-pass, its -3 dB corner, and boxes for known families of response.
// R. H. Small, "Vented-Box Loudspeaker Systems", Parts I-IV, J. Audio Eng. Soc. 21(5-8), 1973; A. N. Thiele,
// "Loudspeakers in Vented Boxes", J. Audio Eng. Soc. 19(5-6), 1971. H = s⁴ over
// s⁴ + a1 w0 s³ + a2 w0² s² + a3 w0³ s + w0⁴, w0 = ws sqrt(h). Inductance, absorption and port loss are left out
// here; the response has them. Names of families vary between authors: the definitions below decide.
import {
  type BoxSettingInput,
  type DriverParameters,
  firstRefusal,
  type VentedFamily,
  ventedTargetSchema,
} from '@gusset/contracts/acoustics';
import { type Refusal, refuse } from '@gusset/units';
import { airAt, REFERENCE_AIR } from './air.ts';
import { effectiveDriverCount } from './build-network.ts';
import { qtsInCircuit } from './circuit-q.ts';
import { bisect, realRoots } from './real-roots.ts';

/** Coefficients of the normalised fourth-order response. */
export type FourthOrder = { readonly a1: number; readonly a2: number; readonly a3: number };

/** Driver Q on its source, compliance ratio, tuning ratio fb/fs; `leak` = 1/QL, 0 = tight. */
export type VentedRatios = {
  readonly qts: number;
  readonly alpha: number;
  readonly h: number;
  readonly leak: number;
};

export function fourthOrderOf({ qts, alpha, h, leak }: VentedRatios): FourthOrder {
  const root = Math.sqrt(h);
  return {
    a1: 1 / (root * qts) + root * leak,
    a2: leak / qts + (alpha + 1 + h ** 2) / h,
    a3: root / qts + leak / root,
  };
}

/** -3 dB from the flat part over the driver's resonance: the highest frequency where the response stands there. */
export function ventedF3Ratio(ratios: VentedRatios): number {
  const { a1, a2, a3 } = fourthOrderOf(ratios);
  const roots = realRoots([-1, 2 * a2 - a3 ** 2, 2 * a1 * a3 - a2 ** 2 - 2, 2 * a2 - a1 ** 2, 1]);
  return Math.sqrt(ratios.h * (roots.at(-1) ?? 1));
}

/** The box that gives a driver of its own Q the response: null where none does. */
export function ratiosFor({ a1, a2, a3 }: FourthOrder, leak: number): VentedRatios | null {
  const tunings =
    leak === 0 ? [a3 / a1] : realRoots([-leak, a3, 0, -a1, leak]).map((r) => (r > 0 ? r ** 2 : 0));
  const boxes = tunings
    .filter((h) => h > 0)
    .map((h) => {
      const overQts = Math.sqrt(h) * (a1 - Math.sqrt(h) * leak);
      return { qts: 1 / overQts, alpha: h * (a2 - leak * overQts) - 1 - h ** 2, h, leak };
    })
    .filter(({ qts, alpha }) => qts > 0 && alpha > 0)
    .sort((a, b) => Math.abs(Math.log(a.h)) - Math.abs(Math.log(b.h)));
  return boxes[0] ?? null;
}

const FLATTEST_A1 = Math.sqrt(4 + 2 * Math.SQRT2);

/** Poles of the flattest response with their real parts times k: rippled below k = 1, softer above. */
export function chebyshevOrder(k: number): FourthOrder {
  const d = (k ** 4 + 6 * k ** 2 + 1) / 8;
  const a3 = (FLATTEST_A1 * k) / d ** 0.25;
  return {
    a1: (a3 * (1 - (1 - k ** 2) / (2 * Math.SQRT2))) / Math.sqrt(d),
    a2: (1 + k ** 2 * (1 + Math.SQRT2)) / Math.sqrt(d),
    a3,
  };
}

/** Third-order flattest with the fourth pole as far off as the driver's Q asks. */
export function quasiThirdOrder(a1: number): FourthOrder {
  const a2 = a1 ** 2 / 2;
  return { a1, a2, a3: (a2 ** 2 + 2) / (2 * a1) };
}

/** Each family by one parameter: first the end at the highest driver Q, then the end at the lowest. */
const FAMILIES = {
  chebyshev: { order: chebyshevOrder, from: 0.2, to: 1 },
  'sub-chebyshev': { order: chebyshevOrder, from: 1, to: 4 },
  'quasi-third-order': { order: quasiThirdOrder, from: FLATTEST_A1, to: 12 },
} as const;

/** The member of a family that a driver of `qts` fits; null where the family has none. */
export function fitFamily(family: VentedFamily, qts: number, leak: number): VentedRatios | null {
  if (family === 'twin') {
    const a1 = 1 / qts + leak;
    const alpha = a1 ** 2 / 4 - leak / qts;
    return alpha > 0 ? { qts, alpha, h: 1, leak } : null;
  }
  const { order, from, to } = FAMILIES[family];
  const needs = (parameter: number) => ratiosFor(order(parameter), leak)?.qts ?? Number.POSITIVE_INFINITY;
  if (needs(to) > qts || needs(from) < qts) return null;
  const fit = ratiosFor(order(bisect((parameter) => needs(parameter) > qts, from, to)), leak);
  return fit === null ? null : { ...fit, qts };
}

export type VentedAlignment = {
  readonly netLitres: number;
  readonly tuningHz: number;
  readonly f3Hz: number;
  readonly alpha: number;
};

/** Volume and tuning for drivers, by family; refused where the family has no member for their Q. */
export function ventedAlignment(
  driver: DriverParameters,
  family: VentedFamily,
  setting: BoxSettingInput = {},
): VentedAlignment | Refusal {
  const question = { ...setting, driver, family };
  const parsed = ventedTargetSchema.safeParse(question);
  if (!parsed.success) return firstRefusal(parsed.error, question);
  const { array, fillFactor, ql, seriesOhm, air } = parsed.data;
  const qts = qtsInCircuit(driver, array, seriesOhm);
  const fit = fitFamily(family, qts, ql === null ? 0 : 1 / ql);
  if (fit === null) {
    return refuse('family', {
      allowed: 'a family with a member for this Q',
      got: family,
      why: `a driver of Q ${qts.toFixed(3)} on its source has no box in this family`,
    });
  }
  const stiffer = airAt(air).stiffnessPa / REFERENCE_AIR.stiffnessPa;
  return {
    netLitres: (effectiveDriverCount(array) * driver.vasLitres * stiffer) / fit.alpha / fillFactor,
    tuningHz: driver.fsHz * fit.h,
    f3Hz: driver.fsHz * ventedF3Ratio(fit),
    alpha: fit.alpha,
  };
}
