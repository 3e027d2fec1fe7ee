// Lettered dimensions of a survey. Along an edge they stand outside the cavity, through the space in place.
import type { PointMm } from '@gusset/contracts/geometry';
import { readable } from '../scene/annotations.ts';
import { dimension } from '../scene/items.ts';
import type { DimensionItem } from '../scene/scene.ts';
import {
  add,
  between,
  direction,
  distance,
  type Extent,
  extentOf,
  leftOf,
  middleOf,
  type Spot,
  times,
} from '../scene/spot.ts';
import { textWidthPt } from '../text/text-width.ts';
import type { DrawingView } from './drawing-view.ts';
import { insideRing } from './wall-band.ts';

export type DrawnLabel = {
  readonly letter: string;
  readonly from: PointMm;
  readonly to: PointMm;
  readonly active: boolean;
  /** As it is to be read; null = not measured yet. */
  readonly value: string | null;
};

const CLEAR_OF_WALL_PT = 34; // past the hatched band
const ROW_PT = 26; // between dimension lines that stand outside one another
const PROBE_PT = 3;
const ASIDE_PT = 6; // a step that a line gives way by
const ASIDE_STEPS = 16;
const SQUARE = 0.02; // sine of the slope up to which a dimension counts as level or plumb

export function labelItems(
  labels: readonly DrawnLabel[],
  place: (point: PointMm) => Spot,
  view: DrawingView,
  ring: readonly Spot[],
  shrink: number,
): readonly DimensionItem[] {
  const extent = extentOf(ring);
  const rows: Row[] = [];
  const taken: Spot[] = [];
  return labels.map((label) => {
    const [from, to] = [place(label.from), place(label.to)];
    const wishedPt =
      extent === null ? 0 : standOff(from, to, ring, extent, { rows, clearPt: CLEAR_OF_WALL_PT * shrink });
    const drawnAt = (offsetPt: number): DimensionItem =>
      dimension({
        from,
        to,
        offsetPt,
        text: label.value ?? '',
        sizePt: view.textPt,
        key: label.letter,
        tone: label.active ? 'active' : 'plain',
        letter: label.letter,
      });
    const item = clearOf(taken, wishedPt, drawnAt);
    taken.push(...figureSpots(item));
    return item;
  });
}

/** Where it was wished, or as little aside as keeps its letter and figure off the others; crowded out, as wished. */
function clearOf(
  taken: readonly Spot[],
  wishedPt: number,
  drawnAt: (offsetPt: number) => DimensionItem,
): DimensionItem {
  const outward = wishedPt < 0 ? -1 : 1;
  for (let step = 0; step <= ASIDE_STEPS; step += 1) {
    for (const way of step === 0 || wishedPt !== 0 ? [outward] : [1, -1]) {
      const item = drawnAt(wishedPt + way * step * ASIDE_PT);
      const apartPt = item.sizePt * 2;
      if (figureSpots(item).every((at) => taken.every((other) => distance(at, other) >= apartPt)))
        return item;
    }
  }
  return drawnAt(wishedPt);
}

/** Letter and figure as a row of spots, each standing for a circle as wide as two type sizes. */
function figureSpots({ from, to, offsetPt, text, sizePt }: DimensionItem): readonly Spot[] {
  const along = direction(from, to);
  const middle = add(between(from, to, 0.5), times(leftOf(along), offsetPt));
  const reading = readable(along);
  const lengthPt = text === '' ? 0 : textWidthPt(text, 'mono', sizePt) + sizePt * 0.5;
  const count = Math.ceil(lengthPt / sizePt);
  return Array.from({ length: count + 1 }, (_, index) =>
    add(middle, times(reading, count === 0 ? 0 : (lengthPt * index) / count)),
  );
}

/** Dimension lines already outside: the way they face and how far from the edge's own place. */
type Row = { readonly side: Spot; readonly fromPt: number; readonly toPt: number; readonly depthPt: number };

type Outside = { readonly rows: Row[]; readonly clearPt: number };

function standOff(
  from: Spot,
  to: Spot,
  ring: readonly Spot[],
  extent: Extent,
  { rows, clearPt }: Outside,
): number {
  const middle = between(from, to, 0.5);
  const left = leftOf(direction(from, to));
  const leftInside = insideRing(ring, add(middle, times(left, PROBE_PT)));
  const rightInside = insideRing(ring, add(middle, times(left, -PROBE_PT)));
  if (leftInside && rightInside) return 0;
  const centre = middleOf(ring);
  const leftIsOut = leftInside === rightInside ? away(left, middle, centre) : !leftInside;
  const side = leftIsOut ? left : times(left, -1);
  const clear = Math.abs(side.x) < SQUARE || Math.abs(side.y) < SQUARE ? toExtent(middle, side, extent) : 0;
  const along = direction(from, to);
  const a = Math.min(project(from, along), project(to, along));
  const b = Math.max(project(from, along), project(to, along));
  const base = project(middle, side);
  let depthPt = base + clear + clearPt;
  const crowded = (row: Row): boolean =>
    project(row.side, side) > 1 - SQUARE &&
    row.fromPt < b &&
    row.toPt > a &&
    Math.abs(row.depthPt - depthPt) < ROW_PT;
  while (rows.some(crowded)) depthPt += ROW_PT;
  rows.push({ side, fromPt: a, toPt: b, depthPt });
  return (depthPt - base) * (leftIsOut ? 1 : -1);
}

const project = (at: Spot, along: Spot): number => at.x * along.x + at.y * along.y;
const away = (side: Spot, middle: Spot, centre: Spot): boolean =>
  project(side, { x: middle.x - centre.x, y: middle.y - centre.y }) >= 0;

/** How far a level or plumb line must move to leave the cavity's own rectangle. */
function toExtent(middle: Spot, side: Spot, extent: Extent): number {
  if (Math.abs(side.x) > Math.abs(side.y))
    return side.x > 0 ? extent.right - middle.x : middle.x - extent.left;
  return side.y > 0 ? extent.bottom - middle.y : middle.y - extent.top;
}
