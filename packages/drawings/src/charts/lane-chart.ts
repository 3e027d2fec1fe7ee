// Bays over hours: who works on what. Solid = running, plain outline = planned, dashed and hatched = glue or coat
// setting with nobody needed, red = held, thin = done.
import { hatch, line, polygon, text } from '../scene/items.ts';
import type { Ink, StrokeRole } from '../scene/pens.ts';
import type { Layer, Scene, SceneItem } from '../scene/scene.ts';
import { rectangle, spot } from '../scene/spot.ts';
import { shortenText, textWidthPt } from '../text/text-width.ts';

export type LaneTaskState = 'done' | 'running' | 'planned' | 'setting' | 'held';

export type LaneTask = {
  readonly key: string;
  readonly name: string;
  /** `Ilves · 0:48 of 2:00`, `waits for part: 80 A fuse holder`. */
  readonly note: string;
  /** Minutes since midnight of the first day shown. */
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly state: LaneTaskState;
};

export type Lane = {
  readonly name: string;
  /** `Merle estate · 2414`. */
  readonly caption: string;
  readonly tasks: readonly LaneTask[];
};

export type LaneChartInput = {
  readonly title: string;
  readonly description: string;
  readonly fromMinute: number;
  readonly toMinute: number;
  /** Null = not today. */
  readonly nowMinute: number | null;
  readonly clock: '24' | '12';
  readonly lanes: readonly Lane[];
};

export type LaneView = { readonly widthPt: number; readonly textPt: number; readonly taskHeightPt: number };

const LANE_VIEW: LaneView = { widthPt: 1080, textPt: 12, taskHeightPt: 54 };
const NAMES_SHARE = 0.14; // of the width, for the bays' names
const TASK_GAP_PT = 12;
const HOUR_MINUTES = 60;

type Grid = {
  readonly view: LaneView;
  readonly left: number;
  readonly top: number;
  readonly x: (minute: number) => number;
};

export function laneChart(input: LaneChartInput, partial: Partial<LaneView> = {}): Scene {
  const view = { ...LANE_VIEW, ...partial };
  const left = Math.max(view.widthPt * NAMES_SHARE, view.textPt * 9);
  const top = view.textPt * 2.2;
  const spanMinutes = Math.max(input.toMinute - input.fromMinute, 1);
  const x = (minute: number): number =>
    left + ((view.widthPt - left - 1) * (minute - input.fromMinute)) / spanMinutes;
  const grid: Grid = { view, left, top, x };
  let y = top;
  const drawn = input.lanes.map((lane) => {
    const rows = taskRows(lane.tasks);
    const heightPt = Math.max(rows.length, 1) * (view.taskHeightPt + TASK_GAP_PT) + TASK_GAP_PT;
    const items = laneItems(lane, rows, y, heightPt, grid, input);
    y += heightPt;
    return items;
  });
  const layers: Layer[] = [
    { id: 'hours', items: hourItems(input, grid, y) },
    { id: 'lanes', items: [...drawn.flat(), line(spot(0, y), spot(view.widthPt, y), 'frame')] },
    { id: 'now', items: nowItems(input, grid, y) },
  ];
  return {
    title: input.title,
    description: input.description,
    widthPt: view.widthPt,
    heightPt: y + 2,
    world: null,
    scaleLabel: null,
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

/** Tasks that overlap in time go into rows of their own; ties by key. */
function taskRows(tasks: readonly LaneTask[]): readonly (readonly LaneTask[])[] {
  const rows: LaneTask[][] = [];
  const inOrder = [...tasks].sort((a, b) => a.fromMinute - b.fromMinute || a.key.localeCompare(b.key, 'en'));
  for (const task of inOrder) {
    const free = rows.find((row) => (row.at(-1)?.toMinute ?? Number.NEGATIVE_INFINITY) <= task.fromMinute);
    if (free === undefined) rows.push([task]);
    else free.push(task);
  }
  return rows;
}

function laneItems(
  lane: Lane,
  rows: readonly (readonly LaneTask[])[],
  y: number,
  heightPt: number,
  grid: Grid,
  input: LaneChartInput,
): SceneItem[] {
  const { view, left } = grid;
  const roomPt = left - 24;
  return [
    line(spot(0, y), spot(view.widthPt, y), 'frame'),
    line(spot(left, y), spot(left, y + heightPt), 'grid'),
    text(
      spot(12, y + TASK_GAP_PT + view.textPt * 1.1),
      shortenText(lane.name, 'semibold', view.textPt * 1.2, roomPt),
      {
        sizePt: view.textPt * 1.2,
        face: 'semibold',
      },
    ),
    text(
      spot(12, y + TASK_GAP_PT + view.textPt * 2.6),
      shortenText(lane.caption, 'condensed', view.textPt * 0.9, roomPt),
      {
        sizePt: view.textPt * 0.9,
        face: 'condensed',
        ink: 'ink-2',
      },
    ),
    ...rows.flatMap((row, index) => {
      const top = y + TASK_GAP_PT + index * (view.taskHeightPt + TASK_GAP_PT);
      return row.flatMap((task) => taskItems(task, top, grid, input));
    }),
  ];
}

type TaskManner = { readonly stroke: StrokeRole; readonly fill: Ink; readonly name: Ink; readonly note: Ink };

const MANNERS: Readonly<Record<LaneTaskState, TaskManner>> = {
  done: { stroke: 'hidden', fill: 'sheet', name: 'ink-2', note: 'ink-2' },
  running: { stroke: 'outline', fill: 'ink', name: 'sheet', note: 'sheet' },
  planned: { stroke: 'outline', fill: 'sheet', name: 'ink', note: 'ink-2' },
  setting: { stroke: 'setting', fill: 'sheet', name: 'ink', note: 'ink-2' },
  held: { stroke: 'pencil', fill: 'sheet', name: 'pencil', note: 'pencil' },
};

const INSET_PT = 8;

function taskItems(task: LaneTask, top: number, grid: Grid, input: LaneChartInput): SceneItem[] {
  const { view, x } = grid;
  const from = x(Math.max(task.fromMinute, input.fromMinute));
  const to = x(Math.min(task.toMinute, input.toMinute));
  if (to <= from) return [];
  const manner = MANNERS[task.state];
  const ring = rectangle(from, top, to - from, view.taskHeightPt);
  const stroke =
    task.state === 'done' ? ({ role: 'thin', dashPt: null, widthPt: null } as const) : manner.stroke;
  const roomPt = to - from - 2 * INSET_PT;
  const name = shortenText(task.name, 'semibold', view.textPt, roomPt);
  const note = shortenText(task.note, 'regular', view.textPt * 0.88, roomPt);
  const backed = task.state === 'setting';
  return [
    polygon(ring, stroke, manner.fill, task.key),
    ...(backed ? [hatch([ring], 'setting')] : []),
    text(spot(from + INSET_PT, top + view.textPt * 1.5), name, {
      sizePt: view.textPt,
      face: 'semibold',
      ink: manner.name,
      backed,
    }),
    text(spot(from + INSET_PT, top + view.textPt * 2.8), note, {
      sizePt: view.textPt * 0.88,
      ink: manner.note,
      backed,
    }),
  ];
}

function hourItems(input: LaneChartInput, { view, top, x }: Grid, bottom: number): SceneItem[] {
  const first = Math.ceil(input.fromMinute / HOUR_MINUTES) * HOUR_MINUTES;
  const labelPt = textWidthPt('00 pm', 'mono', view.textPt * 0.95);
  const hourPt = x(first + HOUR_MINUTES) - x(first);
  const every = Math.max(1, Math.ceil((labelPt + 6) / Math.max(hourPt, 0.1)));
  const items: SceneItem[] = [];
  for (let minute = first; minute <= input.toMinute; minute += HOUR_MINUTES) {
    const at = x(minute);
    items.push(line(spot(at, top), spot(at, bottom), 'grid'));
    if (((minute - first) / HOUR_MINUTES) % every !== 0 || at + labelPt > view.widthPt) continue;
    items.push(
      text(spot(at, top - 6), hourFigure(minute, input.clock), {
        sizePt: view.textPt * 0.95,
        face: 'mono',
        ink: 'ink-2',
      }),
    );
  }
  return items;
}

/** `08` or `8 am`; hours past midnight start again. */
export function hourFigure(minute: number, clock: LaneChartInput['clock']): string {
  const hour = ((Math.floor(minute / HOUR_MINUTES) % 24) + 24) % 24;
  if (clock === '24') return String(hour).padStart(2, '0');
  return `${hour % 12 === 0 ? 12 : hour % 12} ${hour < 12 ? 'am' : 'pm'}`;
}

function nowItems(
  { nowMinute, fromMinute, toMinute }: LaneChartInput,
  { top, x }: Grid,
  bottom: number,
): SceneItem[] {
  if (nowMinute === null || nowMinute < fromMinute || nowMinute > toMinute) return [];
  return [
    line(spot(x(nowMinute), top), spot(x(nowMinute), bottom), {
      role: 'construction',
      dashPt: null,
      widthPt: 1.8,
    }),
  ];
}
