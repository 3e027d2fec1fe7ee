// Motional figures of a driver from one impedance sweep, by a least-squares fit of the whole curve:
//   Z = Re + s Le + (s L2 R2)/(s L2 + R2) + Res / (1 + j Qms (f/fs - fs/f)),   Res = Re Qms/Qes
// R. H. Small, "Direct-Radiator Loudspeaker System Analysis", J. Audio Eng. Soc. 20(5), 1972; two-inductor coil as in
// `voice-coil.ts`. Beside it the classic reading of the peak (IEC 60268-5): r0 = Zmax/Re, |Z| = Re sqrt(r0) at f1, f2.
// A closed box behind the driver is the same circuit with its own resonance, losses in its Qms.
import type { Fitted, MotorFit, PeakReading, SweepColumns } from '@gusset/contracts/measurement';
import { type Refusal, refuse } from '@gusset/units';
import { type Complex, magnitude, phaseRad } from '../complex.ts';
import { frequencyGrid } from '../frequency-grid.ts';
import { blockedImpedance, type VoiceCoil } from '../voice-coil.ts';
import { firstAtOrAbove, octavesPerRow } from './curve.ts';
import { type LeastSquares, leastSquares, type Unknown } from './least-squares.ts';
import { type Extreme, resonancePeaks } from './resonance-peaks.ts';
import { smoothed } from './smoothing.ts';

/** Fitted up to here times the resonance: above, the coil alone speaks. */
const FIT_TO_RATIO = 16;
const FIT_TO_AT_LEAST_HZ = 300;
/** A lossy coil is taken where it explains this much more of the residual and both of its parts are pinned. */
const LOSSY_GAIN = 0.8;
const LOSSY_DOUBT = 0.3;
/** A doubt wider than this in fs or Q is no measurement. */
const WIDEST_DOUBT = 0.15;
/** Parts of an octave over which the lowest impedance is looked for. */
const CALM = 6;
const METER_SLACK = 1.05; // two instruments
const CURVE_POINTS = 160;

type MotorFigures = {
  readonly fsHz: number;
  readonly qms: number;
  readonly qes: number;
  readonly coil: VoiceCoil;
};

/** Impedance at the terminals, ohm. */
function motorImpedance({ fsHz, qms, qes, coil }: MotorFigures, frequencyHz: number): Complex {
  const blocked = blockedImpedance(coil, 2 * Math.PI * frequencyHz);
  const motional = (coil.resistanceOhm * qms) / qes;
  const detuning = qms * (frequencyHz / fsHz - fsHz / frequencyHz);
  const share = motional / (1 + detuning ** 2);
  return { re: blocked.re + share, im: blocked.im - share * detuning };
}

/**
 * `reOhm`: measured with a meter at the same terminals; null = fitted too. Refused where no peak stands out or where
 * the rows don't pin the figures down; `field` names the sweep.
 */
export function fitMotor(columns: SweepColumns, reOhm: number | null, field: string): MotorFit | Refusal {
  const peak = resonancePeaks(columns)[0];
  if (peak === undefined) return refuseNoPeak(columns, field);
  const used = upTo(columns, Math.max(FIT_TO_AT_LEAST_HZ, FIT_TO_RATIO * peak.frequencyHz));
  const calm = smoothed(used.frequenciesHz, used.values, CALM);
  const leastOhm = calm.reduce((least, ohm) => Math.min(least, ohm), Number.POSITIVE_INFINITY);
  if (reOhm !== null && reOhm > leastOhm * METER_SLACK) {
    return refuse('bench.reOhm', {
      allowed: `at most ${leastOhm.toFixed(2)} Ω, the lowest impedance of the sweep`,
      got: reOhm,
      why: 'a coil’s impedance is nowhere below its direct-current resistance',
    });
  }
  const plain = fitted(used, peak, { reOhm, leastOhm, lossy: false });
  const lossy = fitted(used, peak, { reOhm, leastOhm, lossy: true });
  const takesLossy =
    lossy.meanSquare < LOSSY_GAIN * plain.meanSquare &&
    lossy.relativeError.slice(-2).every((doubt) => doubt < LOSSY_DOUBT) &&
    !lossy.onBound.slice(-2).some((bound) => bound);
  const answer = takesLossy ? lossy : plain;
  if (answer.relativeError.slice(0, 3).some((doubt) => !(doubt < WIDEST_DOUBT))) {
    return refuse(field, {
      allowed: 'a sweep with rows on both flanks of the resonance, taken at a low level',
      got: `${used.frequenciesHz.length} rows up to ${Math.round(used.frequenciesHz.at(-1) ?? 0)} Hz`,
      why: 'the rows do not pin down resonance and Q: other figures fit them as well',
    });
  }
  return toMotorFit(answer, columns, reOhm);
}

type FitSetup = { readonly reOhm: number | null; readonly leastOhm: number; readonly lossy: boolean };

function fitted(columns: SweepColumns, peak: Extreme, { reOhm, leastOhm, lossy }: FitSetup): LeastSquares {
  const re = reOhm ?? leastOhm * 0.97;
  const topHz = columns.frequenciesHz.at(-1) ?? 1;
  const topOhm = columns.values.at(-1) ?? re;
  const leStartH = Math.max(Math.sqrt(Math.max(topOhm ** 2 - re ** 2, 0)) / (2 * Math.PI * topHz), 1e-5);
  const ratio = Math.max(peak.ohm / re, 1.1);
  const qts = roughQts(columns, peak, ratio, re);
  const unknowns: Unknown[] = [
    { start: peak.frequencyHz, low: peak.frequencyHz / 1.5, high: peak.frequencyHz * 1.5 },
    { start: qts * ratio, low: 0.05, high: 500 },
    { start: (qts * ratio) / (ratio - 1), low: 0.02, high: 200 },
    { start: leStartH * (lossy ? 0.5 : 0.8), low: 1e-7, high: 0.2 },
  ];
  if (reOhm === null) unknowns.push({ start: re, low: leastOhm * 0.5, high: leastOhm * 1.02 });
  if (lossy) unknowns.push({ start: leStartH, low: 1e-6, high: 0.5 }, { start: re, low: 0.01, high: 5_000 });
  return leastSquares({
    unknowns,
    ...pointsOf(columns),
    model: (values) => modelled(columns, (hz) => motorImpedance(toFigures(values, reOhm, lossy), hz)),
  });
}

function toFigures(values: readonly number[], reOhm: number | null, lossy: boolean): MotorFigures {
  const [fsHz = 1, qms = 1, qes = 1, leH = 0] = values;
  const [l2H = 0, r2Ohm = 0] = values.slice(-2);
  return {
    fsHz,
    qms,
    qes,
    coil: {
      resistanceOhm: reOhm ?? values[4] ?? 1,
      blTm: 0, // folded into the motional branch
      leH,
      lossy: lossy ? { l2H, r2Ohm } : null,
    },
  };
}

/** From where the curve falls to Re sqrt(r0) above the peak: only a start, so one flank is enough. */
function roughQts({ frequenciesHz, values }: SweepColumns, peak: Extreme, ratio: number, re: number): number {
  const from = firstAtOrAbove(frequenciesHz, peak.frequencyHz);
  const level = re * Math.sqrt(ratio);
  const past = values.findIndex((ohm, i) => i >= from && ohm <= level);
  const upperHz = frequenciesHz[past] ?? peak.frequencyHz * 1.5;
  const lowerHz = peak.frequencyHz ** 2 / upperHz;
  return peak.frequencyHz / (upperHz - lowerHz) / Math.sqrt(ratio);
}

/** Logarithm of the magnitude and, where there is one, the phase: a percent and a hundredth of a radian weigh alike. */
export function pointsOf({ frequenciesHz, values, phaseRad: phases }: SweepColumns): {
  measured: number[];
  weights: number[];
} {
  const shares = octavesPerRow(frequenciesHz);
  const logs = values.map(Math.log);
  return phases === null
    ? { measured: logs, weights: shares }
    : { measured: [...logs, ...phases], weights: [...shares, ...shares] };
}

/** The same of a model, at the same rows. */
export function modelled(
  { frequenciesHz, phaseRad: phases }: SweepColumns,
  impedanceAt: (frequencyHz: number) => Complex,
): number[] {
  const impedance = frequenciesHz.map(impedanceAt);
  const logs = impedance.map((z) => Math.log(magnitude(z)));
  return phases === null ? logs : [...logs, ...impedance.map(phaseRad)];
}

export function upTo(columns: SweepColumns, highestHz: number): SweepColumns {
  const rows = firstAtOrAbove(columns.frequenciesHz, highestHz);
  return {
    frequenciesHz: columns.frequenciesHz.slice(0, rows),
    values: columns.values.slice(0, rows),
    phaseRad: columns.phaseRad?.slice(0, rows) ?? null,
  };
}

function toMotorFit(answer: LeastSquares, columns: SweepColumns, reOhm: number | null): MotorFit {
  const lossy = answer.values.length === (reOhm === null ? 7 : 6);
  const figure = (index: number, factor = 1): Fitted => {
    const value = (answer.values.at(index) ?? 0) * factor;
    // A coil too small to be seen in this band has no doubt worth printing: it is taken as it came out.
    const doubt = answer.relativeError.at(index) ?? 0;
    return { value, plusMinus: value * (Number.isFinite(doubt) ? doubt : 1) };
  };
  const frequenciesHz = frequencyGrid({
    lowHz: columns.frequenciesHz[0] ?? 10,
    highHz: columns.frequenciesHz.at(-1) ?? 500,
    count: CURVE_POINTS,
  });
  const figures = toFigures(answer.values, reOhm, lossy);
  return {
    fsHz: figure(0),
    qms: figure(1),
    qes: figure(2),
    reOhm: reOhm === null ? figure(4) : { value: reOhm, plusMinus: 0 },
    reHeld: reOhm !== null,
    leMh: figure(3, 1e3),
    l2Mh: lossy ? figure(-2, 1e3) : null,
    r2Ohm: lossy ? figure(-1) : null,
    residualPercent: 100 * Math.sqrt(answer.meanSquare),
    curve: { frequenciesHz, ohm: frequenciesHz.map((hz) => magnitude(motorImpedance(figures, hz))) },
  };
}

/** The classic reading with this resistance; null where the curve doesn't fall to Re sqrt(r0) on both sides. */
export function readPeak(columns: SweepColumns, reOhm: number): PeakReading | null {
  const peak = resonancePeaks(columns)[0];
  if (peak === undefined || peak.ohm <= reOhm * 1.05) return null;
  const ratio = peak.ohm / reOhm;
  const level = reOhm * Math.sqrt(ratio);
  const at = firstAtOrAbove(columns.frequenciesHz, peak.frequencyHz);
  const lowerHz = crossing(columns, level, at, -1);
  const upperHz = crossing(columns, level, at, 1);
  if (lowerHz === null || upperHz === null) return null;
  const qms = (peak.frequencyHz * Math.sqrt(ratio)) / (upperHz - lowerHz);
  return {
    fsHz: peak.frequencyHz,
    peakOhm: peak.ohm,
    lowerHz,
    upperHz,
    geometricHz: Math.sqrt(lowerHz * upperHz),
    qms,
    qes: qms / (ratio - 1),
    qts: qms / ratio,
  };
}

/** Where the curve first falls to `level` on one side of the peak, between rows. */
function crossing(
  { frequenciesHz, values }: SweepColumns,
  level: number,
  from: number,
  step: 1 | -1,
): number | null {
  for (let i = from; i + step >= 0 && i + step < values.length; i += step) {
    const [here, next] = [values[i] ?? 0, values[i + step] ?? 0];
    if (here < level || next > level) continue;
    const share = here === next ? 0 : Math.log(here / level) / Math.log(here / next);
    const [hereHz, nextHz] = [frequenciesHz[i] ?? 1, frequenciesHz[i + step] ?? 1];
    return hereHz * (nextHz / hereHz) ** share;
  }
  return null;
}

function refuseNoPeak({ frequenciesHz }: SweepColumns, field: string): Refusal {
  const [lowHz = 0, highHz = 0] = [frequenciesHz[0], frequenciesHz.at(-1)];
  return refuse(field, {
    allowed: 'a sweep that falls clearly on both sides of a resonance, such as 5 to 500 Hz',
    got: `${lowHz} to ${highHz} Hz`,
    why: `no resonance stands out between ${lowHz} and ${Math.min(highHz, 500)} Hz`,
  });
}
