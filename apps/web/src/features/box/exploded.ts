// How far a panel is drawn from its place when the box is taken apart on the screen.
import type { PanelBody } from '@gusset/contracts/enclosure';

export type Shift = { readonly x: number; readonly y: number; readonly z: number };

/** At the far end of the slider a panel stands this many of its own distances further out. */
const FARTHEST = 0.9;

/**
 * Shift of a panel, mm in the box's frame: straight away from the middle of the wood, the further the further out it
 * lies. So walls part, what is built between them stays between them, and layers of one wall come apart in order.
 * `share` runs from 0 (together) to 1.
 */
export function explodedShift(body: PanelBody, middle: Shift, share: number): Shift {
  const { originMm: o, xAxis: u, yAxis: v, normal: w } = body.placement;
  const corners = Math.max(1, body.outerFace.length);
  const xMm = body.outerFace.reduce((sum, point) => sum + point.xMm, 0) / corners;
  const yMm = body.outerFace.reduce((sum, point) => sum + point.yMm, 0) / corners;
  const inMm = -body.thicknessMm / 2;
  const far = share * FARTHEST;
  return {
    x: far * (o.x + u.x * xMm + v.x * yMm + w.x * inMm - middle.x),
    y: far * (o.y + u.y * xMm + v.y * yMm + w.y * inMm - middle.y),
    z: far * (o.z + u.z * xMm + v.z * yMm + w.z * inMm - middle.z),
  };
}
