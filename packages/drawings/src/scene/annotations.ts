// Dimensions, leaders, balloons, centre lines and breaks drawn out as plain items.
import { CAP_HEIGHT, textWidthPt } from '../text/text-width.ts';
import { circle, line, polyline, text } from './items.ts';
import type { Ink, Stroke } from './pens.ts';
import type {
  BalloonItem,
  BreakItem,
  CentreLineItem,
  CircleItem,
  DimensionItem,
  LeaderItem,
  LeaderTone,
  LineItem,
  PolylineItem,
  TextItem,
} from './scene.ts';
import { add, between, direction, distance, leftOf, type Spot, spot, times } from './spot.ts';

/** Items that need no more drawing out. */
export type PlainItem = LineItem | PolylineItem | CircleItem | TextItem;

const EXTENSION_GAP_PT = 3; // between the measured point and its extension line
const EXTENSION_OVERRUN_PT = 4; // past the dimension line
const TICK_HALF_PT = 3.4; // half a 45° tick, along each axis
const FIGURE_LIFT_PT = 3; // between the dimension line and its figure
const BALLOON_SHARE = 0.95; // radius of a balloon on a dimension line, of its type size
const OVERHANG_PT = 3; // dimension line past its ticks
/** Level part of a leader before its words. */
export const LEADER_SHELF_PT = 10;
export const LEADER_WORDS_GAP_PT = 4;

const TONES: Readonly<Record<DimensionItem['tone'], { stroke: Stroke; ink: Ink }>> = {
  plain: { stroke: { role: 'dimension', dashPt: null, widthPt: null }, ink: 'ink' },
  active: { stroke: { role: 'construction', dashPt: null, widthPt: 1.6 }, ink: 'mark' },
  failing: { stroke: { role: 'pencil', dashPt: null, widthPt: null }, ink: 'pencil' },
};

export function dimensionItems(item: DimensionItem): readonly PlainItem[] {
  const along = direction(item.from, item.to);
  const away = times(leftOf(along), item.offsetPt);
  const from = add(item.from, away);
  const to = add(item.to, away);
  const { stroke } = TONES[item.tone];
  return [
    ...extensionLine(item.from, from, stroke),
    ...extensionLine(item.to, to, stroke),
    line(add(from, times(along, -OVERHANG_PT)), add(to, times(along, OVERHANG_PT)), stroke),
    tick(from, along, stroke),
    tick(to, along, stroke),
    ...figure(item, from, to),
  ];
}

function extensionLine(measured: Spot, onLine: Spot, stroke: Stroke): LineItem[] {
  const length = distance(measured, onLine);
  if (length <= EXTENSION_GAP_PT) return [];
  const out = direction(measured, onLine);
  const start = add(measured, times(out, EXTENSION_GAP_PT));
  return [line(start, add(onLine, times(out, EXTENSION_OVERRUN_PT)), { ...stroke, widthPt: 0.5 })];
}

/** Oblique stroke at 45° to the dimension line, rising to the reader's right. */
function tick(at: Spot, along: Spot, stroke: Stroke): LineItem {
  const reading = readable(along);
  const slant = times(add(reading, leftOf(reading)), TICK_HALF_PT);
  return line(add(at, times(slant, -1)), add(at, slant), { ...stroke, widthPt: 1.1 });
}

/** The direction or its opposite, so that words along it stand upright or read from the right. */
export function readable(along: Spot): Spot {
  const STEEP = 1e-6; // points off plumb that still count as plumb
  const backwards = along.x < -STEEP || (Math.abs(along.x) <= STEEP && along.y > 0);
  return backwards ? times(along, -1) : along;
}

function figure(item: DimensionItem, from: Spot, to: Spot): PlainItem[] {
  const reading = readable(direction(from, to));
  const turnRad = Math.atan2(reading.y, reading.x);
  const { ink } = TONES[item.tone];
  const middle = between(from, to, 0.5);
  const widthPt = textWidthPt(item.text, 'mono', item.sizePt);
  const manner = { sizePt: item.sizePt, face: 'mono', ink, turnRad, key: item.key } as const;
  if (item.letter !== null) {
    const radiusPt = item.sizePt * BALLOON_SHARE;
    const words = add(
      add(middle, times(reading, radiusPt + 4)),
      times(leftOf(reading), -item.sizePt * CAP_HEIGHT * 0.5),
    );
    return [
      ...balloonShapes(middle, item.letter, radiusPt, item.tone === 'active'),
      ...(item.text === '' ? [] : [text(words, item.text, { ...manner, anchor: 'start', backed: true })]),
    ];
  }
  const lift = times(leftOf(reading), FIGURE_LIFT_PT);
  if (item.text === '') return [];
  if (widthPt <= distance(from, to)) {
    return [text(add(middle, lift), item.text, { ...manner, anchor: 'middle', backed: true })];
  }
  // Too short for its figure: the line runs on past the end that lies further in reading direction.
  const end = reading.x * (to.x - from.x) + reading.y * (to.y - from.y) >= 0 ? to : from;
  const start = add(end, times(reading, TICK_HALF_PT + 4));
  return [
    line(end, add(start, times(reading, widthPt)), TONES[item.tone].stroke),
    text(add(start, lift), item.text, { ...manner, anchor: 'start' }),
  ];
}

const LEADER_TONES: Readonly<Record<LeaderTone, { ink: Ink; stroke: Stroke }>> = {
  plain: { ink: 'ink', stroke: { role: 'dimension', dashPt: null, widthPt: null } },
  'worked-out': { ink: 'mark', stroke: { role: 'construction', dashPt: null, widthPt: 0.8 } },
  check: { ink: 'brass', stroke: { role: 'brass', dashPt: null, widthPt: 0.8 } },
  failing: { ink: 'pencil', stroke: { role: 'pencil', dashPt: null, widthPt: 0.8 } },
  pass: { ink: 'pass', stroke: { role: 'pass', dashPt: null, widthPt: 0.8 } },
};

/** Line from a dot at the target to a level shelf, with the words beyond it on the side away from the target. */
export function leaderItems(item: LeaderItem): readonly PlainItem[] {
  const { ink, stroke } = LEADER_TONES[item.tone];
  const side = item.elbow.x >= item.target.x ? 1 : -1;
  const shelf = spot(item.elbow.x + side * LEADER_SHELF_PT, item.elbow.y);
  const leading = item.sizePt * 1.25;
  const firstY = shelf.y + item.sizePt * CAP_HEIGHT * 0.5 - ((item.lines.length - 1) * leading) / 2;
  return [
    polyline([item.target, item.elbow, shelf], stroke),
    circle(item.target, 2, null, ink),
    ...item.lines.map((words, index) =>
      text(spot(shelf.x + side * LEADER_WORDS_GAP_PT, firstY + index * leading), words, {
        sizePt: item.sizePt,
        face: 'mono',
        ink,
        anchor: side === 1 ? 'start' : 'end',
        backed: true,
      }),
    ),
  ];
}

export function balloonItems(item: BalloonItem): readonly PlainItem[] {
  return balloonShapes(item.centre, item.letter, item.radiusPt, item.active);
}

function balloonShapes(centre: Spot, letter: string, radiusPt: number, active: boolean): PlainItem[] {
  const sizePt = letter.length > 1 ? radiusPt : radiusPt * 1.15;
  const baseline = spot(centre.x, centre.y + sizePt * CAP_HEIGHT * 0.5);
  return [
    circle(
      centre,
      radiusPt,
      { role: active ? 'construction' : 'thin', dashPt: [], widthPt: 1 },
      active ? 'mark' : 'sheet',
    ),
    text(baseline, letter, { sizePt, face: 'mono', anchor: 'middle', ink: active ? 'sheet' : 'ink' }),
  ];
}

const CENTRE_OVERRUN_PT = 6; // centre lines pass the edge they belong to

export function centreLineItems(item: CentreLineItem): readonly PlainItem[] {
  const out = times(direction(item.from, item.to), CENTRE_OVERRUN_PT);
  return [line(add(item.from, times(out, -1)), add(item.to, out), 'centre')];
}

const BREAK_ZIG_PT = 5;

export function breakItems(item: BreakItem): readonly PlainItem[] {
  const along = direction(item.from, item.to);
  const side = leftOf(along);
  const middle = between(item.from, item.to, 0.5);
  const zig = (alongPt: number, sidePt: number): Spot =>
    add(add(middle, times(along, alongPt)), times(side, sidePt));
  const points = [
    add(item.from, times(along, -OVERHANG_PT)),
    zig(-BREAK_ZIG_PT / 2, 0),
    zig(-BREAK_ZIG_PT / 4, BREAK_ZIG_PT),
    zig(BREAK_ZIG_PT / 4, -BREAK_ZIG_PT),
    zig(BREAK_ZIG_PT / 2, 0),
    add(item.to, times(along, OVERHANG_PT)),
  ];
  return [polyline(points, 'thin')];
}
