// The curves of the sound sheet as charts: the same lines on the screen, in print and in the PDF.

import type { LimitCause } from '@gusset/contracts/acoustics';
import {
  type ComparedCurves,
  type ComparedDesign,
  DESIGN_LETTERS,
  type DesignLetter,
  ENCLOSURE_WORDS,
  type SolvedDesign,
  type SoundResult,
} from '@gusset/contracts/sound';
import type {
  ChartZone,
  CurveDash,
  CurvePoint,
  CurveTone,
  ResponseChartInput,
  ResponseCurve,
} from '@gusset/drawings';
import { CURVES } from './sound-band.ts';

/** Guidance for air in ports, m/s peak: where plain edges stop being quiet, where rounded ones do, where it chuffs. */
const PORT_AIR_MPS = { quiet: 10, rounded: 17, flared: 25 };
const DEGREES = 180 / Math.PI;

export const SOUND_CHARTS = ['level', 'travel', 'port-air', 'loudest', 'load', 'phase', 'delay'] as const;
export type SoundChart = (typeof SOUND_CHARTS)[number];

/** What is shown beside the chosen design. */
export type ChartChoice = {
  /** Level outdoors instead of in the car. */
  readonly isFreeAir: boolean;
  /** Designs of the sheet to lay over it. */
  readonly letters: readonly DesignLetter[];
  /** The last issue, drawn beside a draft that differs from it. */
  readonly issued: SoundResult | null;
};

/** The kind of line that a design keeps on every chart, so that a grey copy still tells them apart. */
const DASH_OF: Readonly<Record<DesignLetter, CurveDash>> = {
  A: 'solid',
  B: 'long',
  C: 'short',
  D: 'dash-dot',
  E: 'dash-dot-dot',
  F: 'dots',
};
export const designDash = (letter: DesignLetter): CurveDash => DASH_OF[letter];

type Line = {
  /** `A`; `issue` for the one as issued. */
  readonly letter: string;
  readonly name: string;
  readonly dash: CurveDash;
  readonly tone: CurveTone;
  readonly curves: ComparedCurves;
};

/** Charts that say something about this design, in the order in which a fabricator asks. */
export function chartsOf(result: SoundResult): readonly SoundChart[] {
  const { portSpeedMps, maxSplDb } = result.curves;
  return SOUND_CHARTS.filter(
    (chart) => (chart !== 'port-air' || portSpeedMps !== null) && (chart !== 'loudest' || maxSplDb !== null),
  );
}

/** The chart as lines, limits and words; draw it with `responseChart` at the size of its place. */
export function soundChart(chart: SoundChart, result: SoundResult, choice: ChartChoice): ResponseChartInput {
  // The level says in full what each line is; beside it the letter is enough and leaves the room to the curves.
  const named = linesOf(result, choice);
  const lines = chart === 'level' ? named : named.map((each) => ({ ...each, name: each.letter }));
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
        curves: curvesOf(lines, ({ groupDelayMs }) => groupDelayMs),
      };
  }
}

function linesOf(result: SoundResult, { letters, issued }: ChartChoice): readonly Line[] {
  const own: Line = {
    letter: result.letter,
    name: designName(result, result),
    dash: designDash(result.letter),
    tone: 'mark',
    curves: result.curves,
  };
  const beside = result.variants.flatMap((variant): Line[] =>
    variant.state === 'ready' && letters.includes(variant.letter)
      ? [
          {
            letter: variant.letter,
            name: designName(variant, variant.design),
            dash: designDash(variant.letter),
            tone: 'ink',
            curves: variant.design.curves,
          },
        ]
      : [],
  );
  const before: readonly Line[] =
    issued === null
      ? []
      : [{ letter: 'issue', name: 'as issued', dash: 'short', tone: 'brass', curves: issued.curves }];
  return [own, ...beside, ...before];
}

/** `B · Vented 40 L` or the name that someone gave it. */
export function designName(
  { letter, name }: { readonly letter: DesignLetter; readonly name: string },
  design: Pick<SolvedDesign | ComparedDesign, 'enclosure' | 'netLitres'>,
): string {
  if (name !== '') return `${letter} ${name}`;
  const litres = design.netLitres === null ? '' : ` ${Number(design.netLitres.toFixed(0))} L`;
  return `${letter} ${ENCLOSURE_WORDS[design.enclosure]}${litres}`;
}

/** The first letter that no design of the sheet has; null = all six are taken. */
export function freeLetter(taken: readonly DesignLetter[]): DesignLetter | null {
  return DESIGN_LETTERS.find((letter) => !taken.includes(letter)) ?? null;
}

const points = (curves: ComparedCurves, values: readonly number[]): readonly CurvePoint[] =>
  curves.frequenciesHz.map((hz, i) => [hz, values[i] ?? 0] as const);

function curvesOf(
  lines: readonly Line[],
  valuesOf: (curves: ComparedCurves) => readonly number[] | null,
): readonly ResponseCurve[] {
  return lines.flatMap(({ name, dash, tone, curves }) => {
    const values = valuesOf(curves);
    return values === null ? [] : [{ name, dash, tone, points: points(curves, values) }];
  });
}

function line(own: Line | undefined, name: string, values: readonly number[] | null): ResponseCurve {
  const at = own === undefined || values === null ? [] : points(own.curves, values);
  return { name, dash: 'solid', tone: 'mark', points: at };
}

function plain(title: string, quantity: string, unit: string, description: string): ResponseChartInput {
  return {
    title,
    description,
    fromHz: CURVES.lowHz,
    toHz: CURVES.highHz,
    unit,
    quantity,
    axis: null,
    curves: [],
    band: null,
    limits: [],
    zones: [],
    marks: [],
    assumptions: '',
  };
}

const mark = (frequencyHz: number, what: string) => ({
  frequencyHz,
  text: `${what} ${frequencyHz.toFixed(1)} Hz`,
});

function tuningMarks({ tuningHz, rearTuningHz }: SoundResult): ResponseChartInput['marks'] {
  const both = tuningHz !== null && rearTuningHz !== null;
  return [
    ...(tuningHz === null ? [] : [mark(tuningHz, both ? 'front tuned' : 'tuned')]),
    ...(rearTuningHz === null ? [] : [mark(rearTuningHz, 'rear tuned')]),
  ];
}

function levelChart(
  result: SoundResult,
  { isFreeAir }: ChartChoice,
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
    curves: curvesOf(lines, (curves) => (inCar ? curves.splDb : curves.splFreeDb)),
    band:
      target === null
        ? null
        : {
            name: `target ±${target.plusMinusDb} dB`,
            lower: targetEdge(target.lowHz, target.highHz, target.levelDb - target.plusMinusDb),
            upper: targetEdge(target.lowHz, target.highHz, target.levelDb + target.plusMinusDb),
          },
    marks: result.f3Hz === null ? tuningMarks(result) : [mark(result.f3Hz, 'corner')],
    assumptions: chartAssumptions(result),
  };
}

const targetEdge = (lowHz: number, highHz: number, levelDb: number): readonly CurvePoint[] => [
  [lowHz, levelDb],
  [highHz, levelDb],
];

function travelChart(result: SoundResult, lines: readonly Line[]): ResponseChartInput {
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

function portAirChart(result: SoundResult, lines: readonly Line[]): ResponseChartInput {
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

const CAUSE_WORDS = {
  thermal: 'coil heat',
  excursion: 'cone travel',
  'inner-excursion': 'inner cone travel',
  'radiator-excursion': 'radiator travel',
  'amplifier-voltage': 'amplifier voltage',
  'amplifier-current': 'amplifier current',
} as const satisfies Readonly<Record<LimitCause, string>>;
export const limitCauseWords = (cause: LimitCause): string => CAUSE_WORDS[cause];

/** The loudest level, each stretch of it drawn by what stops it there. */
function loudestChart(result: SoundResult, lines: readonly Line[]): ResponseChartInput {
  const { curves } = result;
  const causes = curves.maxSplLimit ?? [];
  const kinds = [...new Set(causes)];
  const dashes: readonly CurveDash[] = ['solid', 'long', 'short', 'dash-dot'];
  const own = kinds.flatMap((cause, k): ResponseCurve[] =>
    runsOf(causes, cause).map((run, r) => ({
      name: r === 0 ? limitCauseWords(cause) : '',
      dash: dashes[k] ?? 'solid',
      tone: 'mark',
      points: run.map((i) => [curves.frequenciesHz[i] ?? 0, curves.maxSplDb?.[i] ?? 0] as const),
    })),
  );
  return {
    ...plain(
      'Loudest it can go',
      result.cabin === 'none' ? 'Loudest level at 1 m' : 'Loudest level in the car',
      'dB',
      `Loudest level before a limit is met: ${kinds.map(limitCauseWords).join(', ')}.`,
    ),
    curves: [...own, ...curvesOf(lines.slice(1), ({ maxSplDb }) => maxSplDb)],
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
