// A driver's measured figures beside those of its sheet, row by row.
import type { DriverDataSheet } from '@gusset/contracts/acoustics';
import type { DriverFromSweeps, Fitted } from '@gusset/contracts/measurement';
import { fittedWords, percentWords } from './measure-words.ts';

export type FigureRow = {
  readonly key: string;
  readonly label: string;
  /** Empty = not stated. */
  readonly stated: string;
  /** Empty = not measured. */
  readonly measured: string;
  /** Measured over stated; empty where there is nothing to compare. */
  readonly percent: string;
  /** Further apart than samples and drift explain. */
  readonly isFar: boolean;
};

/** Samples differ and suspensions drift; further than this and the sheet is of another driver. */
const FAR_PERCENT = 20;

type Spec = {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly stated: number | null;
  readonly measured: Fitted | null;
  /** The same name for another thing: nothing to compare. */
  readonly isOtherKind?: boolean;
};

/** `answer.figures` are of one coil; the doubts of the fit are carried over in proportion. */
export function figureRows(stated: DriverDataSheet, answer: DriverFromSweeps): readonly FigureRow[] {
  const { fit, figures, moving } = answer;
  const scaled = (value: number | null, { value: of, plusMinus }: Fitted): Fitted | null =>
    value === null ? null : { value, plusMinus: of === 0 ? 0 : (plusMinus / of) * value };
  const specs: readonly Spec[] = [
    { key: 'fsHz', label: 'Fs', unit: 'Hz', stated: stated.fsHz, measured: scaled(figures.fsHz, fit.fsHz) },
    { key: 'qms', label: 'Qms', unit: '', stated: stated.qms, measured: scaled(figures.qms, fit.qms) },
    { key: 'qes', label: 'Qes', unit: '', stated: stated.qes, measured: scaled(figures.qes, fit.qes) },
    { key: 'vas', label: 'Vas', unit: 'L', stated: stated.vasLitres, measured: moving?.vasLitres ?? null },
    { key: 'mms', label: 'Mms', unit: 'g', stated: stated.mmsGrams, measured: moving?.mmsGrams ?? null },
    { key: 're', label: 'Re', unit: 'Ω', stated: stated.reOhm, measured: scaled(figures.reOhm, fit.reOhm) },
    {
      key: 'le',
      label: 'Le',
      unit: 'mH',
      stated: stated.leMh,
      measured: scaled(figures.leMh, fit.leMh),
      // A coil told apart into Le, L2 and R2 has less of each than a sheet that gives one figure for all.
      isOtherKind: figures.l2Mh !== null && stated.l2Mh === null,
    },
    { key: 'l2', label: 'L2', unit: 'mH', stated: stated.l2Mh, measured: lossy(figures.l2Mh, fit.l2Mh) },
    { key: 'r2', label: 'R2', unit: 'Ω', stated: stated.r2Ohm, measured: lossy(figures.r2Ohm, fit.r2Ohm) },
  ];
  return specs.filter((spec) => spec.stated !== null || spec.measured !== null).map(toRow);
}

/** Where measured and typed part most, in one line; the smaller matters stand in the table. */
export function driverHeadline(rows: readonly FigureRow[]): string {
  const parted = rows.filter(
    ({ key, percent }) => HEADLINES.has(key) && percent !== '' && percent !== 'the same',
  );
  if (parted.length === 0) return 'Measured as its sheet says';
  return `Beside its sheet: ${parted.map(({ label, percent }) => `${label} ${percent}`).join(', ')}`;
}

const HEADLINES: ReadonlySet<string> = new Set(['fsHz', 'qes', 'vas']);

function lossy(value: number | null, of: Fitted | null): Fitted | null {
  return value === null || of === null ? null : { value, plusMinus: (of.plusMinus / of.value) * value };
}

function toRow({ key, label, unit, stated, measured, isOtherKind = false }: Spec): FigureRow {
  const percent =
    stated === null || stated === 0 || measured === null || isOtherKind
      ? null
      : (measured.value / stated - 1) * 100;
  return {
    key,
    label,
    stated: stated === null ? '' : [String(stated), unit].filter((word) => word !== '').join(' '),
    measured: measured === null ? '' : fittedWords(measured, unit),
    percent: percent === null ? '' : percentWords(percent),
    isFar: percent !== null && Math.abs(percent) > FAR_PERCENT,
  };
}
