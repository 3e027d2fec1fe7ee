// The vehicle round a cargo space: walls with their hatched band, and what stands in the way.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { hatch, line, polygon, polyline, text } from '../scene/items.ts';
import type { LeaderItem, SceneItem, TextItem } from '../scene/scene.ts';
import { extentOf, middleOf, type Spot, spot } from '../scene/spot.ts';
import { CAP_HEIGHT, textWidthPt } from '../text/text-width.ts';
import type { DrawingView } from './drawing-view.ts';
import { type Ground, noteElbow } from './note-places.ts';
import { wallBand } from './wall-band.ts';

export type DrawnEdge = {
  readonly from: PointMm;
  readonly to: PointMm;
  /** `Seat back`, `Floor`. */
  readonly name: string;
  /** open = nothing there (the way in, or not surveyed). */
  readonly kind: 'rigid' | 'soft' | 'glass' | 'open';
};

export type DrawnObstruction = { readonly name: string; readonly outline: PolygonMm };

type Place = (point: PointMm) => Spot;

/** Solid edges with a hatched band outside, glass as a thin line, open edges not at all. */
export function wallItems(
  drawn: readonly DrawnEdge[],
  place: Place,
  bandPt: number,
): { readonly items: readonly SceneItem[]; readonly bands: readonly (readonly Spot[])[] } {
  const edges = drawn.map(({ from, to, kind }) => ({
    from: place(from),
    to: place(to),
    kind,
    solid: kind === 'rigid' || kind === 'soft',
  }));
  const quads = wallBand(edges, bandPt);
  const hatched = quads.flatMap((quad, index): SceneItem[] =>
    quad === null ? [] : [hatch([quad], edges[index]?.kind === 'soft' ? 'soft' : 'body')],
  );
  const bands = quads.filter((quad) => quad !== null);
  const outsides = bands.map((quad) => polyline(quad.slice(2), 'thin'));
  const insides = edges.flatMap(({ from, to, kind }): SceneItem[] => {
    if (kind === 'open') return [];
    return [line(from, to, kind === 'glass' ? { role: 'thin', dashPt: null, widthPt: 1 } : 'outline')];
  });
  return { items: [...hatched, ...outsides, ...insides], bands };
}

export type PlacedObstruction = {
  readonly name: string;
  readonly ring: readonly Spot[];
  readonly items: readonly SceneItem[];
};

export function placedObstruction({ name, outline }: DrawnObstruction, place: Place): PlacedObstruction {
  const ring = outline.map(place);
  return { name, ring, items: [polygon(ring, 'thin', 'sheet'), hatch([ring], 'obstruction')] };
}

const INSET_PT = 6;

/** The name in the middle of the thing, or led out where it is too small for it. */
export function obstructionName(
  name: string,
  ring: readonly Spot[],
  view: DrawingView,
  ground: Ground,
): TextItem | LeaderItem {
  const middle = middleOf(ring);
  const sizePt = view.textPt * 0.85;
  const extent = extentOf(ring);
  const widthPt = textWidthPt(name, 'condensed', sizePt) + INSET_PT;
  const roomy =
    extent !== null &&
    widthPt <= extent.right - extent.left &&
    sizePt + INSET_PT <= extent.bottom - extent.top;
  if (roomy) {
    const at = spot(middle.x, middle.y + (sizePt * CAP_HEIGHT) / 2);
    return text(at, name, { sizePt, face: 'condensed', anchor: 'middle', ink: 'ink-2', backed: true });
  }
  const lines = [name];
  const elbow = noteElbow({ target: middle, towardsRad: Math.PI / 3, lines, sizePt }, ground);
  return { kind: 'leader', target: middle, elbow, lines, sizePt, tone: 'plain', key: null };
}
