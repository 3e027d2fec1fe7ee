// Free sections to start from, and the next corner or station of one.

import type { FreeCorner } from '@gusset/contracts/cargo';
import type { FreeSection, TypedMm } from '@gusset/contracts/survey';

/** Taken every 200 mm: close enough for a bend, few enough to write down. */
const STATION_STEP_MM = 200;

const station = (mm: number): TypedMm => ({ mm, typed: `${mm} mm`, unit: 'mm' });

export function startingCorners(): FreeSection {
  return {
    by: 'points',
    corners: [
      { id: 'c1', wallName: 'Floor', role: 'floor', surface: 'soft' },
      { id: 'c2', wallName: 'Opening', role: 'opening', surface: 'open' },
      { id: 'c3', wallName: 'Roof', role: 'roof', surface: 'soft' },
      { id: 'c4', wallName: 'Seat back', role: 'seat-back', surface: 'soft' },
    ],
  };
}

export function startingStations(): FreeSection {
  return { by: 'stations', stations: [0, 200, 400, 600, 800].map(station) };
}

/** An id that no corner of this outline has. */
export function freeCornerAfter(corners: readonly FreeCorner[]): FreeCorner {
  const highest = Math.max(0, ...corners.map(({ id }) => Number(/^c(\d+)$/.exec(id)?.[1] ?? 0)));
  return { id: `c${highest + 1}`, wallName: 'Step', role: 'other', surface: 'hard' };
}

export function stationAfter(stations: readonly TypedMm[]): TypedMm {
  return station((stations.at(-1)?.mm ?? 0) + STATION_STEP_MM);
}
