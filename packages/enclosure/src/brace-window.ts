// Windows in a brace: what is cut away so that the air on both sides is one volume. The asked share of wood is met
// exactly where the shape allows it; a strongly tapered frame keeps more wood, and says so.
import type { PointMm } from '@gusset/contracts/geometry';
import { moved, polygonAreaMm2, polygonExtent } from './plane.ts';
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

/** Where a level line at `yMm` enters and leaves a convex polygon. */
function levelSpan(
  polygon: readonly PointMm[],
  yMm: number,
): { readonly fromMm: number; readonly toMm: number } {
  const crossings = polygon.flatMap((corner, index) => {
    const next = ringAt(polygon, index + 1);
    const rise = next.yMm - corner.yMm;
    const share = rise === 0 ? Number.NaN : (yMm - corner.yMm) / rise;
    if (!(share >= 0 && share <= 1)) return rise === 0 && corner.yMm === yMm ? [corner.xMm, next.xMm] : [];
    return [moved(corner, { x: next.xMm - corner.xMm, y: rise }, share).xMm];
  });
  return crossings.length === 0
    ? { fromMm: 0, toMm: 0 }
    : { fromMm: Math.min(...crossings), toMm: Math.max(...crossings) };
}

/** The largest windows, one in each of `count` equally high storeys. Empty where the rims leave nothing. */
function largestWindows(polygon: readonly PointMm[], count: number): BraceWindow[] {
  const { yMinMm, yMaxMm } = polygonExtent(polygon);
  const storeyMm = (yMaxMm - yMinMm - (count + 1) * WINDOW_RIM_MM) / count;
  if (storeyMm < WINDOW_MIN_MM) return [];
  return Array.from({ length: count }, (_, storey) => {
    const lowMm = yMinMm + WINDOW_RIM_MM + storey * (storeyMm + WINDOW_RIM_MM);
    const low = levelSpan(polygon, lowMm);
    const high = levelSpan(polygon, lowMm + storeyMm);
    const fromMm = Math.max(low.fromMm, high.fromMm) + WINDOW_RIM_MM;
    const toMm = Math.min(low.toMm, high.toMm) - WINDOW_RIM_MM;
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
