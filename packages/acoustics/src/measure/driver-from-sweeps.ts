// A driver's figures from its impedance: in free air, and once more with mass on the cone or on a box of known air.
// Added mass: Mms = m/((fs/fs')² - 1). Known box: Vas = V (fct Qect/(fs Qes) - 1), in which the change of the air load
// cancels. R. H. Small, 1972; IEC 60268-5. Small signal, at the reference air, suspension as warm as it was.
import type {
  Agreement,
  DriverBench,
  DriverFitCaution,
  DriverFromSweeps,
  Fitted,
  MotorFit,
  PeakReading,
  SweepColumns,
} from '@gusset/contracts/measurement';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { REFERENCE_AIR } from '../air.ts';
import { totalQ } from '../driver-elements.ts';
import { fitMotor, readPeak } from './motor-fit.ts';

/** What changed for the second sweep. */
export type SecondSweep =
  | { readonly by: 'added-mass'; readonly columns: SweepColumns; readonly addedGrams: number }
  | { readonly by: 'known-box'; readonly columns: SweepColumns; readonly netLitres: number };

const DIFFER_PERCENT = 5; // between the two readings: more than rows and rounding explain
const POOR_FIT_PERCENT = 3; // a meter reads to one
/** Resonance of the second sweep over the first: nearer than this and Vas hangs on a hair. */
const LEAST_SHIFT = { 'added-mass': 0.9, 'known-box': 1.15 } as const;

/**
 * Everything the sweeps say. `bench.reOhm` is at the terminals, coils as wired; the figures that come back are of one
 * coil, with Qes for all coils driven, as the catalogue keeps them. Refused with `freeAir`, `second` or `bench.…`.
 */
export function driverFromSweeps(
  freeAir: SweepColumns,
  second: SecondSweep | null,
  bench: DriverBench,
): DriverFromSweeps | Refusal {
  if (bench.coils === 1 && bench.wiring !== 'single') {
    return refuse('bench.wiring', { allowed: 'single', got: bench.wiring, why: 'the driver has one coil' });
  }
  const fit = fitMotor(freeAir, bench.reOhm, 'freeAir');
  if (isRefusal(fit)) return fit;
  const moving = second === null ? null : movingFigures(fit, second, bench);
  if (isRefusal(moving)) return moving;
  const peak = readPeak(freeAir, fit.reOhm.value);
  const agreement = peak === null ? [] : agreementOf(fit, peak);
  return {
    fit,
    peak,
    agreement,
    moving,
    figures: catalogueFigures(fit, bench, moving?.vasLitres ?? null),
    cautions: cautionsOf(fit, agreement, moving),
  };
}

function agreementOf(fit: MotorFit, peak: PeakReading): Agreement[] {
  const byFit = {
    fsHz: fit.fsHz.value,
    qms: fit.qms.value,
    qes: fit.qes.value,
    qts: totalQ(fit.qms.value, fit.qes.value),
  };
  return (['fsHz', 'qms', 'qes', 'qts'] as const).map((field) => ({
    field,
    byFit: byFit[field],
    byPeak: peak[field],
    percent: (peak[field] / byFit[field] - 1) * 100,
  }));
}

type Moving = NonNullable<DriverFromSweeps['moving']>;

function movingFigures(fit: MotorFit, second: SecondSweep, { reOhm, sdCm2 }: DriverBench): Moving | Refusal {
  const again = fitMotor(second.columns, reOhm ?? fit.reOhm.value, 'second');
  if (isRefusal(again)) return again;
  const ratio = again.fsHz.value / fit.fsHz.value;
  const shifted = second.by === 'added-mass' ? ratio < 0.99 : ratio > 1.01;
  if (!shifted) {
    return refuse('second', {
      allowed:
        second.by === 'added-mass'
          ? 'a resonance below the free-air one'
          : 'a resonance above the free-air one',
      got: `${again.fsHz.value.toFixed(1)} Hz beside ${fit.fsHz.value.toFixed(1)} Hz in free air`,
      why:
        second.by === 'added-mass'
          ? 'mass on the cone lowers the resonance; this sweep does not show it'
          : 'a closed box raises the resonance; this sweep does not show it',
    });
  }
  const common = { by: second.by, resonanceHz: again.fsHz } as const;
  return second.by === 'added-mass'
    ? { ...common, ...byMass(fit, again, second.addedGrams, sdCm2) }
    : { ...common, ...byBox(fit, again, second.netLitres, sdCm2) };
}

function byMass(fit: MotorFit, again: MotorFit, addedGrams: number, sdCm2: number | null) {
  const squared = (fit.fsHz.value / again.fsHz.value) ** 2;
  const grams = addedGrams / (squared - 1);
  const doubt = (2 * squared * Math.hypot(share(fit.fsHz), share(again.fsHz))) / (squared - 1);
  const mmsGrams = { value: grams, plusMinus: grams * doubt };
  return { mmsGrams, vasLitres: sdCm2 === null ? null : otherOf(mmsGrams, fit.fsHz, sdCm2, doubt) };
}

function byBox(fit: MotorFit, again: MotorFit, netLitres: number, sdCm2: number | null) {
  const product = (again.fsHz.value * again.qes.value) / (fit.fsHz.value * fit.qes.value);
  const litres = netLitres * (product - 1);
  const doubt =
    (product * Math.hypot(share(fit.fsHz), share(fit.qes), share(again.fsHz), share(again.qes))) /
    (product - 1);
  const vasLitres = { value: litres, plusMinus: litres * doubt };
  return { vasLitres, mmsGrams: sdCm2 === null ? null : otherOf(vasLitres, fit.fsHz, sdCm2, doubt) };
}

/** Vas in litres from Mms in grams, or the other way: both are rho c² Sd²/ws² over the other. */
function otherOf(known: Fitted, fsHz: Fitted, sdCm2: number, doubt: number): Fitted {
  const product = (REFERENCE_AIR.stiffnessPa * (sdCm2 * 1e-4) ** 2 * 1e6) / (2 * Math.PI * fsHz.value) ** 2;
  const value = product / known.value;
  return { value, plusMinus: value * Math.hypot(doubt, 2 * share(fsHz)) };
}

function share({ value, plusMinus }: Fitted): number {
  return plusMinus / value;
}

function catalogueFigures(fit: MotorFit, { coils, wiring, sdCm2 }: DriverBench, vasLitres: Fitted | null) {
  const resistance = wiring === 'series' ? 1 / coils : wiring === 'parallel' ? coils : 1;
  const inductance = wiring === 'series' ? 1 / coils ** 2 : 1;
  return {
    fsHz: figure(fit.fsHz.value),
    qms: figure(fit.qms.value),
    qes: figure(fit.qes.value / (wiring === 'single' ? coils : 1)),
    reOhm: figure(fit.reOhm.value * resistance),
    vasLitres: vasLitres === null ? null : figure(vasLitres.value),
    sdCm2,
    leMh: figure(fit.leMh.value * inductance),
    l2Mh: fit.l2Mh === null ? null : figure(fit.l2Mh.value * inductance),
    r2Ohm: fit.r2Ohm === null ? null : figure(fit.r2Ohm.value * inductance),
  };
}

/** Four figures: more than any of them is known to. */
function figure(value: number): number {
  return Number(value.toPrecision(4));
}

function cautionsOf(
  fit: MotorFit,
  agreement: readonly Agreement[],
  moving: Moving | null,
): DriverFitCaution[] {
  const differ = agreement.filter(({ percent }) => Math.abs(percent) > DIFFER_PERCENT);
  const ratio = moving === null ? null : moving.resonanceHz.value / fit.fsHz.value;
  const little =
    moving !== null &&
    ratio !== null &&
    (moving.by === 'added-mass' ? ratio > LEAST_SHIFT['added-mass'] : ratio < LEAST_SHIFT['known-box']);
  return [
    ...differ.map(({ field, percent }) => ({ code: 'readings-differ' as const, field, percent })),
    ...(little && ratio !== null ? [{ code: 'little-shift' as const, ratio }] : []),
    ...(fit.residualPercent > POOR_FIT_PERCENT
      ? [{ code: 'poor-fit' as const, residualPercent: fit.residualPercent }]
      : []),
  ];
}
