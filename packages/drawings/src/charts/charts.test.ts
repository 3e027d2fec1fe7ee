import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keyedPlaces } from '../scene/flatten.ts';
import type { Scene, SceneItem } from '../scene/scene.ts';
import { spot } from '../scene/spot.ts';
import { LANES, RESPONSE } from '../testing/sample-charts.ts';
import { linearAxis, linearTicks, logTicks } from './axis-ticks.ts';
import { clipLine } from './clip-line.ts';
import { hourFigure, laneChart } from './lane-chart.ts';
import { responseChart, responseChartPlace } from './response-chart.ts';
import { timeChart } from './time-chart.ts';

const itemsOf = (scene: Scene, layer: string): readonly SceneItem[] =>
  scene.layers.find(({ id }) => id === layer)?.items ?? [];

describe('logTicks', () => {
  it('labels 1, 2, 5 of each decade and rules the rest from 10 Hz to 1 kHz', () => {
    const ticks = logTicks(10, 1000);
    expect(ticks.flatMap(({ label }) => label ?? [])).toEqual(['10', '20', '50', '100', '200', '500', '1k']);
    expect(ticks.map(({ value }) => value)).toEqual([
      10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000,
    ]);
  });

  it('keeps to a range that begins between decades', () => {
    expect(logTicks(16, 160).map(({ value }) => value)).toEqual([20, 30, 40, 50, 60, 70, 80, 90, 100]);
  });
});

describe('linearAxis', () => {
  it('takes 5 dB steps for a fall of 45 dB with room for ten', () => {
    expect(linearAxis([58, 101], 10, true)).toEqual({ from: 55, to: 105, step: 5 });
  });

  it('takes 3 dB steps for a small span', () => {
    expect(linearAxis([84.2, 91], 5, true)).toEqual({ from: 84, to: 93, step: 3 });
  });

  it('takes 1-2-5 steps for millimetres', () => {
    expect(linearAxis([0, 13.7], 8, false)).toEqual({ from: 0, to: 14, step: 2 });
    expect(linearTicks({ from: 0, to: 0.3, step: 0.1 }).map(({ label }) => label)).toEqual([
      '0',
      '0.1',
      '0.2',
      '0.3',
    ]);
  });

  it('writes a real minus sign', () => {
    expect(linearTicks({ from: -10, to: 0, step: 5 }).map(({ label }) => label)).toEqual(['−10', '−5', '0']);
  });

  it('holds every value in at most the steps asked for, flat curves and none included', () => {
    const values = fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { maxLength: 8 });
    fc.assert(
      fc.property(values, fc.integer({ min: 2, max: 12 }), fc.boolean(), (shown, mostSteps, decibels) => {
        const { from, to, step } = linearAxis(shown, mostSteps, decibels);
        expect(step).toBeGreaterThan(0);
        expect(to).toBeGreaterThan(from);
        expect((to - from) / step).toBeLessThanOrEqual(mostSteps + 1e-6);
        for (const value of shown) {
          expect(value).toBeGreaterThanOrEqual(from - 1e-6);
          expect(value).toBeLessThanOrEqual(to + 1e-6);
        }
      }),
    );
  });
});

describe('clipLine', () => {
  const window = { left: 0, top: 0, right: 10, bottom: 10 };

  it('cuts a line where it leaves and begins again where it comes back', () => {
    const peak = [spot(0, 5), spot(2, 5), spot(5, -5), spot(8, 5), spot(10, 5)];
    const runs = clipLine(peak, window);
    const rounded = runs.map((run) =>
      run.map(({ x, y }) => [Math.round(x * 1e3) / 1e3, Math.abs(Math.round(y * 1e3) / 1e3)]),
    );
    expect(rounded).toEqual([
      [
        [0, 5],
        [2, 5],
        [3.5, 0],
      ],
      [
        [6.5, 0],
        [8, 5],
        [10, 5],
      ],
    ]);
  });

  it('keeps what lies inside whole and drops what lies outside', () => {
    expect(clipLine([spot(1, 1), spot(9, 9)], window)).toEqual([[spot(1, 1), spot(9, 9)]]);
    expect(clipLine([spot(11, 1), spot(19, 9)], window)).toEqual([]);
    expect(clipLine([spot(1, 1)], window)).toEqual([]);
  });
});

describe('responseChart', () => {
  it('puts 100 Hz in the middle of 10 Hz to 1 kHz', () => {
    const curve = {
      name: 'a',
      dash: 'solid',
      tone: 'ink',
      points: [
        [10, 60],
        [100, 105],
        [1000, 60],
      ],
    } as const;
    const scene = responseChart({ ...RESPONSE, curves: [curve] });
    const [drawn] = itemsOf(scene, 'curves');
    const [start, middle, end] = drawn?.kind === 'polyline' ? drawn.points : [];
    expect(middle?.x).toBeCloseTo(((start?.x ?? 0) + (end?.x ?? 0)) / 2, 6);
    expect((middle?.y ?? 0) < (start?.y ?? 0)).toBe(true);
  });

  it('tells curves apart by dash and by a name at the end', () => {
    const scene = responseChart(RESPONSE);
    const dashes = itemsOf(scene, 'curves').map((item) =>
      item.kind === 'polyline' && typeof item.stroke === 'object' ? item.stroke?.dashPt : null,
    );
    expect(new Set(dashes.map((dash) => JSON.stringify(dash))).size).toBe(3);
    const names = itemsOf(scene, 'labels').flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    expect(names).toEqual(expect.arrayContaining(['vented 74 L', 'closed 40 L', 'asked for']));
  });

  it('moves end labels apart', () => {
    const ys = itemsOf(responseChart(RESPONSE), 'labels')
      .flatMap((item) => (item.kind === 'text' && /L$|for$/.test(item.text) ? [item.at.y] : []))
      .sort((a, b) => a - b);
    expect((ys[1] ?? 0) - (ys[0] ?? 0)).toBeGreaterThanOrEqual(12);
    expect((ys[2] ?? 0) - (ys[1] ?? 0)).toBeGreaterThanOrEqual(12);
  });

  it('keeps every curve inside its frame', () => {
    const scene = responseChart({ ...RESPONSE, axis: { from: 80, to: 90, step: 5 } });
    const [frame] = itemsOf(scene, 'frame');
    const ys = frame?.kind === 'polyline' ? frame.points.map(({ y }) => y) : [];
    for (const item of itemsOf(scene, 'curves')) {
      for (const { y } of item.kind === 'polyline' ? item.points : []) {
        expect(y).toBeGreaterThanOrEqual(Math.min(...ys) - 1e-6);
        expect(y).toBeLessThanOrEqual(Math.max(...ys) + 1e-6);
      }
    }
  });

  it('shades a zone from its value to the top, and leaves out one above the axis', () => {
    const zone = { fromValue: 101, toValue: null, name: '', tone: 'pencil' } as const;
    const [wash] = itemsOf(responseChart({ ...RESPONSE, zones: [zone] }), 'zones');
    const ys = wash?.kind === 'polyline' ? wash.points.map(({ y }) => y) : [];
    const place = responseChartPlace(RESPONSE);
    expect(Math.min(...ys)).toBeCloseTo(place.box.top, 6);
    expect(Math.max(...ys)).toBeCloseTo(place.at([100, 101]).y, 6);
    const above = responseChart({ ...RESPONSE, zones: [{ ...zone, fromValue: 200 }] });
    expect(itemsOf(above, 'zones')).toEqual([]);
  });

  it('sets the words of neighbouring marks in rows of their own', () => {
    const marks = [32, 34, 300].map((frequencyHz) => ({ frequencyHz, text: `mark ${frequencyHz} Hz` }));
    const words = itemsOf(responseChart({ ...RESPONSE, marks }), 'marks').filter(
      (item) => item.kind === 'text',
    );
    const [first, second, far] = words.map((item) => (item.kind === 'text' ? item.at.y : 0));
    expect((first ?? 0) - (second ?? 0)).toBeGreaterThan(10);
    expect(far).toBe(first);
  });

  it('reads a frequency back from the place where it stands', () => {
    const place = responseChartPlace(RESPONSE);
    for (const hz of [10, 31.5, 100, 1000])
      expect(place.frequencyAt(place.at([hz, 80]).x)).toBeCloseTo(hz, 6);
    expect(place.frequencyAt(-50)).toBe(10);
    expect(place.frequencyAt(1e4)).toBeCloseTo(1000, 9);
  });

  it('stands with no curve at all', () => {
    const scene = responseChart({
      ...RESPONSE,
      axis: null,
      curves: [],
      limits: [],
      zones: [],
      marks: [],
      band: null,
      assumptions: '',
    });
    expect(scene.layers.map(({ id }) => id)).toEqual(['rules', 'frame', 'labels']);
  });
});

describe('timeChart', () => {
  const step = {
    title: 'Step',
    description: 'A step that decays.',
    quantity: 'Pressure · Pa',
    fromMs: -10,
    toMs: 90,
    points: Array.from({ length: 101 }, (_, i): [number, number] => [
      i - 10,
      i < 10 ? 0 : Math.exp(-(i - 10) / 20),
    ]),
  };
  it('puts the instant of the step a tenth across and the highest value at its time', () => {
    const scene = timeChart(step, { widthPt: 400 });
    const [frame] = itemsOf(scene, 'frame');
    const xs = frame?.kind === 'polyline' ? frame.points.map(({ x }) => x) : [];
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    const [drawn] = itemsOf(scene, 'curves');
    const places = drawn?.kind === 'polyline' ? drawn.points : [];
    const top = places.reduce((best, each) => (each.y < best.y ? each : best));
    expect(top.x).toBeCloseTo(left + (right - left) / 10, 6);
  });
  it('stands with no points', () => {
    expect(itemsOf(timeChart({ ...step, points: [] }), 'curves')).toEqual([]);
  });
});

describe('laneChart', () => {
  it('places a task by its minutes', () => {
    const scene = laneChart({ ...LANES, lanes: LANES.lanes.slice(0, 1) }, { widthPt: 1001 });
    const bar = itemsOf(scene, 'lanes').find(({ key }) => key === 't2');
    const [corner, right] = bar?.kind === 'polyline' ? bar.points : [];
    const left = 1001 * 0.14;
    const ptPerMinute = (1000 - left) / 600;
    expect(corner?.x).toBeCloseTo(left + (622 - 480) * ptPerMinute, 6);
    expect((right?.x ?? 0) - (corner?.x ?? 0)).toBeCloseTo((748 - 622) * ptPerMinute, 6);
  });

  it('stacks tasks that overlap and keeps the others on one row', () => {
    const places = new Map(keyedPlaces(laneChart(LANES)).map(({ key, centre }) => [key, centre.y]));
    expect(places.get('t1')).toBe(places.get('t2'));
    expect(places.get('t6')).toBeGreaterThan(places.get('t5') ?? 0);
  });

  it('marks states without colour: solid, outline, dashed with hatching', () => {
    const lanes = itemsOf(laneChart(LANES), 'lanes');
    const fill = (key: string): string | null => {
      const bar = lanes.find((item) => item.key === key);
      return bar?.kind === 'polyline' ? bar.fill : null;
    };
    expect(fill('t2')).toBe('ink');
    expect(fill('t7')).toBe('sheet');
    expect(lanes.filter((item) => item.kind === 'hatch')).toHaveLength(2);
  });

  it('cuts a task at the edge of the day and leaves out what lies beyond', () => {
    const late = laneChart({ ...LANES, toMinute: 700 });
    expect(keyedPlaces(late).map(({ key }) => key)).toEqual(['t1', 't2', 't4']);
  });

  it('writes hours on both clocks', () => {
    expect([
      hourFigure(480, '24'),
      hourFigure(480, '12'),
      hourFigure(720, '12'),
      hourFigure(1500, '24'),
    ]).toEqual(['08', '8 am', '12 pm', '01']);
  });
});
