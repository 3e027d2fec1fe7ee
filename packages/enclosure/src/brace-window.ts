// Windows in a brace: what is cut away so that the air on both sides is one volume. The asked share of wood is met
// exactly where the shape allows it; a strongly tapered frame keeps more wood, and says so.
import type { PointMm } from '@gusset/contracts/geometry';
import { polygonAreaMm2, polygonExtent } from './plane.ts';
import { ringAt } from './ring.ts';

/** Least wood round and between windows, or the frame carries nothing. */
export const WINDOW_RIM_MM = 30;
/** Routed corners, unless the window is too small for them. */
const WINDOW_RADIUS_MM = 10;
const RADIUS_SHARE = 0.25; // of the window's shorter side
const WINDOWS_MAX = 4;
/** Anything narrower is not worth routing. */
const WINDOW_MIN_MM = 20;

export type BraceWindow = {
  readonly centre: PointMm;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly cornerRadiusMm: number;
};

type Span = { readonly fromMm: number; readonly toMm: number };

/** Where a level line at `yMm` crosses a polygon, from left to right. */
function crossingsMm(polygon: readonly PointMm[], yMm: number): number[] {
  return polygon
    .flatMap((corner, index) => {
      const next = ringAt(polygon, index + 1);
      if (corner.yMm > yMm === next.yMm > yMm) return [];
      const share = (yMm - corner.yMm) / (next.yMm - corner.yMm);
      return [corner.xMm + share * (next.xMm - corner.xMm)];
    })
    .sort((a, b) => a - b);
}

/** What a side of the polygon takes of a storey; null where it lies above or below. */
function inStorey(from: PointMm, to: PointMm, lowMm: number, highMm: number): Span | null {
  const [below, above] = from.yMm < to.yMm ? [from, to] : [to, from];
  if (above.yMm <= lowMm || below.yMm >= highMm) return null;
  const rise = above.yMm - below.yMm;
  const xAt = (yMm: number) =>
    rise === 0 ? below.xMm : below.xMm + ((yMm - below.yMm) / rise) * (above.xMm - below.xMm);
  const ends =
    rise === 0 ? [from.xMm, to.xMm] : [xAt(Math.max(below.yMm, lowMm)), xAt(Math.min(above.yMm, highMm))];
  return { fromMm: Math.min(...ends), toMm: Math.max(...ends) };
}

/** The widest upright strip of a storey that no side of the polygon enters. */
function storeySpan(polygon: readonly PointMm[], lowMm: number, highMm: number): Span {
  const crossings = crossingsMm(polygon, (lowMm + highMm) / 2);
  const sides = polygon.flatMap((corner, index) => {
    const span = inStorey(corner, ringAt(polygon, index + 1), lowMm, highMm);
    return span === null ? [] : [span];
  });
  const spans = crossings.flatMap((entryMm, index): Span[] => {
    const exitMm = crossings[index + 1];
    if (index % 2 === 1 || exitMm === undefined) return [];
    const middleMm = (entryMm + exitMm) / 2;
    const isLeft = (side: Span) => (side.fromMm + side.toMm) / 2 < middleMm;
    return [
      {
        fromMm: Math.max(entryMm, ...sides.filter(isLeft).map(({ toMm }) => toMm)),
        toMm: Math.min(exitMm, ...sides.filter((side) => !isLeft(side)).map(({ fromMm }) => fromMm)),
      },
    ];
  });
  return spans.reduce(
    (widest, span) => (span.toMm - span.fromMm > widest.toMm - widest.fromMm ? span : widest),
    { fromMm: 0, toMm: 0 },
  );
}

/** The largest windows, one in each of `count` equally high storeys. Empty where the rims leave nothing. */
function largestWindows(polygon: readonly PointMm[], count: number): BraceWindow[] {
  const { yMinMm, yMaxMm } = polygonExtent(polygon);
  const storeyMm = (yMaxMm - yMinMm - (count + 1) * WINDOW_RIM_MM) / count;
  if (storeyMm < WINDOW_MIN_MM) return [];
  return Array.from({ length: count }, (_, storey) => {
    const lowMm = yMinMm + WINDOW_RIM_MM + storey * (storeyMm + WINDOW_RIM_MM);
    const clear = storeySpan(polygon, lowMm, lowMm + storeyMm);
    const fromMm = clear.fromMm + WINDOW_RIM_MM;
    const toMm = clear.toMm - WINDOW_RIM_MM;
    return rounded({ xMm: (fromMm + toMm) / 2, yMm: lowMm + storeyMm / 2 }, toMm - fromMm, storeyMm);
  }).filter((window) => window.widthMm >= WINDOW_MIN_MM);
}

function rounded(centre: PointMm, widthMm: number, heightMm: number): BraceWindow {
  const cornerRadiusMm = Math.min(WINDOW_RADIUS_MM, RADIUS_SHARE * Math.min(widthMm, heightMm));
  return { centre, widthMm, heightMm, cornerRadiusMm };
}

const CORNER_LOSS = 4 - Math.PI; // of r², for the four rounded corners of a window

export function windowAreaMm2({ widthMm, heightMm, cornerRadiusMm }: BraceWindow): number {
  return widthMm * heightMm - CORNER_LOSS * cornerRadiusMm ** 2;
}

const totalAreaMm2 = (windows: readonly BraceWindow[]) =>
  windows.reduce((sum, window) => sum + windowAreaMm2(window), 0);

/** Windows shrunk about their centres, radii in step, to `share` of their area. */
function shrunk(windows: readonly BraceWindow[], share: number): BraceWindow[] {
  const scale = Math.sqrt(share);
  return windows.map((window) => ({
    centre: window.centre,
    widthMm: window.widthMm * scale,
    heightMm: window.heightMm * scale,
    cornerRadiusMm: window.cornerRadiusMm * scale,
  }));
}

/** Windows that leave `solidFraction` of the frame as wood, or as near to it as the rims allow. */
export function braceWindows(frame: readonly PointMm[], solidFraction: number): BraceWindow[] {
  const wantedMm2 = (1 - solidFraction) * polygonAreaMm2(frame);
  const choices = Array.from({ length: WINDOWS_MAX }, (_, index) => largestWindows(frame, index + 1));
  const enough = choices.find((windows) => totalAreaMm2(windows) >= wantedMm2);
  if (enough !== undefined) {
    return wantedMm2 > 0 ? shrunk(enough, wantedMm2 / totalAreaMm2(enough)) : [];
  }
  return choices.reduce((best, windows) => (totalAreaMm2(windows) > totalAreaMm2(best) ? windows : best), []);
}
