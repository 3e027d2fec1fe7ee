// Curves over a log frequency axis: level, excursion, impedance, group delay. Lines are told apart by dash and by a
// label at their end, so a grey photocopy still reads.
import { line, polygon, polyline, text } from '../scene/items.ts';
import type { Ink, StrokeRole } from '../scene/pens.ts';
import type { Layer, Scene, SceneItem } from '../scene/scene.ts';
import { type Extent, rectangle, type Spot, spot } from '../scene/spot.ts';
import { CAP_HEIGHT, textWidthPt } from '../text/text-width.ts';
import { type LinearAxis, linearAxis, linearTicks, logTicks } from './axis-ticks.ts';
import { clipLine } from './clip-line.ts';

export type CurveTone = 'ink' | 'mark' | 'pencil' | 'brass';
export type CurveDash = 'solid' | 'long' | 'short' | 'dots' | 'dash-dot' | 'dash-dot-dot';

/** [frequency in Hz, value in the chart's unit]. */
export type CurvePoint = readonly [number, number];

export type ResponseCurve = {
  /** Stands at the end of the line; empty = nothing. */
  readonly name: string;
  readonly dash: CurveDash;
  readonly tone: CurveTone;
  /** Rising frequency. */
  readonly points: readonly CurvePoint[];
};

export type ChartZone = {
  readonly fromValue: number;
  /** Null = to the top of the chart. */
  readonly toValue: number | null;
  /** Stands in the zone, at its right; empty = nothing. */
  readonly name: string;
  readonly tone: 'pencil' | 'brass' | 'pass';
};

export type ResponseChartInput = {
  readonly title: string;
  readonly description: string;
  readonly fromHz: number;
  readonly toHz: number;
  /** `dB`, `mm`, `Ω`, `ms`, `m/s`. */
  readonly unit: string;
  /** `Level at 1 m`. */
  readonly quantity: string;
  /** Null = chosen from the curves; give one to keep the scale while comparing. */
  readonly axis: LinearAxis | null;
  readonly curves: readonly ResponseCurve[];
  /** Area that the curve is meant to stay in. */
  readonly band: {
    readonly name: string;
    readonly lower: readonly CurvePoint[];
    readonly upper: readonly CurvePoint[];
  } | null;
  readonly limits: readonly { readonly value: number; readonly text: string; readonly failing: boolean }[];
  /** Shaded from one value to another across all frequencies: beyond a limit, bands of guidance. */
  readonly zones: readonly ChartZone[];
  /** Frequencies worth a line: tuning, corner. */
  readonly marks: readonly { readonly frequencyHz: number; readonly text: string }[];
  /** What was assumed, under the chart. */
  readonly assumptions: string;
};

export type ChartView = { readonly widthPt: number; readonly heightPt: number; readonly textPt: number };

const CHART_VIEW: ChartView = { widthPt: 640, heightPt: 320, textPt: 10.5 };
const STEP_PT = 30; // least distance between level rules
/** Lengths of dashes and gaps, points; empty = solid. */
export const CURVE_DASHES: Readonly<Record<CurveDash, readonly number[]>> = {
  solid: [],
  long: [9, 3.5],
  short: [4, 3],
  dots: [1.2, 2.8],
  'dash-dot': [9, 3, 1.5, 3],
  'dash-dot-dot': [9, 3, 1.5, 2.5, 1.5, 3],
};
const ROLES: Readonly<Record<CurveTone, StrokeRole>> = {
  ink: 'curve',
  mark: 'construction',
  pencil: 'pencil',
  brass: 'brass',
};

type Plot = { readonly box: Extent; readonly axis: LinearAxis; readonly at: (point: CurvePoint) => Spot };

/** Where the curves stand in the scene, points: for a cursor over it. */
export type ChartPlace = {
  readonly box: Extent;
  readonly at: (point: CurvePoint) => Spot;
  /** The frequency that lies under an x of the scene, held to the chart's range. */
  readonly frequencyAt: (x: number) => number;
};

/** The same place that `responseChart` draws in, for the same arguments. */
export function responseChartPlace(input: ResponseChartInput, partial: Partial<ChartView> = {}): ChartPlace {
  const { box, at } = plotOf(input, { ...CHART_VIEW, ...partial });
  const octaves = Math.log(input.toHz / input.fromHz);
  const frequencyAt = (x: number): number => {
    const share = (x - box.left) / (box.right - box.left);
    return input.fromHz * Math.exp(octaves * Math.min(Math.max(share, 0), 1));
  };
  return { box, at, frequencyAt };
}

export function responseChart(input: ResponseChartInput, partial: Partial<ChartView> = {}): Scene {
  const view = { ...CHART_VIEW, ...partial };
  const plot = plotOf(input, view);
  const layers: Layer[] = [
    { id: 'zones', items: input.zones.flatMap((zone) => zoneItems(zone, plot, view)) },
    { id: 'band', items: bandItems(input, plot, view) },
    { id: 'rules', items: ruleItems(input, plot, view) },
    {
      id: 'marks',
      items: input.marks.flatMap((mark, i) => markItems(mark, stepsUp(input, i, plot, view), plot, view)),
    },
    { id: 'limits', items: input.limits.flatMap((limit) => limitItems(limit, plot, view)) },
    { id: 'curves', items: input.curves.flatMap((curve) => curveItems(curve, plot)) },
    {
      id: 'frame',
      items: [
        polygon(
          rectangle(
            plot.box.left,
            plot.box.top,
            plot.box.right - plot.box.left,
            plot.box.bottom - plot.box.top,
          ),
          { role: 'thin', dashPt: null, widthPt: null },
        ),
      ],
    },
    { id: 'labels', items: [...endLabels(input.curves, plot, view), ...captions(input, plot, view)] },
  ];
  return {
    title: input.title,
    description: input.description,
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    world: null,
    scaleLabel: null,
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

function plotOf(input: ResponseChartInput, view: ChartView): Plot {
  const labelPt = Math.max(0, ...input.curves.map(({ name }) => textWidthPt(name, 'condensed', view.textPt)));
  const box = {
    left: view.textPt * 4.2,
    top: view.textPt * 2.4,
    right: view.widthPt - Math.max(Math.min(labelPt + 18, view.widthPt * 0.3), view.textPt * 2.8), // at least for Hz
    bottom: view.heightPt - view.textPt * (input.assumptions === '' ? 2.4 : 4),
  };
  const mostSteps = Math.max(2, Math.floor((box.bottom - box.top) / STEP_PT));
  const axis = input.axis ?? linearAxis(shownValues(input), mostSteps, input.unit.startsWith('dB'));
  const decades = Math.log10(input.toHz / input.fromHz);
  const at = ([frequencyHz, value]: CurvePoint): Spot => {
    const x = box.left + ((box.right - box.left) * Math.log10(frequencyHz / input.fromHz)) / decades;
    return spot(x, box.bottom - ((box.bottom - box.top) * (value - axis.from)) / (axis.to - axis.from));
  };
  return { box, axis, at };
}

function shownValues({ curves, limits, band, fromHz, toHz }: ResponseChartInput): number[] {
  const all = [
    ...curves.flatMap(({ points }) => points),
    ...(band === null ? [] : [...band.lower, ...band.upper]),
  ];
  const shown = all
    .filter(([frequencyHz]) => frequencyHz >= fromHz && frequencyHz <= toHz)
    .map(([, value]) => value);
  return [...shown, ...limits.map(({ value }) => value)];
}

function zoneItems(zone: ChartZone, { box, at, axis }: Plot, view: ChartView): SceneItem[] {
  const [from, to] = [Math.max(zone.fromValue, axis.from), Math.min(zone.toValue ?? axis.to, axis.to)];
  if (from >= to) return [];
  const [bottom, top] = [at([1, from]).y, at([1, to]).y];
  const wash = polygon(
    rectangle(box.left, top, box.right - box.left, bottom - top),
    null,
    `${zone.tone}-wash`,
  );
  const sizePt = view.textPt * 0.9;
  if (zone.name === '' || bottom - top < sizePt * 1.3) return [wash];
  const name = text(spot(box.right - 5, bottom - 4), zone.name, {
    sizePt,
    face: 'condensed',
    anchor: 'end',
    ink: zone.tone,
  });
  return [wash, name];
}

function bandItems({ band }: ResponseChartInput, plot: Plot, view: ChartView): SceneItem[] {
  if (band === null) return [];
  const ring = [...band.lower, ...[...band.upper].reverse()].map(plot.at).map((at) => keepIn(at, plot.box));
  const [first] = band.upper;
  if (first === undefined) return [];
  const start = keepIn(plot.at(first), plot.box);
  const edges = [band.lower, band.upper].flatMap((edge) =>
    clipLine(edge.map(plot.at), plot.box).map((run) =>
      polyline(run, { role: 'construction', dashPt: [2, 2], widthPt: 0.6 }),
    ),
  );
  const name = text(spot(start.x + 3, start.y - 4), band.name, {
    sizePt: view.textPt * 0.9,
    face: 'condensed',
    ink: 'mark',
  });
  return [polygon(ring, null, 'mark-wash'), ...edges, name];
}

const keepIn = ({ x, y }: Spot, { left, top, right, bottom }: Extent): Spot =>
  spot(Math.min(Math.max(x, left), right), Math.min(Math.max(y, top), bottom));

function ruleItems(input: ResponseChartInput, { box, axis, at }: Plot, view: ChartView): SceneItem[] {
  const upright = logTicks(input.fromHz, input.toHz).flatMap(({ value, label }): SceneItem[] => {
    const { x } = at([value, axis.from]);
    const rule = line(spot(x, box.top), spot(x, box.bottom), {
      role: 'grid',
      dashPt: null,
      widthPt: label === null ? 0.35 : 0.7,
    });
    if (label === null) return [rule];
    return [rule, figure(spot(x, box.bottom + view.textPt * 1.25), label, 'middle', view)];
  });
  const level = linearTicks(axis).flatMap(({ value, label }): SceneItem[] => {
    const { y } = at([input.fromHz, value]);
    const rule = line(spot(box.left, y), spot(box.right, y), { role: 'grid', dashPt: null, widthPt: 0.7 });
    return [rule, figure(spot(box.left - 6, y + (view.textPt * CAP_HEIGHT) / 2), label ?? '', 'end', view)];
  });
  return [...upright, ...level];
}

const figure = (at: Spot, words: string, anchor: 'middle' | 'end', { textPt }: ChartView): SceneItem =>
  text(at, words, { sizePt: textPt * 0.92, face: 'mono', anchor, ink: 'ink-2' });

function curveItems(curve: ResponseCurve, { box, at }: Plot): SceneItem[] {
  const dashPt = CURVE_DASHES[curve.dash];
  const sound = curve.points.filter(([frequencyHz, value]) => frequencyHz > 0 && Number.isFinite(value)); // log axis
  return clipLine(sound.map(at), box).map((run) =>
    polyline(run, { role: ROLES[curve.tone], dashPt, widthPt: 1.5 }),
  );
}

/** Rows that the words of a mark stand above the bottom, so that they clear those of the marks before it. */
function stepsUp({ marks }: ResponseChartInput, index: number, plot: Plot, view: ChartView): number {
  const widthOf = (words: string): number => textWidthPt(words, 'mono', view.textPt * 0.9) + 10;
  const rows: { readonly from: number; readonly to: number; readonly row: number }[] = [];
  for (const { frequencyHz, text: words } of marks.slice(0, index + 1)) {
    const from = plot.at([frequencyHz, plot.axis.from]).x;
    const to = from + widthOf(words);
    const taken = rows.filter((other) => from < other.to && other.from < to).map(({ row }) => row);
    let row = 0;
    while (taken.includes(row)) row += 1;
    rows.push({ from, to, row });
  }
  return rows.at(-1)?.row ?? 0;
}

function markItems(
  mark: ResponseChartInput['marks'][number],
  row: number,
  { box, axis, at }: Plot,
  view: ChartView,
): SceneItem[] {
  const { x } = at([mark.frequencyHz, axis.from]);
  if (x < box.left || x > box.right) return [];
  return [
    line(spot(x, box.top), spot(x, box.bottom), {
      role: 'construction',
      dashPt: [10, 2.5, 2, 2.5],
      widthPt: 0.8,
    }),
    text(spot(x + 4, box.bottom - 5 - row * view.textPt * 1.25), mark.text, {
      sizePt: view.textPt * 0.9,
      face: 'mono',
      ink: 'mark',
      backed: true,
    }),
  ];
}

function limitItems(
  limit: ResponseChartInput['limits'][number],
  { box, at, axis }: Plot,
  view: ChartView,
): SceneItem[] {
  if (limit.value < axis.from || limit.value > axis.to) return [];
  const { y } = at([1, limit.value]);
  const role = limit.failing ? 'pencil' : 'thin';
  return [
    line(spot(box.left, y), spot(box.right, y), { role, dashPt: [12, 3], widthPt: 1 }),
    text(spot(box.right - 5, y - 4), limit.text, {
      sizePt: view.textPt * 0.9,
      face: 'condensed',
      anchor: 'end',
      ink: limit.failing ? 'pencil' : 'ink',
      backed: true,
    }),
  ];
}

type EndLabel = { readonly name: string; readonly ink: Ink; readonly end: Spot; y: number };

/** Names at the ends of the lines, moved apart where they would touch. */
function endLabels(curves: readonly ResponseCurve[], { box, at }: Plot, view: ChartView): SceneItem[] {
  const leading = view.textPt * 1.2;
  const labels = curves.flatMap(({ name, tone, points }): EndLabel[] => {
    const end = clipLine(points.map(at), box).at(-1)?.at(-1);
    return end === undefined || name === '' ? [] : [{ name, ink: tone, end, y: end.y }];
  });
  labels.sort((a, b) => a.end.y - b.end.y || a.name.localeCompare(b.name, 'en'));
  const room = box.bottom - leading / 2;
  labels.forEach((label, index) => {
    const above = labels[index - 1];
    if (above !== undefined) label.y = Math.max(label.y, above.y + leading);
  });
  [...labels].reverse().forEach((label, index, all) => {
    const below = all[index - 1];
    label.y = Math.min(label.y, below === undefined ? room : below.y - leading);
  });
  return labels.flatMap(({ name, ink, end, y }) => [
    polyline([end, spot(box.right + 9, y)], { role: 'thin', dashPt: null, widthPt: 0.5 }),
    text(spot(box.right + 12, y + (view.textPt * CAP_HEIGHT) / 2), name, {
      sizePt: view.textPt,
      face: 'condensed',
      ink,
    }),
  ]);
}

function captions(input: ResponseChartInput, { box }: Plot, view: ChartView): SceneItem[] {
  const { textPt } = view;
  const caption = { sizePt: textPt, face: 'condensed', ink: 'ink-2' } as const;
  const assumed: SceneItem[] =
    input.assumptions === ''
      ? []
      : [
          text(spot(box.left, view.heightPt - textPt * 0.6), input.assumptions, {
            ...caption,
            face: 'regular',
            sizePt: textPt * 0.9,
          }),
        ];
  return [
    text(spot(box.left, box.top - textPt * 0.8), `${input.quantity} · ${input.unit}`, caption),
    text(spot(box.right + textPt * 1.4, box.bottom + textPt * 1.25), 'Hz', caption),
    ...assumed,
  ];
}
