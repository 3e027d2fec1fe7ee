// A sheet of material with the panels laid out on it: what to cut, in which order, and what is left.
import { circle, hatch, line, polygon, text } from '../scene/items.ts';
import type { Ink } from '../scene/pens.ts';
import type { Layer, Scene, SceneItem } from '../scene/scene.ts';
import { rectangle, type Spot, spot } from '../scene/spot.ts';
import { CAP_HEIGHT, textWidthPt } from '../text/text-width.ts';
import { type DrawingView, fitWorld, withDefaults } from './drawing-view.ts';
import { dimensionOf } from './placed-dimensions.ts';

/** Lower left corner and size in full-sheet coordinates, as laid (a turned panel has its sizes swapped already). */
export type SheetRectangle = {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
};

export type SheetPlacement = SheetRectangle & {
  readonly key: string;
  readonly mark: string;
  readonly turned: boolean;
};

export type SheetCut = {
  readonly fromXMm: number;
  readonly fromYMm: number;
  readonly toXMm: number;
  readonly toYMm: number;
};

export type SheetMapInput = {
  readonly title: string;
  readonly description: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly trimMm: number;
  /** Which way the grain runs; null = none. */
  readonly grain: 'x' | 'y' | null;
  readonly placements: readonly SheetPlacement[];
  /** Worth keeping. */
  readonly offcuts: readonly SheetRectangle[];
  /** In the order they are to be made; may be empty. */
  readonly cuts: readonly SheetCut[];
};

const MARGIN_PT = 34;
const INSET_PT = 4; // figures stand off the panel's edge
const SMALLEST_TEXT_PT = 6;

export function sheetMap(input: SheetMapInput, partial: Partial<DrawingView> = {}): Scene {
  const view = withDefaults(partial);
  const margin = MARGIN_PT + view.textPt;
  const corners = [
    { xMm: 0, yMm: 0 },
    { xMm: input.widthMm, yMm: input.heightMm },
  ];
  const fitted = fitWorld(corners, view, { left: margin, top: 14, right: 14, bottom: margin });
  const { place, frame } = fitted;
  const boxOf = (area: SheetRectangle): SheetBox => placedBox(area, place, frame.ptPerMm);
  const whole = boxOf({ xMm: 0, yMm: 0, widthMm: input.widthMm, heightMm: input.heightMm });
  const layers: Layer[] = [
    {
      id: 'sheet',
      items: [polygon(ringOf(whole), { role: 'outline', dashPt: null, widthPt: 1.8 }, 'sheet')],
    },
    { id: 'offcuts', items: input.offcuts.flatMap((offcut) => offcutItems(offcut, boxOf(offcut), view)) },
    { id: 'panels', items: input.placements.flatMap((panel) => panelItems(panel, boxOf(panel), view)) },
    { id: 'trim', items: trimItems(input, boxOf) },
    {
      id: 'cuts',
      items: input.cuts.flatMap((cut, index) => cutItems(cut, index, place, view.textPt * NUMBER_SHARE)),
    },
    { id: 'grain', items: grainItems(input.grain, whole, view) },
    { id: 'dimensions', items: sheetDimensions(input, view, place) },
  ];
  return {
    title: input.title,
    description: input.description,
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    world: frame,
    scaleLabel: fitted.scaleLabel,
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

type SheetBox = {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
};
type Place = (point: { xMm: number; yMm: number }) => Spot;

function placedBox({ xMm, yMm, widthMm, heightMm }: SheetRectangle, place: Place, ptPerMm: number): SheetBox {
  const { x: left, y: top } = place({ xMm, yMm: yMm + heightMm });
  return { left, top, width: widthMm * ptPerMm, height: heightMm * ptPerMm };
}

const ringOf = ({ left, top, width, height }: SheetBox): readonly Spot[] =>
  rectangle(left, top, width, height);

const STRIP_SHARE = 3.6; // lower than this many lines of figures: everything goes on one line

/** Mark in the middle; length along the bottom edge, width up the left one, where they fit. */
function panelItems(panel: SheetPlacement, box: SheetBox, view: DrawingView): SceneItem[] {
  const outline = polygon(ringOf(box), { role: 'outline', dashPt: null, widthPt: 1.2 }, 'sheet', panel.key);
  if (Math.min(box.width, box.height) < view.textPt * STRIP_SHARE)
    return [outline, ...stripFigures(panel, box, view)];
  const markPt = fitText(panel.mark, box.width * 0.6, box.height * 0.5, view.textPt * 1.5);
  const mark = text(
    spot(box.left + box.width / 2, box.top + box.height / 2 + (markPt * CAP_HEIGHT) / 2),
    panel.turned ? `${panel.mark}↻` : panel.mark,
    { sizePt: markPt, face: 'semibold', anchor: 'middle' },
  );
  return [outline, ...(markPt < SMALLEST_TEXT_PT ? [] : [mark]), ...sizeFigures(panel, box, view)];
}

/** `G1  900 × 60` along the longer side. */
function stripFigures(panel: SheetPlacement, box: SheetBox, view: DrawingView): SceneItem[] {
  const words = `${panel.mark}  ${view.formatLength(panel.widthMm)} × ${view.formatLength(panel.heightMm)}`;
  return lengthwise(words, box, view, 'ink');
}

/** Words along the longer side of a rectangle, as large as fits; none where they would be too small to read. */
function lengthwise(words: string, box: SheetBox, view: DrawingView, ink: Ink): SceneItem[] {
  const upright = box.height > box.width;
  const [longPt, shortPt] = upright ? [box.height, box.width] : [box.width, box.height];
  const sizePt = fitText(words, longPt * 0.85, shortPt * 0.7, view.textPt);
  if (sizePt < SMALLEST_TEXT_PT) return [];
  const shift = (sizePt * CAP_HEIGHT) / 2;
  const middle = spot(box.left + box.width / 2, box.top + box.height / 2);
  const at = upright ? spot(middle.x + shift, middle.y) : spot(middle.x, middle.y + shift);
  const turnRad = upright ? -Math.PI / 2 : 0;
  return [text(at, words, { sizePt, face: 'mono', anchor: 'middle', ink, turnRad, backed: true })];
}

function sizeFigures(area: SheetRectangle, box: SheetBox, view: DrawingView): SceneItem[] {
  const across = view.formatLength(area.widthMm);
  const up = view.formatLength(area.heightMm);
  const items: SceneItem[] = [];
  const acrossPt = fitText(across, box.width - 2 * INSET_PT, box.height / 3, view.textPt);
  const upPt = fitText(up, box.height - 2 * INSET_PT, box.width / 3, view.textPt);
  if (acrossPt >= SMALLEST_TEXT_PT) {
    const at = spot(box.left + box.width / 2, box.top + box.height - INSET_PT);
    items.push(text(at, across, { sizePt: acrossPt, face: 'mono', anchor: 'middle' }));
  }
  if (upPt >= SMALLEST_TEXT_PT) {
    const at = spot(box.left + INSET_PT + upPt * CAP_HEIGHT, box.top + box.height / 2);
    items.push(text(at, up, { sizePt: upPt, face: 'mono', anchor: 'middle', turnRad: -Math.PI / 2 }));
  }
  return items;
}

/** Type size at which the words fit, at most `wantedPt`. */
function fitText(words: string, widthPt: number, heightPt: number, wantedPt: number): number {
  const widthAtOne = textWidthPt(words, 'mono', 1);
  const byWidth = widthAtOne === 0 ? wantedPt : widthPt / widthAtOne;
  return Math.max(0, Math.min(wantedPt, byWidth, heightPt / CAP_HEIGHT));
}

function offcutItems(area: SheetRectangle, box: SheetBox, view: DrawingView): SceneItem[] {
  const words = `${view.formatLength(area.widthMm)} × ${view.formatLength(area.heightMm)}`;
  return [
    hatch([ringOf(box)], 'offcut'),
    polygon(ringOf(box), 'setting'),
    ...lengthwise(words, box, view, 'ink-2'),
  ];
}

function trimItems(
  { widthMm, heightMm, trimMm }: SheetMapInput,
  boxOf: (area: SheetRectangle) => SheetBox,
): SceneItem[] {
  if (trimMm <= 0) return [];
  const inside = { xMm: trimMm, yMm: trimMm, widthMm: widthMm - 2 * trimMm, heightMm: heightMm - 2 * trimMm };
  return [polygon(ringOf(boxOf(inside)), 'hidden')];
}

const NUMBER_SHARE = 0.68; // of the figures' size

/** Cut lines in construction blue, each with its number at the end where the saw goes in. */
function cutItems(cut: SheetCut, index: number, place: Place, numberPt: number): SceneItem[] {
  const from = place({ xMm: cut.fromXMm, yMm: cut.fromYMm });
  const to = place({ xMm: cut.toXMm, yMm: cut.toYMm });
  return [
    line(from, to, { role: 'construction', dashPt: [6, 3], widthPt: 1 }),
    circle(from, numberPt * 0.9, { role: 'construction', dashPt: null, widthPt: 0.9 }, 'sheet'),
    text(spot(from.x, from.y + (numberPt * CAP_HEIGHT) / 2), String(index + 1), {
      sizePt: numberPt,
      face: 'mono',
      anchor: 'middle',
      ink: 'mark',
    }),
  ];
}

function grainItems(grain: SheetMapInput['grain'], whole: SheetBox, view: DrawingView): SceneItem[] {
  if (grain === null) return [];
  const words = grain === 'x' ? 'grain ↔' : 'grain ↕';
  const at = spot(whole.left, whole.top - 4);
  return [text(at, words, { sizePt: Math.min(view.textPt * 0.8, 10), face: 'condensed', ink: 'ink-2' })];
}

function sheetDimensions(input: SheetMapInput, view: DrawingView, place: Place): SceneItem[] {
  const plain = { text: null, key: null, failing: false } as const;
  const corner = { xMm: 0, yMm: 0 };
  return [
    dimensionOf({ ...plain, from: corner, to: { xMm: input.widthMm, yMm: 0 }, offsetPt: -22 }, place, view),
    dimensionOf({ ...plain, from: corner, to: { xMm: 0, yMm: input.heightMm }, offsetPt: 22 }, place, view),
  ];
}
