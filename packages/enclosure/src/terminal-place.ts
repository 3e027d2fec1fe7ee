// Where a terminal cup goes when nobody says: low on its face, in the bay nearest the middle.
import type { BoxDesign, TerminalCup, Vector } from '@gusset/contracts/enclosure';
import { type Refusal, refuse } from '@gusset/units';
import type { BraceLayout } from './bracing.ts';
import { baffleBuildMm, type Carcass } from './carcass.ts';
import { distanceAlong, moved, polygonCentre, polygonExtent } from './plane.ts';
import { ringAt } from './ring.ts';
import { along, inSpace } from './vector.ts';
import { upTheFace } from './wall-ring.ts';

export type PlacedTerminal = {
  readonly cup: TerminalCup;
  /** On the outermost wood of its face, and the way that face looks. */
  readonly centreMm: Vector;
  readonly out: Vector;
  /** Half its size across the box; 0 for a cup in a side, which no brace can meet. */
  readonly halfAcrossMm: number;
};

/** Share of the clear height at which a terminal sits: low, but off the floor seam. */
const LOW_SHARE = 0.3;

export function layOutTerminal(
  { terminalCup: cup }: BoxDesign,
  carcass: Carcass,
  braces: BraceLayout,
): PlacedTerminal | null | Refusal {
  if (cup === null) return null;
  if (cup.face === 'left' || cup.face === 'right') return onSide(cup, carcass, cup.face);
  const index = carcass.walls.findIndex((wall) => wall.face === cup.face);
  if (index < 0) {
    const allowed = [...carcass.walls.map((wall) => wall.face), 'left', 'right'].join(', ');
    return refuse('terminalCup.face', { allowed, got: cup.face, why: `this box has no ${cup.face} wall` });
  }
  return onWall(cup, carcass, braces, index);
}

const cutoutSize = ({ cutout }: TerminalCup) =>
  cutout.shape === 'circle'
    ? { acrossMm: cutout.diameterMm, upMm: cutout.diameterMm }
    : { acrossMm: cutout.widthMm, upMm: cutout.heightMm };

function onSide(cup: TerminalCup, carcass: Carcass, side: 'left' | 'right'): PlacedTerminal {
  const sign = side === 'left' ? 1 : -1;
  const extent = polygonExtent(carcass.inner);
  const lowMm = extent.yMinMm + LOW_SHARE * (extent.yMaxMm - extent.yMinMm);
  const point =
    cup.at === null
      ? { xMm: polygonCentre(carcass.inner).xMm, yMm: lowMm }
      : { xMm: cup.at.acrossMm, yMm: cup.at.upMm };
  return {
    cup,
    centreMm: inSpace(point, (sign * carcass.widthMm) / 2),
    out: { x: 0, y: 0, z: sign },
    halfAcrossMm: 0,
  };
}

/** Middle of the bay whose middle lies nearest the centre line; of two, the one on the left. */
function middleBayMm(braces: BraceLayout): number {
  const middles = braces.bays.map(({ fromMm, toMm }) => (fromMm + toMm) / 2);
  return middles.toSorted((a, b) => Math.abs(a) - Math.abs(b) || b - a)[0] ?? 0;
}

function onWall(cup: TerminalCup, carcass: Carcass, braces: BraceLayout, index: number): PlacedTerminal {
  const wall = ringAt(carcass.walls, index);
  const { foot, up } = upTheFace(wall);
  const ends = [ringAt(carcass.free, index), ringAt(carcass.free, index + 1)].map((end) =>
    distanceAlong(foot, end, up),
  );
  const lowMm = Math.min(...ends);
  const highMm = Math.max(...ends);
  const at = cup.at ?? {
    acrossMm: middleBayMm(braces),
    upMm: lowMm + LOW_SHARE * (highMm - lowMm),
  };
  const outMm = index === carcass.baffleIndex ? baffleBuildMm(carcass).outMm : 0;
  const point = moved(moved(foot, up, at.upMm), wall.out, outMm);
  return {
    cup,
    centreMm: inSpace(point, at.acrossMm),
    out: { x: wall.out.x, y: wall.out.y, z: 0 },
    halfAcrossMm: cutoutSize(cup).acrossMm / 2,
  };
}

/** Half the diagonal: the circle that a cup of any turn stays in. */
export function terminalRadiusMm(cup: TerminalCup): number {
  const { acrossMm, upMm } = cutoutSize(cup);
  return cup.cutout.shape === 'circle' ? acrossMm / 2 : Math.hypot(acrossMm, upMm) / 2;
}

/** Centre of the cup's body, behind the face. */
export function terminalBodyMm({ cup, centreMm, out }: PlacedTerminal): Vector {
  return along(centreMm, out, -cup.insideDepthMm / 2);
}
