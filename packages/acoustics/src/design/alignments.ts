// The closed and vented boxes that theory knows for a driver, beside each other: what each does and what it does best.
// Closed: R. H. Small, "Closed-Box Loudspeaker Systems", JAES 20-21, 1972-73. Vented: A. N. Thiele, "Loudspeakers in
// Vented Boxes", JAES 19, 1971; R. H. Small, "Vented-Box Loudspeaker Systems", JAES 21, 1973. Inductance is left out.
// A closed box is judged without its losses, as its families are defined; a vented one with its leak.
import {
  type AbsentAlignment,
  type AlignmentDesign,
  type Alignments,
  type AlignmentsInput,
  alignedBoxSchema,
  alignmentsSchema,
  type ClosedAlignment,
  type ClosedAlignmentFamily,
  firstRefusal,
  type VentedAlignmentDesign,
  type VentedAlignmentFamily,
} from '@gusset/contracts/acoustics';
import type { Refusal } from '@gusset/units';
import { airAt, REFERENCE_AIR } from '../air.ts';
import { effectiveDriverCount } from '../build-network.ts';
import { qtsInCircuit } from '../circuit-q.ts';
import { closedFigures } from '../closed-box.ts';
import {
  chebyshevOrder,
  type FourthOrder,
  fitFamily,
  fourthOrderOf,
  ratiosFor,
  type VentedRatios,
  ventedF3Ratio,
} from '../vented-box.ts';
import { withStrengths } from './alignment-strengths.ts';
import {
  type HighPass,
  highPassDb,
  highPassDelayMs,
  highPassPeak,
  secondOrderHighPass,
  settleMs,
} from './high-pass.ts';

/** Drivers spread by more than this: one box of a family that is a single point serves all whose Q stands so near. */
const SAME_Q = 0.02;
/** Nearer than this in volume and tuning, two designs are one box. */
const SAME_BOX = 0.02;
const FLATNESS_OCTAVES = 2;
const FLATNESS_POINTS = 33;

type Found = { readonly designs: AlignmentDesign[]; readonly absent: AbsentAlignment[] };

/** Everything about drivers and setting that sizes a box. */
type Sizing = {
  readonly fsHz: number;
  readonly qts: number;
  /** 1/QL */
  readonly leak: number;
  /** Net litres at alpha 1. */
  readonly litresTimesAlpha: number;
};

/**
 * Closed and vented designs for drivers on their source, each with its figures and what it does best of its kind.
 * What theory knows but this driver can't have is listed in `absent` with the reason.
 */
export function suggestAlignments(input: AlignmentsInput): Alignments | Refusal {
  const parsed = alignmentsSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const { driver, array, fillFactor, ql, seriesOhm, air, closedRisesDb } = parsed.data;
  const qts = qtsInCircuit(driver, array, seriesOhm);
  const stiffer = airAt(air).stiffnessPa / REFERENCE_AIR.stiffnessPa;
  const sizing: Sizing = {
    fsHz: driver.fsHz,
    qts,
    leak: ql === null ? 0 : 1 / ql,
    litresTimesAlpha: (effectiveDriverCount(array) * driver.vasLitres * stiffer) / fillFactor,
  };
  const closed = closedDesigns(sizing, closedRisesDb);
  const vented = ventedDesigns(sizing);
  return {
    qtsInCircuit: qts,
    designs: [...withStrengths(smallFirst(closed.designs)), ...withStrengths(smallFirst(vented.designs))],
    absent: [...closed.absent, ...vented.absent],
  };
}

function smallFirst(designs: readonly AlignmentDesign[]): AlignmentDesign[] {
  return [...designs].sort((a, b) => a.netLitres - b.netLitres || a.textbook.localeCompare(b.textbook, 'en'));
}

/** Q of a closed box that rises by `riseDb`: of Q^4 - g^2 Q^2 + g^2/4 = 0 the root above 0.7071. */
export function qForRise(riseDb: number): number {
  const squared = 10 ** (riseDb / 10);
  return Math.sqrt((squared + Math.sqrt(squared * (squared - 1))) / 2);
}

type ClosedTarget = {
  readonly family: ClosedAlignmentFamily;
  readonly textbook: string;
  readonly qtc: number;
};

const FLAT_CLOSED: readonly ClosedTarget[] = [
  { family: 'critically-damped', textbook: 'critically damped, Q 0.5', qtc: 0.5 },
  { family: 'bessel', textbook: 'Bessel, second order', qtc: 1 / Math.sqrt(3) },
  { family: 'butterworth', textbook: 'B2', qtc: Math.SQRT1_2 },
];

function closedDesigns(sizing: Sizing, risesDb: readonly number[]): Found {
  const rippled = [...new Set(risesDb)].map(
    (db): ClosedTarget => ({ family: 'chebyshev', textbook: `C2, ${db} dB`, qtc: qForRise(db) }),
  );
  const found: Found = { designs: [], absent: [] };
  for (const target of [...FLAT_CLOSED, ...rippled]) {
    const { textbook, qtc } = target;
    const alpha = (qtc / sizing.qts) ** 2 - 1;
    const netLitres = sizing.litresTimesAlpha / alpha;
    if (!(alpha > 0)) {
      const because = { code: 'driver-q-too-high', qts: sizing.qts, belowQ: qtc } as const;
      found.absent.push({ kind: 'closed', textbook, because });
    } else if (!canBeBuilt(netLitres, null)) {
      found.absent.push(outOfRange('closed', textbook, netLitres, null));
    } else {
      found.designs.push(closedDesign(sizing, target, { alpha, netLitres }));
    }
  }
  return found;
}

function closedDesign(
  { fsHz, qts }: Sizing,
  target: ClosedTarget,
  { alpha, netLitres }: { readonly alpha: number; readonly netLitres: number },
): ClosedAlignment {
  const { fcHz, qtc, f3Hz, peakDb, peakHz } = closedFigures(alpha, fsHz, qts, { ql: null, qa: null });
  const response = secondOrderHighPass(fcHz, qtc);
  const box = { netLitres, alpha, f3Hz, peakDb, peakHz };
  return { ...target, kind: 'closed', qtc, ...box, ...timeAndShape(response, f3Hz), strengths: [] };
}

/** Bessel's fourth-order polynomial s^4 + 10 s^3 + 45 s^2 + 105 s + 105, turned to a high-pass. */
const BESSEL_ORDER: FourthOrder = {
  a1: 105 ** 0.25,
  a2: 45 / Math.sqrt(105),
  a3: 10 / 105 ** 0.25,
};

const VENTED: readonly {
  readonly family: VentedAlignmentFamily;
  readonly textbook: string;
  /** Null = a family with one member for each Q of its range. */
  readonly point: FourthOrder | null;
}[] = [
  { family: 'butterworth', textbook: 'B4', point: chebyshevOrder(1) },
  { family: 'bessel', textbook: 'BL4', point: BESSEL_ORDER },
  { family: 'chebyshev', textbook: 'C4', point: null },
  { family: 'sub-chebyshev', textbook: 'SC4', point: null },
  { family: 'quasi-third-order', textbook: 'QB3', point: null },
  { family: 'twin', textbook: 'SBB4', point: null },
];

function ventedDesigns(sizing: Sizing): Found {
  const found: Found = { designs: [], absent: [] };
  for (const { family, textbook, point } of VENTED) {
    const fit = point === null ? fitOf(family, sizing) : pointFit(point, sizing);
    if ('code' in fit) {
      found.absent.push({ kind: 'vented', textbook, because: fit });
      continue;
    }
    const design = ventedDesign(sizing, { family, textbook }, fit);
    const twin = found.designs.find((other) => isSameBox(other, design));
    if (!canBeBuilt(design.netLitres, design.tuningHz)) {
      found.absent.push(outOfRange('vented', textbook, design.netLitres, design.tuningHz));
    } else if (twin !== undefined) {
      found.absent.push({ kind: 'vented', textbook, because: { code: 'same-box', as: twin.textbook } });
    } else {
      found.designs.push(design);
    }
  }
  return found;
}

function fitOf(
  family: VentedAlignmentFamily,
  { qts, leak }: Sizing,
): VentedRatios | AbsentAlignment['because'] {
  const none = { code: 'no-member-for-q', qts } as const;
  if (family === 'butterworth' || family === 'bessel') return none;
  return fitFamily(family, qts, leak) ?? none;
}

/** The one box of a family, for a driver whose Q stands near enough; the figures are then that driver's own in it. */
function pointFit(order: FourthOrder, { qts, leak }: Sizing): VentedRatios | AbsentAlignment['because'] {
  const fit = ratiosFor(order, leak);
  if (fit === null) return { code: 'no-member-for-q', qts };
  if (Math.abs(qts / fit.qts - 1) > SAME_Q) return { code: 'needs-another-q', qts, needsQ: fit.qts };
  return { ...fit, qts };
}

function ventedDesign(
  { fsHz, litresTimesAlpha }: Sizing,
  names: { readonly family: VentedAlignmentFamily; readonly textbook: string },
  ratios: VentedRatios,
): VentedAlignmentDesign {
  const { a1, a2, a3 } = fourthOrderOf(ratios);
  const response: HighPass = { naturalHz: fsHz * Math.sqrt(ratios.h), coefficients: [1, a3, a2, a1, 1] };
  const f3Hz = fsHz * ventedF3Ratio(ratios);
  const peak = highPassPeak(response);
  return {
    ...names,
    kind: 'vented',
    netLitres: litresTimesAlpha / ratios.alpha,
    tuningHz: fsHz * ratios.h,
    alpha: ratios.alpha,
    f3Hz,
    peakDb: peak.db,
    peakHz: peak.frequencyHz,
    ...timeAndShape(response, f3Hz),
    strengths: [],
  };
}

function timeAndShape(response: HighPass, f3Hz: number) {
  return {
    delayAtF3Ms: highPassDelayMs(response, f3Hz),
    settleMs: settleMs(response),
    unevennessDb: unevennessDb(response, f3Hz),
    octaveDropDb: highPassDb(response, f3Hz) - highPassDb(response, f3Hz / 2),
  };
}

function unevennessDb(response: HighPass, f3Hz: number): number {
  let squares = 0;
  for (let i = 0; i < FLATNESS_POINTS; i++) {
    const frequencyHz = f3Hz * 2 ** ((FLATNESS_OCTAVES * i) / (FLATNESS_POINTS - 1));
    squares += highPassDb(response, frequencyHz) ** 2;
  }
  return Math.sqrt(squares / FLATNESS_POINTS);
}

function canBeBuilt(netLitres: number, tuningHz: number | null): boolean {
  return alignedBoxSchema.safeParse({ netLitres, tuningHz }).success;
}

function isSameBox(a: AlignmentDesign, b: VentedAlignmentDesign): boolean {
  if (a.kind !== 'vented') return false;
  const near = (one: number, other: number) => Math.abs(one / other - 1) < SAME_BOX;
  return near(a.netLitres, b.netLitres) && near(a.tuningHz, b.tuningHz);
}

function outOfRange(
  kind: 'closed' | 'vented',
  textbook: string,
  netLitres: number,
  tuningHz: number | null,
): AbsentAlignment {
  return { kind, textbook, because: { code: 'out-of-range', netLitres, tuningHz } };
}
