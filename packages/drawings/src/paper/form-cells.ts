// Table cells that people fill in by hand: tick boxes, boxes to write in, lettered balloons.
import { polygon, text } from '../scene/items.ts';
import { rectangle, spot } from '../scene/spot.ts';
import type { TableCell } from './page-flow.ts';

const TICK_PT = 15;

/** An empty square at the right of its column. */
export function tickBox(): TableCell {
  return {
    kind: 'drawn',
    heightPt: TICK_PT,
    draw: ({ left, widthPt }, top) => [
      polygon(rectangle(left + widthPt - TICK_PT, top + 2, TICK_PT, TICK_PT), {
        role: 'outline',
        dashPt: null,
        widthPt: 1,
      }),
    ],
  };
}

/** An empty box over the whole column with a small unit in its corner. */
export function writingBox(heightPt: number, unit: string): TableCell {
  return {
    kind: 'drawn',
    heightPt,
    draw: ({ left, widthPt }, top, roomPt) => [
      polygon(rectangle(left, top, widthPt, roomPt), { role: 'outline', dashPt: null, widthPt: 1 }),
      text(spot(left + widthPt - 4, top + roomPt - 4), unit, {
        sizePt: 7.5,
        face: 'condensed',
        anchor: 'end',
        ink: 'ink-2',
      }),
    ],
  };
}

export function balloonCell(letter: string, radiusPt: number): TableCell {
  return {
    kind: 'drawn',
    heightPt: 2 * radiusPt,
    draw: ({ left }, top, roomPt) => [
      {
        kind: 'balloon',
        centre: spot(left + radiusPt + 1, top + roomPt / 2),
        letter,
        radiusPt,
        active: false,
        key: null,
      },
    ],
  };
}
