// The outline of a flat board: straight sides, outer corners rounded in closed form.
import type { BoardOutline } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { ringAt } from '../ring.ts';
import { narrowestPair } from '../simple-polygon.ts';

/** Corners counter-clockwise from a bounding box at (0, 0), with the radius at each. */
export type RoundedOutline = {
  readonly corners: readonly PointMm[];
  readonly radiiMm: readonly number[];
  readonly widthMm: number;
  readonly heightMm: number;
};

/** A flat area and where it balances. */
export type Patch = { readonly areaMm2: number; readonly centre: PointMm };

const rectangle = (widthMm: number, heightMm: number): readonly PointMm[] => [
  { xMm: 0, yMm: 0 },
  { xMm: widthMm, yMm: 0 },
  { xMm: widthMm, yMm: heightMm },
  { xMm: 0, yMm: heightMm },
];

/** Signed area and centroid of a polygon, by the shoelace sum. */
export function polygonPatch(corners: readonly PointMm[]): Patch {
  let twice = 0;
  let x = 0;
  let y = 0;
  for (const [index, a] of corners.entries()) {
    const b = ringAt(corners, index + 1);
    const cross = a.xMm * b.yMm - b.xMm * a.yMm;
    twice += cross;
    x += (a.xMm + b.xMm) * cross;
    y += (a.yMm + b.yMm) * cross;
  }
  const centre = twice === 0 ? { xMm: 0, yMm: 0 } : { xMm: x / (3 * twice), yMm: y / (3 * twice) };
  return { areaMm2: twice / 2, centre };
}

/** Inside angle of corner `index`, (0, 2π); above π it is hollow. */
function insideAngleRad(corners: readonly PointMm[], index: number): number {
  const at = ringAt(corners, index);
  const before = ringAt(corners, index - 1);
  const after = ringAt(corners, index + 1);
  const turn =
    Math.atan2(before.yMm - at.yMm, before.xMm - at.xMm) - Math.atan2(after.yMm - at.yMm, after.xMm - at.xMm);
  return turn <= 0 ? turn + 2 * Math.PI : turn;
}

const tangentMm = (angleRad: number, radiusMm: number) => radiusMm / Math.tan(angleRad / 2);

/** Float noise of a disc's own square: both tangents are half its side. */
const NOISE_MM = 1e-9;

/** Refused: a polygon that crosses or touches itself, and a radius that its sides have no room for. */
export function roundedOutline(outline: BoardOutline): RoundedOutline | Refusal {
  if (outline.shape === 'circle') {
    const { diameterMm } = outline;
    return rounded(rectangle(diameterMm, diameterMm), diameterMm / 2);
  }
  if (outline.shape === 'rectangle') {
    return rounded(rectangle(outline.widthMm, outline.heightMm), outline.cornerRadiusMm);
  }
  const { corners } = outline;
  const narrowest = narrowestPair(corners);
  const { areaMm2 } = polygonPatch(corners);
  if (areaMm2 === 0 || (narrowest !== null && narrowest.roomMm <= 0)) {
    return refuse('outline.corners', {
      allowed: 'corners in order round the board, sides that neither cross nor touch',
      got: narrowest === null ? 0 : `sides ${narrowest.first + 1} and ${narrowest.second + 1} meet`,
      why: 'the outline crosses itself or encloses nothing',
    });
  }
  const left = Math.min(...corners.map(({ xMm }) => xMm));
  const low = Math.min(...corners.map(({ yMm }) => yMm));
  const moved = corners.map(({ xMm, yMm }) => ({ xMm: xMm - left, yMm: yMm - low }));
  return rounded(areaMm2 > 0 ? moved : moved.toReversed(), outline.cornerRadiusMm);
}

function rounded(corners: readonly PointMm[], radiusMm: number): RoundedOutline | Refusal {
  const angles = corners.map((_, index) => insideAngleRad(corners, index));
  const radiiMm = angles.map((angle) => (angle < Math.PI ? radiusMm : 0));
  for (const [index, a] of corners.entries()) {
    const b = ringAt(corners, index + 1);
    const sideMm = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
    const tangents =
      tangentMm(ringAt(angles, index), ringAt(radiiMm, index)) +
      tangentMm(ringAt(angles, index + 1), ringAt(radiiMm, index + 1));
    if (tangents <= sideMm + NOISE_MM) continue;
    const most = (radiusMm * sideMm) / tangents;
    return refuse('outline.cornerRadiusMm', {
      allowed: `at most ${most.toFixed(1)} mm`,
      got: radiusMm,
      why: `side ${index + 1} is ${sideMm.toFixed(1)} mm long, its two roundings need ${tangents.toFixed(1)} mm`,
    });
  }
  const widthMm = Math.max(...corners.map(({ xMm }) => xMm));
  const heightMm = Math.max(...corners.map(({ yMm }) => yMm));
  return { corners, radiiMm, widthMm, heightMm };
}

/** What one rounding takes off, and the arc that does it. */
export type Offcut = Patch & {
  readonly corner: PointMm;
  readonly arcCentre: PointMm;
  readonly radiusMm: number;
};

/** What the roundings take off: at each corner the kite up to the arc's centre, less the arc's sector. */
export function cornerOffcuts({ corners, radiiMm }: RoundedOutline): Offcut[] {
  return corners.flatMap((at, index) => {
    const radius = ringAt(radiiMm, index);
    if (radius === 0) return [];
    const half = insideAngleRad(corners, index) / 2;
    const after = ringAt(corners, index + 1);
    const bisector = Math.atan2(after.yMm - at.yMm, after.xMm - at.xMm) + half;
    const tangent = tangentMm(2 * half, radius);
    const toCentre = radius / Math.sin(half);
    const sweep = Math.PI / 2 - half; // half the sector's angle
    const kite = { area: radius * tangent, out: (toCentre + tangent * Math.cos(half)) / 3 };
    const sector = {
      area: radius ** 2 * sweep,
      out: toCentre - (2 * radius * Math.sin(sweep)) / (3 * sweep),
    };
    const areaMm2 = kite.area - sector.area;
    const out = (kite.area * kite.out - sector.area * sector.out) / areaMm2;
    const onBisector = (mm: number) => ({
      xMm: at.xMm + mm * Math.cos(bisector),
      yMm: at.yMm + mm * Math.sin(bisector),
    });
    return [
      { areaMm2, centre: onBisector(out), corner: at, arcCentre: onBisector(toCentre), radiusMm: radius },
    ];
  });
}
