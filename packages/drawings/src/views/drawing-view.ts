// The paper a drawing is made for: its size, its lettering, how lengths are written, and the scale that fits.
import type { PointMm } from '@gusset/contracts/geometry';
import { formatLength } from '@gusset/units';
import type { WorldFrame } from '../scene/scene.ts';
import { type Spot, spot } from '../scene/spot.ts';

export type DrawingView = {
  readonly widthPt: number;
  readonly heightPt: number;
  /** Size of the figures on the drawing. */
  readonly textPt: number;
  /** Writes a length in the shop's units. */
  readonly formatLength: (lengthMm: number) => string;
  /** `fit` = as large as the sheet allows; `standard` = the largest scale of ISO 5455 that fits. */
  readonly scale: 'fit' | 'standard';
};

export const SCREEN_VIEW: DrawingView = {
  widthPt: 760,
  heightPt: 460,
  textPt: 12,
  formatLength: (lengthMm) => formatLength(lengthMm, { unit: 'mm', style: 'drawing' }),
  scale: 'fit',
};

export const withDefaults = (view: Partial<DrawingView>): DrawingView => ({ ...SCREEN_VIEW, ...view });

/** Room for dimensions round the thing drawn. */
export type Margins = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

export type Fitted = {
  readonly frame: WorldFrame;
  readonly scaleLabel: string | null;
  readonly place: (point: PointMm) => Spot;
};

const PT_PER_MM = 72 / 25.4;
// ISO 5455:1979, table 1, from the largest that a shop draws to the smallest.
const STANDARD_SCALES: readonly (readonly [number, string])[] = [
  [5, '5:1'],
  [2, '2:1'],
  [1, '1:1'],
  [1 / 2, '1:2'],
  [1 / 5, '1:5'],
  [1 / 10, '1:10'],
  [1 / 20, '1:20'],
  [1 / 50, '1:50'],
  [1 / 100, '1:100'],
  [1 / 200, '1:200'],
  [1 / 500, '1:500'],
  [1 / 1000, '1:1000'],
];
const SMALLEST_EXTENT_MM = 1; // a point or a line still gets a frame

/** Puts some world points in the middle of what the margins leave of the view, y up in the world. */
export function fitWorld(points: readonly PointMm[], view: DrawingView, margins: Margins): Fitted {
  const world = worldExtent(points);
  const widthMm = Math.max(world.right - world.left, SMALLEST_EXTENT_MM);
  const heightMm = Math.max(world.top - world.bottom, SMALLEST_EXTENT_MM);
  const roomX = Math.max(view.widthPt - margins.left - margins.right, 1);
  const roomY = Math.max(view.heightPt - margins.top - margins.bottom, 1);
  const largest = Math.min(roomX / widthMm, roomY / heightMm);
  const standard = STANDARD_SCALES.find(([scale]) => scale * PT_PER_MM <= largest);
  const useStandard = view.scale === 'standard' && standard !== undefined;
  const ptPerMm = useStandard ? standard[0] * PT_PER_MM : largest;
  const originX = margins.left + roomX / 2 - ((world.left + world.right) / 2) * ptPerMm;
  const originY = margins.top + roomY / 2 + ((world.top + world.bottom) / 2) * ptPerMm;
  const frame = { ptPerMm, originX, originY };
  return {
    frame,
    scaleLabel: useStandard ? standard[1] : null,
    place: (point) => placeInFrame(frame, point),
  };
}

export const placeInFrame = (frame: WorldFrame, { xMm, yMm }: PointMm): Spot =>
  spot(frame.originX + xMm * frame.ptPerMm, frame.originY - yMm * frame.ptPerMm);

/** Back from a spot on the drawing (a finger, a pointer) to millimetres. */
export const readFromFrame = (frame: WorldFrame, { x, y }: Spot): PointMm => ({
  xMm: (x - frame.originX) / frame.ptPerMm,
  yMm: (frame.originY - y) / frame.ptPerMm,
});

function worldExtent(points: readonly PointMm[]): {
  left: number;
  right: number;
  top: number;
  bottom: number;
} {
  if (points.length === 0) return { left: 0, right: SMALLEST_EXTENT_MM, top: SMALLEST_EXTENT_MM, bottom: 0 };
  const xs = points.map(({ xMm }) => xMm);
  const ys = points.map(({ yMm }) => yMm);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.max(...ys), bottom: Math.min(...ys) };
}
