// The charts that show how near a design is to what it stands: travel, air in the ports, loudest level.
import type { LimitCause } from '@gusset/contracts/acoustics';
import type { SoundResult } from '@gusset/contracts/sound';
import type { ChartZone, CurveDash, ResponseChartInput, ResponseCurve } from '@gusset/drawings';
import { plain, tuningMarks } from './chart-frame.ts';
import { curvesOf, type Line, line } from './chart-lines.ts';

/** Guidance for air in ports, m/s peak: where plain edges stop being quiet, where rounded ones do, where it chuffs. */
const PORT_AIR_MPS = { quiet: 10, rounded: 17, flared: 25 };
/** Travel of the cones beside what their maker allows. */
export function travelChart(result: SoundResult, lines: readonly Line[]): ResponseChartInput {
  const { xmaxMm } = result.parameters;
  const { innerExcursionMm, radiatorExcursionMm } = result.curves;
  const radiatorMm = result.radiator?.xmaxMm ?? null;
  const isOver = result.travelStretches.length > 0;
  return {
    ...plain(
      'Cone travel',
      'Travel, one way, peak',
      'mm',
      xmaxMm === null
        ? 'Peak travel of the cone, one way, in millimetres. The maker states no limit.'
        : `Peak travel of the cone, one way, in millimetres; its maker allows ${xmaxMm}.`,
    ),
    curves: [
      ...curvesOf(lines, ({ excursionMm }) => excursionMm),
      ...besides('inner cone', 'short', lines[0], innerExcursionMm),
      ...besides('radiator', 'long', lines[0], radiatorExcursionMm),
    ],
    limits: [
      ...(xmaxMm === null ? [] : [{ value: xmaxMm, text: `maker allows ${xmaxMm} mm`, failing: isOver }]),
      ...(radiatorMm === null || radiatorMm === xmaxMm
        ? []
        : [
            {
              value: radiatorMm,
              text: `radiator allows ${radiatorMm} mm`,
              failing: Math.max(...(radiatorExcursionMm ?? [0])) > radiatorMm,
            },
          ]),
    ],
    zones: xmaxMm === null ? [] : [{ fromValue: xmaxMm, toValue: null, name: '', tone: 'pencil' }],
  };
}

function besides(
  name: string,
  dash: CurveDash,
  own: Line | undefined,
  values: readonly number[] | null,
): readonly ResponseCurve[] {
  return values === null ? [] : [{ ...line(own, name, values), dash, tone: 'ink' }];
}

const PORT_ZONES: readonly ChartZone[] = [
  {
    fromValue: PORT_AIR_MPS.quiet,
    toValue: PORT_AIR_MPS.rounded,
    name: 'round both ends over',
    tone: 'pass',
  },
  { fromValue: PORT_AIR_MPS.rounded, toValue: PORT_AIR_MPS.flared, name: 'flare both ends', tone: 'brass' },
  { fromValue: PORT_AIR_MPS.flared, toValue: null, name: 'will be heard', tone: 'pencil' },
];

/** Air in the ports over bands of guidance. */
export function portAirChart(result: SoundResult, lines: readonly Line[]): ResponseChartInput {
  const rear = result.curves.rearPortSpeedMps;
  const fastest = result.ports.map(({ fastestMps }) => fastestMps.toFixed(1)).join(' and ');
  return {
    ...plain(
      'Air in the port',
      'Air speed, peak',
      'm/s',
      `Speed of the air in the port, in metres a second; ${fastest} at most. Quiet up to ${PORT_AIR_MPS.quiet} with plain edges, ${PORT_AIR_MPS.rounded} rounded, ${PORT_AIR_MPS.flared} flared.`,
    ),
    curves: [
      ...curvesOf(lines, ({ portSpeedMps }) => portSpeedMps),
      ...besides('rear port', 'long', lines[0], rear),
    ],
    zones: PORT_ZONES,
    marks: tuningMarks(result),
  };
}

/** What stops the level from rising, in words. */
const CAUSE_WORDS = {
  thermal: 'coil heat',
  excursion: 'cone travel',
  'inner-excursion': 'inner cone travel',
  'radiator-excursion': 'radiator travel',
  'amplifier-voltage': 'amplifier voltage',
  'amplifier-current': 'amplifier current',
} as const satisfies Readonly<Record<LimitCause, string>>;
export const limitCauseWords = (cause: LimitCause): string => CAUSE_WORDS[cause];

/** Stretches shorter than this (about a third of an octave) keep their line and go without a name. */
const NAMED_POINTS = 11;

/** The loudest level, each stretch of it in the line of what stops it there, named where it begins. */
export function loudestChart(result: SoundResult, lines: readonly Line[]): ResponseChartInput {
  const { curves, letter } = result;
  const causes = curves.maxSplLimit ?? [];
  const kinds = [...new Set(causes)];
  const dashes: readonly CurveDash[] = ['solid', 'long', 'short', 'dash-dot'];
  const runs = kinds
    .flatMap((cause, k) =>
      runsOf(causes, cause).map((points) => ({ cause, points, dash: dashes[k] ?? 'solid' })),
    )
    .sort((a, b) => (a.points[0] ?? 0) - (b.points[0] ?? 0));
  const own = runs.map(
    ({ points, dash }, i): ResponseCurve => ({
      name: i === runs.length - 1 ? letter : '',
      dash,
      tone: 'mark',
      points: points.map((at) => [curves.frequenciesHz[at] ?? 0, curves.maxSplDb?.[at] ?? 0] as const),
    }),
  );
  return {
    ...plain(
      'Loudest it can go',
      result.cabin === 'none' ? 'Loudest level at 1 m' : 'Loudest level in the car',
      'dB',
      `Loudest level before a limit is met: ${kinds.map(limitCauseWords).join(', ')}.`,
    ),
    curves: [...own, ...curvesOf(lines.slice(1), ({ maxSplDb }) => maxSplDb)],
    marks: runs
      .filter(({ points }) => points.length >= NAMED_POINTS)
      .map(({ cause, points }) => ({
        frequencyHz: curves.frequenciesHz[points[0] ?? 0] ?? 0,
        text: limitCauseWords(cause),
      })),
  };
}

/** Runs of neighbours with one cause, each drawn on to the first point of the next so that no gap shows. */
function runsOf<T>(values: readonly T[], wanted: T): readonly (readonly number[])[] {
  const runs: number[][] = [];
  for (const [i, value] of values.entries()) {
    if (value !== wanted) continue;
    const last = runs.at(-1);
    if (last === undefined || last.at(-1) !== i - 1) runs.push([i]);
    else last.push(i);
  }
  return runs.map((run) => {
    const next = (run.at(-1) ?? 0) + 1;
    return next < values.length ? [...run, next] : run;
  });
}
