// Which clearance is wanted to what.
import type { CavityWall, ClearanceSettings, Obstruction } from '@gusset/contracts/cargo';

/** A floor wants none: the box stands on it. */
export function wantedToWall(wall: CavityWall, settings: ClearanceSettings): number {
  switch (wall.role) {
    case 'floor':
      return 0;
    case 'seat-back':
    case 'cab-wall':
      return settings.seatBackMm;
    case 'roof':
    case 'shelf':
    case 'header':
    case 'seat-underside':
    case 'opening':
      return settings.aboveMm;
    case 'sill':
    case 'other':
      return settings.otherMm;
  }
}

export function wantedToObstruction(obstruction: Obstruction, settings: ClearanceSettings): number {
  return obstruction.moves ? settings.movingMetalMm : settings.otherMm;
}
