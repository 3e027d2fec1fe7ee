// Dimensions given in world millimetres, as every view of a box or a panel takes them.
import type { PointMm } from '@gusset/contracts/geometry';
import { dimension } from '../scene/items.ts';
import type { DimensionItem } from '../scene/scene.ts';
import type { Spot } from '../scene/spot.ts';
import type { DrawingView } from './drawing-view.ts';

export type DrawnDimension = {
  readonly from: PointMm;
  readonly to: PointMm;
  /** Null = the measured length in the view's own format. */
  readonly text: string | null;
  /** How far off, to the left of from → to, points. */
  readonly offsetPt: number;
  /** Name of the field that changes it; null = not to be changed here. */
  readonly key: string | null;
  readonly failing: boolean;
};

export function dimensionOf(
  drawn: DrawnDimension,
  place: (point: PointMm) => Spot,
  view: DrawingView,
): DimensionItem {
  const { from, to, text, offsetPt, key, failing } = drawn;
  const lengthMm = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  return dimension({
    from: place(from),
    to: place(to),
    offsetPt,
    text: text ?? view.formatLength(lengthMm),
    sizePt: view.textPt,
    key,
    tone: failing ? 'failing' : 'plain',
  });
}
