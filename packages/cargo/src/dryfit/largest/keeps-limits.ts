// What a section has to keep besides fitting: room for the driver, a face to carry it, panels that a sheet gives.
import type { LargestForSheetWish, ProfileMeasures, SheetFamily } from '@gusset/contracts/dryfit';
import { edgesOf } from '../../plane/edges.ts';
import { lengthOf, minus } from '../../plane/vector.ts';
import { SHEET_FAMILIES } from './sheet-family.ts';

export function keepsLimits(
  wish: LargestForSheetWish,
  family: SheetFamily,
  measures: ProfileMeasures,
): boolean {
  const { longestPanelMm, driverDepth, leastBaffleHeightMm, leastBaffleAreaMm2, widthMm } = wish;
  const shape = SHEET_FAMILIES[family];
  const baffleMm = shape.baffleMm(measures);
  if (leastBaffleHeightMm !== null && baffleMm < leastBaffleHeightMm) return false;
  if (leastBaffleAreaMm2 !== null && baffleMm * widthMm < leastBaffleAreaMm2) return false;
  if (driverDepth !== null && shape.depthAtMm(measures, driverDepth.atHeightMm) < driverDepth.depthMm)
    return false;
  if (longestPanelMm === null) return true;
  const sides = edgesOf(shape.profile(measures)).map(({ from, to }) => lengthOf(minus(to, from)));
  return Math.max(widthMm, ...sides) <= longestPanelMm;
}
