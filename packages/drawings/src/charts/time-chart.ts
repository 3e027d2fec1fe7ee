// One quantity over time from the instant of a step: how fast it comes and how long it rings.
import { line, polygon, polyline, text } from '../scene/items.ts';
import type { Scene, SceneItem } from '../scene/scene.ts';
import { type Extent, rectangle, type Spot, spot } from '../scene/spot.ts';
import { CAP_HEIGHT } from '../text/text-width.ts';
import { linearAxis, linearTicks } from './axis-ticks.ts';
import { clipLine } from './clip-line.ts';
import type { ChartView } from './response-chart.ts';

export type TimeChartInput = {
  readonly title: string;
  readonly description: string;
  /** `Pressure after a step · Pa`. */
  readonly quantity: string;
  readonly fromMs: number;
  readonly toMs: number;
  /** [milliseconds, value], rising time. */
  readonly points: readonly (readonly [number, number])[];
};

const VIEW: ChartView = { widthPt: 640, heightPt: 230, textPt: 10.5 };
const STEP_PT = 30; // least distance between level rules
const TIME_STEP_PT = 46;

export function timeChart(input: TimeChartInput, partial: Partial<ChartView> = {}): Scene {
  const view = { ...VIEW, ...partial };
  const box: Extent = {
    left: view.textPt * 4.8,
    top: view.textPt * 2.4,
    right: view.widthPt - view.textPt * 2.8,
    bottom: view.heightPt - view.textPt * 2.4,
  };
  const values = input.points.map(([, value]) => value);
  const axis = linearAxis([...values, 0], Math.max(2, Math.floor((box.bottom - box.top) / STEP_PT)), false);
  const at = (ms: number, value: number): Spot =>
    spot(
      box.left + ((box.right - box.left) * (ms - input.fromMs)) / (input.toMs - input.fromMs),
      box.bottom - ((box.bottom - box.top) * (value - axis.from)) / (axis.to - axis.from),
    );
  const mostTimes = Math.max(2, Math.floor((box.right - box.left) / TIME_STEP_PT));
  const times = linearTicks(linearAxis([input.fromMs, input.toMs], mostTimes, false)).filter(
    ({ value }) => value >= input.fromMs && value <= input.toMs,
  );
  const figure = (where: Spot, words: string, anchor: 'middle' | 'end'): SceneItem =>
    text(where, words, { sizePt: view.textPt * 0.92, face: 'mono', anchor, ink: 'ink-2' });
  const rule = (from: Spot, to: Spot, isZero: boolean): SceneItem =>
    line(from, to, { role: isZero ? 'thin' : 'grid', dashPt: null, widthPt: isZero ? 0.9 : 0.7 });
  const caption = { sizePt: view.textPt, face: 'condensed', ink: 'ink-2' } as const;
  return {
    title: input.title,
    description: input.description,
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    world: null,
    scaleLabel: null,
    layers: [
      {
        id: 'rules',
        items: [
          ...times.flatMap(({ value, label }) => [
            rule(at(value, axis.from), at(value, axis.to), value === 0),
            figure(spot(at(value, axis.from).x, box.bottom + view.textPt * 1.25), label ?? '', 'middle'),
          ]),
          ...linearTicks(axis).flatMap(({ value, label }) => [
            rule(at(input.fromMs, value), at(input.toMs, value), value === 0),
            figure(spot(box.left - 6, at(0, value).y + (view.textPt * CAP_HEIGHT) / 2), label ?? '', 'end'),
          ]),
        ],
      },
      {
        id: 'curves',
        items: clipLine(
          input.points.map(([ms, value]) => at(ms, value)),
          box,
        ).map((run) => polyline(run, { role: 'construction', dashPt: null, widthPt: 1.5 })),
      },
      {
        id: 'frame',
        items: [
          polygon(rectangle(box.left, box.top, box.right - box.left, box.bottom - box.top), {
            role: 'thin',
            dashPt: null,
            widthPt: null,
          }),
        ],
      },
      {
        id: 'labels',
        items: [
          text(spot(box.left, box.top - view.textPt * 0.8), input.quantity, caption),
          text(spot(box.right + view.textPt * 0.8, box.bottom + view.textPt * 1.25), 'ms', caption),
        ],
      },
    ],
  };
}
