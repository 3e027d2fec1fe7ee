// Clearances between a box and the vehicle: a short line across the gap and a note beside it.
import type { PointMm } from '@gusset/contracts/geometry';
import { circle, line } from '../scene/items.ts';
import type { Ink, StrokeRole } from '../scene/pens.ts';
import type { LeaderItem, LeaderTone, SceneItem } from '../scene/scene.ts';
import { between, direction, middleOf, type Spot } from '../scene/spot.ts';
import type { DrawingView } from './drawing-view.ts';
import { type Ground, noteElbow } from './note-places.ts';

export type DrawnClearance = {
  readonly from: PointMm;
  readonly to: PointMm;
  /** Lines of the note: `tightest 6.2`, `seat back`. */
  readonly text: readonly string[];
  readonly verdict: 'ok' | 'check' | 'fails';
};

const MANNERS: Readonly<Record<DrawnClearance['verdict'], { tone: LeaderTone; role: StrokeRole; ink: Ink }>> =
  {
    ok: { tone: 'plain', role: 'thin', ink: 'ink' },
    check: { tone: 'check', role: 'brass', ink: 'brass' },
    fails: { tone: 'failing', role: 'pencil', ink: 'pencil' },
  };

/** Notes point away from the middle of the box and keep clear of the lines in `ground`. */
export function clearanceItems(
  clearances: readonly DrawnClearance[],
  place: (point: PointMm) => Spot,
  view: DrawingView,
  boxRing: readonly Spot[],
  ground: Ground,
): readonly SceneItem[] {
  const centre = middleOf(boxRing);
  return clearances.flatMap((clearance): SceneItem[] => {
    const [from, to] = [place(clearance.from), place(clearance.to)];
    const target = between(from, to, 0.5);
    const { tone, role, ink } = MANNERS[clearance.verdict];
    const away = direction(centre, target);
    const request = {
      target,
      towardsRad: Math.atan2(away.y, away.x),
      lines: clearance.text,
      sizePt: view.textPt,
    };
    const elbow = noteElbow(request, ground);
    const leader: LeaderItem = {
      kind: 'leader',
      target,
      elbow,
      lines: clearance.text,
      sizePt: view.textPt,
      tone,
      key: null,
    };
    return [line(from, to, role), circle(from, 1.5, null, ink), circle(to, 1.5, null, ink), leader];
  });
}
