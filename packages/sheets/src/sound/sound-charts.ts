// The curves of the sound sheet as charts: the same lines on the screen, in print and in the PDF.

import type { SoundResult } from '@gusset/contracts/sound';
import {
  type CurvePoint,
  type LinearAxis,
  linearAxis,
  type ResponseChartInput,
  type ResponseCurve,
} from '@gusset/drawings';
import { mark, plain, tuningMarks } from './chart-frame.ts';
import { type ChartChoice, type ChartSpread, curvesOf, type Line, line, linesOf } from './chart-lines.ts';
import { loudestChart, portAirChart, travelChart } from './limit-charts.ts';
import { CURVES } from './sound-band.ts';

const DEGREES = 180 / Math.PI;
const DELAY_STEPS = 6;
const notBelowZero = (value: number): number => Math.max(value, 0);

export const SOUND_CHARTS = [
  'level',
  'travel',
  'port-air',
  'loudest',
  'load',
  'phase',
  'delay',
  'power',
  'turn',
] as const;
export type SoundChart = (typeof SOUND_CHARTS)[number];

/** Charts that say something about this design, in the order in which a fabricator asks. */
export function chartsOf(result: SoundResult): readonly SoundChart[] {
  const { portSpeedMps, maxSplDb, phaseRad } = result.curves;
  return SOUND_CHARTS.filter(
    (chart) =>
      (chart !== 'port-air' || portSpeedMps !== null) &&
      (chart !== 'loudest' || maxSplDb !== null) &&
      (chart !== 'turn' || phaseRad.length > 0),
  );
}

/** The chart as lines, limits and words; draw it with `responseChart` at the size of its place. */
export function soundChart(chart: SoundChart, result: SoundResult, choice: ChartChoice): ResponseChartInput {
  // The level says in full what each line is; beside it the letter is enough and leaves the room to the curves.
  const named = linesOf(result, choice);
  const lines =
    chart === 'level' && !choice.isBrief ? named : named.map((each) => ({ ...each, name: each.letter }));
  switch (chart) {
    case 'level':
      return levelChart(result, choice, lines);
    case 'travel':
      return travelChart(result, lines);
    case 'port-air':
      return portAirChart(result, lines);
    case 'loudest':
      return loudestChart(result, lines);
    case 'load':
      return {
        ...plain('Load', 'Load, magnitude', 'Ω', 'Magnitude of the load that the amplifier sees, in ohms.'),
        curves: curvesOf(lines, ({ impedanceOhm }) => impedanceOhm),
        marks: result.fcHz === null ? tuningMarks(result) : [mark(result.fcHz, 'resonance')],
      };
    case 'phase':
      return {
        ...plain(
          'Load, phase',
          'Phase of the load',
          '°',
          'Phase of the load in degrees; inductive is positive.',
        ),
        curves: [
          line(
            lines[0],
            'phase',
            result.curves.impedancePhaseRad.map((phase) => phase * DEGREES),
          ),
        ],
      };
    case 'delay':
      return {
        ...plain('Group delay', 'Group delay', 'ms', 'Group delay in milliseconds.'),
        // Below nothing only the notch of a radiator reaches, far down: it would flatten what is looked for.
        axis: linearAxis(
          [0, ...lines.flatMap(({ curves }) => curves.groupDelayMs)].map(notBelowZero),
          DELAY_STEPS,
          false,
        ),
        curves: curvesOf(lines, ({ groupDelayMs }) => groupDelayMs),
      };
    case 'power':
      return powerChart(result, lines);
    case 'turn':
      return {
        ...plain(
          'Phase of the sound',
          'Phase of the sound',
          '°',
          'Phase of the pressure against the source, in degrees, filters and cabin included.',
        ),
        axis: { from: -180, to: 180, step: 90 },
        curves: turnCurves(result),
      };
  }
}

function levelChart(
  result: SoundResult,
  { isFreeAir, spread }: ChartChoice,
  lines: readonly Line[],
): ResponseChartInput {
  const inCar = result.cabin !== 'none' && !isFreeAir;
  const { target } = result;
  const corner = result.f3Hz === null ? '' : ` Corner ${result.f3Hz.toFixed(1)} Hz outdoors.`;
  const reach =
    result.reachesHz === null ? '' : ` Within 3 dB of its loudest from ${result.reachesHz.toFixed(0)} Hz.`;
  return {
    ...plain(
      `Level at ${Math.round(result.driveWatts)} W, ${inCar ? 'in this car' : 'outdoors'}`,
      inCar ? 'Level in the car' : 'Level at 1 m, half space',
      'dB',
      `Level in decibels from ${CURVES.lowHz} to ${CURVES.highHz} hertz.${reach}${corner}`,
    ),
    curves: [
      ...curvesOf(lines, (curves) => (inCar ? curves.splDb : curves.splFreeDb)),
      ...(inCar || result.cabin === 'none' ? spreadCurves(spread) : []),
    ],
    band:
      target === null
        ? null
        : {
            name: `target ±${target.plusMinusDb} dB`,
            lower: targetEdge(target.lowHz, target.highHz, target.levelDb - target.plusMinusDb),
            upper: targetEdge(target.lowHz, target.highHz, target.levelDb + target.plusMinusDb),
          },
    axis: levelAxis(lines.flatMap(({ curves }) => (inCar ? curves.splDb : curves.splFreeDb))),
    marks: [...(result.f3Hz === null ? [] : [mark(result.f3Hz, 'corner')]), ...tuningMarks(result)],
    assumptions: chartAssumptions(result),
  };
}

const SHOWN_DB = 45;
const AXIS_STEP_DB = 5;

/** From the loudest down: what lies deeper than this is not heard, and would flatten the rest. */
function levelAxis(levelsDb: readonly number[]): LinearAxis {
  const to = Math.ceil((Math.max(...levelsDb) + 1) / AXIS_STEP_DB) * AXIS_STEP_DB;
  const from = Math.floor(Math.max(Math.min(...levelsDb), to - SHOWN_DB) / AXIS_STEP_DB) * AXIS_STEP_DB;
  return { from, to, step: AXIS_STEP_DB };
}

/** The edges of what will be built, dotted. */
function spreadCurves(spread: ChartSpread | null): readonly ResponseCurve[] {
  if (spread === null) return [];
  const edge = (name: string, db: readonly number[]): ResponseCurve => ({
    name,
    dash: 'dots',
    tone: 'brass',
    points: spread.frequenciesHz.map((hz, i) => [hz, db[i] ?? 0] as const),
  });
  return [edge('19 in 20 below', spread.p95Db), edge('19 in 20 above', spread.p5Db)];
}

const targetEdge = (lowHz: number, highHz: number, levelDb: number): readonly CurvePoint[] => [
  [lowHz, levelDb],
  [highHz, levelDb],
];

function powerChart(result: SoundResult, lines: readonly Line[]): ResponseChartInput {
  const { realPowerWatts, apparentPowerVa } = result.curves;
  return {
    ...plain(
      'Power',
      'Out of the amplifier',
      'W',
      'Power out of the amplifier: what turns to heat and sound, in watts, and volts times amperes.',
    ),
    curves: [
      { ...line(lines[0], 'heat', realPowerWatts), tone: 'mark' },
      { ...line(lines[0], 'V × A', apparentPowerVa), dash: 'short', tone: 'ink' },
    ],
  };
}

/** Cut where the phase goes round, so that no line crosses the whole chart. */
function turnCurves({ curves }: SoundResult): readonly ResponseCurve[] {
  const runs: CurvePoint[][] = [];
  for (const [i, phase] of curves.phaseRad.entries()) {
    const point: CurvePoint = [curves.frequenciesHz[i] ?? 0, phase * DEGREES];
    const before = curves.phaseRad[i - 1];
    const run = runs.at(-1);
    if (run === undefined || before === undefined || Math.abs(phase - before) > Math.PI) runs.push([point]);
    else run.push(point);
  }
  return runs.map((points, i) => ({
    name: i === runs.length - 1 ? 'phase' : '',
    dash: 'solid',
    tone: 'mark',
    points,
  }));
}

/** What the curves rest on, under the chart. */
export function chartAssumptions(result: SoundResult): string {
  const cabin =
    result.cabinLabel !== null
      ? `measured in this car, ${result.cabinLabel}`
      : result.cabinLongestM === null
        ? 'no cabin'
        : `cabin estimated from ${result.cabinLongestM} m inside, real cars differ by 5 to 10 dB`;
  return `Small signal, ${result.driveVolts.toFixed(1)} V, 20 °C, sea level; ${cabin}.`;
}
