// One panel as the bench needs it: outline, holes by centre and diameter, overall sizes, bevels, joints, grain.
import type { PointMm } from '@gusset/contracts/geometry';
import type { Panel, PanelEdge, PanelHole } from '@gusset/contracts/panel';
import { readable } from '../scene/annotations.ts';
import { circle, line, polygon, text } from '../scene/items.ts';
import type { Layer, LeaderItem, Scene, SceneItem } from '../scene/scene.ts';
import {
  add,
  between,
  direction,
  doubleArea,
  type Extent,
  extentOf,
  leftOf,
  type Spot,
  spot,
  times,
} from '../scene/spot.ts';
import { textWidthPt } from '../text/text-width.ts';
import { type DrawingView, fitWorld, withDefaults } from './drawing-view.ts';
import { type Ground, noteElbow, ringSides } from './note-places.ts';
import { type DrawnDimension, dimensionOf } from './placed-dimensions.ts';
import { roundedRectangle } from './rounded-rectangle.ts';

const MARGIN_PT = 66;
const ROW_PT = 24;
const EDGE_NOTE_PT = 9; // edge notes stand this far inside the outline

export function panelDrawing(panel: Panel, partial: Partial<DrawingView> = {}): Scene {
  const view = withDefaults(partial);
  const margin = MARGIN_PT + view.textPt;
  const fitted = fitWorld(panel.outline, view, {
    left: margin + ROW_PT,
    top: margin,
    right: margin,
    bottom: margin + ROW_PT,
  });
  const { place, frame } = fitted;
  const ring = panel.outline.map(place);
  const rims = panel.holes.map((hole) => rimOf(hole, place, frame.ptPerMm));
  const ground: Ground = {
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    edges: ringSides([ring, ...rims]),
    taken: takenRound(ring, view),
  };
  const layers: Layer[] = [
    { id: 'outline', items: [polygon(ring, { role: 'outline', dashPt: null, widthPt: 1.8 }, 'sheet')] },
    {
      id: 'holes',
      items: panel.holes.flatMap((hole) => holeItems(hole, place, frame.ptPerMm)),
    },
    { id: 'notes', items: panel.holes.map((hole) => holeNote(hole, place, frame.ptPerMm, view, ground)) },
    { id: 'edges', items: edgeNotes(panel.edges, ring, view) },
    { id: 'caption', items: captionItems(panel, ring, view) },
    { id: 'dimensions', items: panelDimensions(panel).map((drawn) => dimensionOf(drawn, place, view)) },
  ];
  return {
    title: `${panel.mark} ${panel.name}`,
    description: describe(panel, view),
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    world: frame,
    scaleLabel: fitted.scaleLabel,
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

type Place = (point: PointMm) => Spot;

function describe(
  { mark, name, quantity, lengthMm, widthMm, thicknessMm, holes }: Panel,
  view: DrawingView,
): string {
  const size = [lengthMm, widthMm, thicknessMm].map(view.formatLength).join(' × ');
  const cutouts =
    holes.length === 0 ? 'no cut-outs' : holes.length === 1 ? '1 cut-out' : `${holes.length} cut-outs`;
  return `Panel ${mark}, ${name}: ${quantity} off, ${size}, ${cutouts}. Larger face towards the reader.`;
}

/** Overall length and width, then a chain of hole centres from the lower left corner along both edges. */
function panelDimensions({ lengthMm, widthMm, holes }: Panel): DrawnDimension[] {
  const at = (xMm: number, yMm: number): PointMm => ({ xMm, yMm });
  const plain = { text: null, key: null, failing: false } as const;
  const xs = distinct(holes.map(({ centreXMm }) => centreXMm));
  const ys = distinct(holes.map(({ centreYMm }) => centreYMm));
  const chainX = xs.length > 0;
  const chainY = ys.length > 0;
  return [
    { ...plain, from: at(0, 0), to: at(lengthMm, 0), offsetPt: chainX ? -(28 + ROW_PT) : -28 },
    { ...plain, from: at(0, 0), to: at(0, widthMm), offsetPt: chainY ? 28 + ROW_PT : 28 },
    ...chain(xs).map(([from, to]) => ({ ...plain, from: at(from, 0), to: at(to, 0), offsetPt: -28 })),
    ...chain(ys).map(([from, to]) => ({ ...plain, from: at(0, from), to: at(0, to), offsetPt: 28 })),
  ];
}

const SAME_LINE_MM = 0.05; // half of the smallest figure shown

const distinct = (values: readonly number[]): number[] =>
  [...values]
    .sort((a, b) => a - b)
    .filter((value, index, all) => index === 0 || value - (all[index - 1] ?? 0) > SAME_LINE_MM);

const chain = (stops: readonly number[]): [number, number][] =>
  stops.map((stop, index) => [index === 0 ? 0 : (stops[index - 1] ?? 0), stop]);

/** Half of the hole's size along both edges, points. */
function halfSize(hole: PanelHole, ptPerMm: number): readonly [number, number] {
  const [widthMm, heightMm] =
    hole.shape === 'circle' ? [hole.diameterMm, hole.diameterMm] : [hole.widthMm, hole.heightMm];
  return [(widthMm / 2) * ptPerMm, (heightMm / 2) * ptPerMm];
}

function holeItems(hole: PanelHole, place: Place, ptPerMm: number): SceneItem[] {
  const centre = place({ xMm: hole.centreXMm, yMm: hole.centreYMm });
  const stroke = hole.depthMm === null ? 'outline' : 'hidden';
  const [halfX, halfY] = halfSize(hole, ptPerMm);
  const edge =
    hole.shape === 'circle'
      ? circle(centre, halfX, stroke, 'sheet')
      : polygon(rimOf(hole, place, ptPerMm), stroke, 'sheet');
  const axis = (reachX: number, reachY: number): SceneItem => ({
    kind: 'centre-line',
    from: spot(centre.x - reachX, centre.y - reachY),
    to: spot(centre.x + reachX, centre.y + reachY),
    key: null,
  });
  return [edge, axis(halfX, 0), axis(0, halfY)];
}

const UP_RIGHT_RAD = -Math.PI / 4;

/** Purpose and size, led out of the rim; drawn after all holes so that none covers it. */
function holeNote(
  hole: PanelHole,
  place: Place,
  ptPerMm: number,
  view: DrawingView,
  ground: Ground,
): LeaderItem {
  const centre = place({ xMm: hole.centreXMm, yMm: hole.centreYMm });
  const [halfX, halfY] = halfSize(hole, ptPerMm);
  const rim = hole.shape === 'circle' ? Math.SQRT1_2 : 1;
  const target = spot(centre.x + halfX * rim, centre.y - halfY * rim);
  const lines = holeLines(hole, view);
  const sizePt = view.textPt * 0.85;
  const elbow = noteElbow({ target, towardsRad: UP_RIGHT_RAD, lines, sizePt }, ground);
  return { kind: 'leader', target, elbow, lines, sizePt, tone: 'plain', key: null };
}

function rimOf(hole: PanelHole, place: Place, ptPerMm: number): readonly Spot[] {
  const centre = place({ xMm: hole.centreXMm, yMm: hole.centreYMm });
  const [widthMm, heightMm] =
    hole.shape === 'circle' ? [hole.diameterMm, hole.diameterMm] : [hole.widthMm, hole.heightMm];
  const radiusMm = hole.shape === 'circle' ? hole.diameterMm / 2 : hole.cornerRadiusMm;
  return roundedRectangle(centre, widthMm * ptPerMm, heightMm * ptPerMm, radiusMm * ptPerMm);
}

function holeLines(hole: PanelHole, { formatLength }: DrawingView): string[] {
  const size =
    hole.shape === 'circle'
      ? `⌀ ${formatLength(hole.diameterMm)}`
      : `${formatLength(hole.widthMm)} × ${formatLength(hole.heightMm)}`;
  const depth = hole.depthMm === null ? '' : `, ${formatLength(hole.depthMm)} deep`;
  return [hole.purpose, `${size}${depth}`].filter((words) => words !== '');
}

const DEGREES = 180 / Math.PI;

/** `7.5° bevel, mitre` along each edge that needs more than a square cut and glue. */
function edgeNotes(edges: readonly PanelEdge[], ring: readonly Spot[], view: DrawingView): SceneItem[] {
  const clockwise = doubleArea(ring) > 0;
  return edges.flatMap((edge, index): SceneItem[] => {
    const from = ring[index];
    const to = ring[(index + 1) % ring.length];
    const words = edgeWords(edge);
    if (from === undefined || to === undefined || words === '') return [];
    const along = direction(from, to);
    const inward = times(leftOf(along), clockwise ? -1 : 1);
    const reading = readable(along);
    const turnRad = Math.atan2(reading.y, reading.x);
    const sizePt = view.textPt * 0.8;
    const above = leftOf(reading);
    const facesUp = above.x * inward.x + above.y * inward.y > 0;
    const lift = times(inward, facesUp ? EDGE_NOTE_PT - 4 : EDGE_NOTE_PT - 4 + sizePt * 0.7);
    const at = add(between(from, to, 0.5), lift);
    return [text(at, words, { sizePt, face: 'condensed', anchor: 'middle', ink: 'ink-2', turnRad })];
  });
}

function edgeWords({ bevelRad, joint, runsThrough }: PanelEdge): string {
  const degrees = Math.round(bevelRad * DEGREES * 10) / 10;
  const bevel = degrees === 0 ? [] : [`bevel ${degrees}°`];
  const joined = joint === 'rabbet' || joint === 'dado' || joint === 'mitre' ? [joint] : [];
  const through = runsThrough ? ['runs through'] : [];
  return [...bevel, ...joined, ...through].join(' · ');
}

const ARROW_PT = 26;
const HEAD_PT = 6;
const CAPTION_LIFT_PT = 16;
const CAPTION_SHARE = 0.85; // of the figures' size

/** Above the outline: how many, how thick, and a double-ended arrow along the grain. */
function captionItems(
  { grain, thicknessMm, quantity }: Panel,
  ring: readonly Spot[],
  view: DrawingView,
): SceneItem[] {
  const extent = extentOf(ring);
  if (extent === null) return [];
  const sizePt = view.textPt * CAPTION_SHARE;
  const y = extent.top - CAPTION_LIFT_PT;
  const words = `${quantity} off · ${view.formatLength(thicknessMm)} thick`;
  const arrowPt = grain === 'length' ? 2 * ARROW_PT : 8;
  const grainPt = grain === 'none' ? 0 : textWidthPt('grain', 'condensed', sizePt) + arrowPt + 20;
  const crowded = textWidthPt(words, 'mono', sizePt) + grainPt > extent.right - extent.left;
  const noteY = crowded && grain !== 'none' ? y - sizePt * 1.4 : y; // a narrow panel: one over the other
  const note = text(spot(extent.left, noteY), words, { sizePt, face: 'mono', ink: 'ink-2' });
  if (grain === 'none') return [note];
  const along = grain === 'length' ? spot(1, 0) : spot(0, -1);
  const at = spot(extent.right - arrowPt / 2, y - sizePt * 0.35);
  const reach = grain === 'length' ? ARROW_PT : ARROW_PT / 2;
  const [tail, tip] = [add(at, times(along, -reach)), add(at, times(along, reach))];
  const label = text(spot(extent.right - arrowPt - 8, y), 'grain', {
    sizePt,
    face: 'condensed',
    anchor: 'end',
    ink: 'ink-2',
  });
  return [
    note,
    label,
    line(tail, tip, 'thin'),
    ...arrowHead(tip, along),
    ...arrowHead(tail, times(along, -1)),
  ];
}

/** Where captions and dimensions stand round the panel: no place for notes. */
function takenRound(ring: readonly Spot[], view: DrawingView): Extent[] {
  const extent = extentOf(ring);
  if (extent === null) return [];
  const { left, top, right, bottom } = extent;
  const rowsPt = 28 + ROW_PT + view.textPt;
  return [
    { left, right, top: top - CAPTION_LIFT_PT - view.textPt * 2.2, bottom: top },
    { left, right, top: bottom, bottom: bottom + rowsPt },
    { left: left - rowsPt, right: left, top, bottom },
  ];
}

function arrowHead(tip: Spot, along: Spot): SceneItem[] {
  const side = times(leftOf(along), HEAD_PT * 0.45);
  const foot = add(tip, times(along, -HEAD_PT));
  return [line(tip, add(foot, side), 'thin'), line(tip, add(foot, times(side, -1)), 'thin')];
}
