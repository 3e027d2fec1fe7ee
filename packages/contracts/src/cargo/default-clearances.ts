// No schema here: see measuring-methods.ts.
import type { ClearanceSettings } from './placement.ts';

export const DEFAULT_CLEARANCES: ClearanceSettings = {
  sidesMm: 10,
  seatBackMm: 15,
  aboveMm: 10,
  movingMetalMm: 15,
  otherMm: 10,
  keepFreeMm: 0,
  openingMm: 10,
};
