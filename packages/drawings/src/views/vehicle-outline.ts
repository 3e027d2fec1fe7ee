// The vehicle round a cargo space: walls with their hatched band, and what stands in the way.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { hatch, line, polygon, polyline, text } from '../scene/items.ts';
import type { LeaderItem, SceneItem, TextItem } from '../scene/scene.ts';
import { middleOf, type Spot, spot } from '../scene/spot.ts';
import { CAP_HEIGHT, textWidthPt } from '../text/text-width.ts';
import type { DrawingView } from './drawing-view.ts';
import { type Ground, noteSetting } from './note-places.ts';
import { insideRing, wallBand } from './wall-band.ts';

export type DrawnEdge = {
  readonly from: PointMm;
  readonly to: PointMm;
  /** `Seat back`, `Floor`. */
  readonly name: string;
  /** open = nothing there (the way in, or not surveyed). */
  readonly kind: 'rigid' | 'soft' | 'glass' | 'open';
};

/** An empty name: a further part of something that is named already. */
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

const MOST_LETTERS = 16;

/** Words in lines of a few letters each: a narrow note finds a place where a long line would not. */
function wrapped(name: string): readonly string[] {
  const lines: string[] = [];
  for (const word of name.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && longer.length <= MOST_LETTERS) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** The name in the middle of the thing, or led out where it is too small for it. */
export function obstructionName(
  name: string,
  ring: readonly Spot[],
  view: DrawingView,
  ground: Ground,
): TextItem | LeaderItem {
  const middle = middleOf(ring);
  const sizePt = view.textPt * 0.85;
  const halfWidthPt = (textWidthPt(name, 'condensed', sizePt) + INSET_PT) / 2;
  const halfHeightPt = (sizePt + INSET_PT) / 2;
  const corners = [-1, 1].flatMap((x) =>
    [-1, 1].map((y) => spot(middle.x + x * halfWidthPt, middle.y + y * halfHeightPt)),
  );
  // A leaning frame is wide and high without having room for a word.
  if (corners.every((corner) => insideRing(ring, corner))) {
    const at = spot(middle.x, middle.y + (sizePt * CAP_HEIGHT) / 2);
    return text(at, name, { sizePt, face: 'condensed', anchor: 'middle', ink: 'ink-2', backed: true });
  }
  const request = { target: middle, towardsRad: Math.PI / 3, sizePt };
  const { lines, elbow } = noteSetting(request, [[name], wrapped(name)], ground);
  return { kind: 'leader', target: middle, elbow, lines, sizePt, tone: 'plain', key: null };
}
