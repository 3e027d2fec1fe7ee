// What the drawings of measuring show: impedance with its fit, levels over each other, the car's own transfer.
import type {
  CarTransferView,
  DriverFromSweeps,
  SweepColumns,
  TransferAnswer,
  TransferCurve,
} from '@gusset/contracts/measurement';
import {
  type CurveDash,
  type CurvePoint,
  linearAxis,
  type ResponseChartInput,
  type ResponseCurve,
} from '@gusset/drawings';
import type { BuiltBox } from './built-box.ts';

const IMPEDANCE_RANGE = { fromHz: 8, toHz: 500 } as const;
/** Level rules of the overlay: chosen by the sweeps that count, so that a rejected one doesn't flatten them. */
const LEVEL_STEPS = 8;
const DASHES: readonly CurveDash[] = ['solid', 'long', 'short', 'dash-dot', 'dots', 'dash-dot-dot'];

const pairs = (frequenciesHz: readonly number[], values: readonly number[]): CurvePoint[] =>
  frequenciesHz.map((hz, i) => [hz, values[i] ?? 0]);

const measured = (name: string, columns: SweepColumns, dash: CurveDash = 'solid'): ResponseCurve => ({
  name,
  dash,
  tone: 'ink',
  points: pairs(columns.frequenciesHz, columns.values),
});

const bare = { axis: null, band: null, limits: [], zones: [], marks: [], assumptions: '' } as const;

/** The whole of what was swept: no wider than the file, no wider than the fit looks. */
function impedanceRange(columns: SweepColumns): { readonly fromHz: number; readonly toHz: number } {
  const { fromHz, toHz } = IMPEDANCE_RANGE;
  const [first = fromHz, last = toHz] = [columns.frequenciesHz[0], columns.frequenciesHz.at(-1)];
  return { fromHz: Math.max(first, fromHz), toHz: Math.min(last, toHz) };
}

/** A driver's sweep, the second one beside it, and the fit; before there is one, the sweep alone. */
export function driverChart(
  freeAir: SweepColumns,
  second: SweepColumns | null,
  answer: DriverFromSweeps | null,
): ResponseChartInput {
  const fit: readonly ResponseCurve[] =
    answer === null
      ? []
      : [
          {
            name: 'fit',
            dash: 'long',
            tone: 'mark',
            points: pairs(answer.fit.curve.frequenciesHz, answer.fit.curve.ohm),
          },
        ];
  const fs = answer === null ? null : answer.fit.fsHz.value;
  return {
    ...bare,
    ...impedanceRange(freeAir),
    title: 'Impedance of the driver',
    description:
      fs === null ? 'As swept.' : `Resonance at ${fs.toFixed(1)} Hz, with the fitted curve over it.`,
    unit: 'Ω',
    quantity: 'Impedance at the terminals',
    curves: [
      measured('free air', freeAir),
      ...fit,
      ...(second === null ? [] : [measured('second', second, 'short')]),
    ],
    marks: fs === null ? [] : [{ frequencyHz: fs, text: `Fs ${fs.toFixed(1)} Hz` }],
  };
}

/** The built box over its drawing. */
export function builtChart(sweep: SweepColumns, answer: BuiltBox | null): ResponseChartInput {
  const drawn: readonly ResponseCurve[] =
    answer === null
      ? []
      : [
          {
            name: 'drawn',
            dash: 'long',
            tone: 'mark',
            points: pairs(answer.curves.frequenciesHz, answer.curves.drawnOhm),
          },
          {
            name: 'fit',
            dash: 'dots',
            tone: 'brass',
            points: pairs(answer.curves.frequenciesHz, answer.curves.fittedOhm),
          },
        ];
  const tuning = answer?.differences.find(({ code }) => code === 'tuning');
  return {
    ...bare,
    ...impedanceRange(sweep),
    title: 'Impedance of the built box',
    description:
      answer === null ? 'As swept.' : 'As swept, with what the drawing gives and the fitted box over it.',
    unit: 'Ω',
    quantity: 'Impedance at the amplifier',
    curves: [measured('built', sweep), ...drawn],
    marks:
      tuning === undefined
        ? []
        : [{ frequencyHz: tuning.built.value, text: `tuned ${tuning.built.value.toFixed(1)} Hz` }],
  };
}

/** Sweeps in the car laid over each other and over what the trial box gives in the open. */
export function overlayChart(
  { frequenciesHz, predictedDb, sweeps }: TransferAnswer,
  nameOf: (sweepId: string) => string,
): ResponseChartInput {
  const good = sweeps.filter(({ rejection }) => rejection === null);
  const rejected = sweeps.filter(({ rejection }) => rejection !== null);
  return {
    ...bare,
    fromHz: frequenciesHz[0] ?? 20,
    toHz: frequenciesHz.at(-1) ?? 200,
    title: 'Sweeps in this car',
    description: `${sweeps.length} sweeps over what the trial box gives in the open. The figures stand in the table.`,
    unit: 'dB',
    quantity: 'Level, brought to one scale',
    axis: linearAxis([predictedDb, ...good.map(({ levelDb }) => levelDb)].flat(), LEVEL_STEPS, true),
    curves: [
      ...good.map(
        ({ id, levelDb }, i): ResponseCurve => ({
          name: nameOf(id),
          dash: DASHES[i % DASHES.length] ?? 'solid',
          tone: 'ink',
          points: pairs(frequenciesHz, levelDb),
        }),
      ),
      ...rejected.map(
        ({ id, levelDb }): ResponseCurve => ({
          name: `${nameOf(id)}, rejected`,
          dash: 'dots',
          tone: 'pencil',
          points: pairs(frequenciesHz, levelDb),
        }),
      ),
      { name: 'in the open', dash: 'long', tone: 'mark', points: pairs(frequenciesHz, predictedDb) },
    ],
  };
}

/** What the car adds, with the spread of the places; the revision that counts beside a new one. */
export function transferChart(now: TransferCurve | null, kept: CarTransferView | null): ResponseChartInput {
  const shown = now ?? kept?.curve ?? null;
  const pointsOf = ({ points }: TransferCurve): CurvePoint[] =>
    points.map(({ frequencyHz, gainDb }) => [frequencyHz, gainDb]);
  const spread = now?.points.some(({ spreadDb }) => spreadDb > 0.1) ?? false;
  const edge = (sign: 1 | -1): CurvePoint[] =>
    now === null
      ? []
      : now.points.map(({ frequencyHz, gainDb, spreadDb }) => [frequencyHz, gainDb + (sign * spreadDb) / 2]);
  return {
    ...bare,
    fromHz: 15,
    toHz: 250,
    title: 'What this car adds',
    description:
      shown === null ? 'Nothing kept yet.' : `Valid from ${shown.validLowHz} to ${shown.validHighHz} Hz.`,
    unit: 'dB',
    quantity: 'Gain of the cabin',
    band: spread ? { name: 'between places', lower: edge(-1), upper: edge(1) } : null,
    curves: [
      ...(now === null ? [] : [{ name: 'now', dash: 'solid', tone: 'ink', points: pointsOf(now) } as const]),
      ...(kept === null
        ? []
        : [
            {
              name: `kept ${kept.revision}`,
              dash: now === null ? 'solid' : 'long',
              tone: now === null ? 'ink' : 'mark',
              points: pointsOf(kept.curve),
            } as const,
          ]),
    ],
    limits: [{ value: 0, text: 'nothing added', failing: false }],
    marks:
      shown === null
        ? []
        : [
            { frequencyHz: shown.validLowHz, text: `from ${shown.validLowHz}` },
            { frequencyHz: shown.validHighHz, text: `to ${shown.validHighHz}` },
          ],
    assumptions: shown === null ? '' : 'Held level outside the two lines: a guess there.',
  };
}
