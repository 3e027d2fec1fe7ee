// Room behind a pickup seat, side section: cab wall at the back (x = 0), seat in front of it (x grows toward the
// seat, the way the box comes out), opening at the top between cab wall and seat.
import type { CavityFinding, SectionForm } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import {
  type Construction,
  type DimensionValues,
  type PlannedAnchor,
  type PlannedCorner,
  type PlannedWall,
  type Reader,
  reader,
} from './construction.ts';
import { angleDimension, lengthDimension } from './dimension.ts';
import { betweenMm, diagonalDimension, straight } from './shared-walls.ts';
import { acrossAt, wholeWidthSlab } from './widths.ts';

/** Where the depth is taken, above the floor, mm. */
const LOW_STATION_MM = 300;
const HIGH_STATION_MM = 600;

export const BEHIND_SEAT: SectionForm = {
  id: 'behind-seat',
  kind: 'behind-seat',
  name: 'Behind the seat',
  construction: { by: 'behind-seat' },
  dimensions: [
    lengthDimension({
      key: 'floorDepth',
      letter: 'A',
      label: 'Depth at the floor',
      hint: 'Level from the cab wall to the seat, seat at the recline it will be driven at.',
      highlights: ['floor'],
      rangeMm: [40, 1500],
      typicalMm: 320,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'depthAt300',
      letter: 'B',
      label: 'Depth 300 mm up',
      hint: 'Level from cab wall to seat back, 300 mm above the floor. Left out: straight between the others.',
      need: 'optional',
      highlights: ['seat-low', 'seat-mid'],
      rangeMm: [30, 1500],
      typicalMm: 260,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'depthAt600',
      letter: 'C',
      label: 'Depth 600 mm up',
      hint: 'Level from cab wall to seat back, 600 mm above the floor. Left out: straight between the others.',
      need: 'optional',
      highlights: ['seat-mid', 'seat-top'],
      rangeMm: [20, 1500],
      typicalMm: 200,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'height',
      letter: 'D',
      label: 'Height, floor to the opening',
      hint: 'Plumb from the floor to the level where the box must end: glass, seat top or trim, whichever is lowest.',
      highlights: ['opening', 'cab-wall'],
      rangeMm: [100, 1600],
      typicalMm: 760,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'gapAtTop',
      letter: 'E',
      label: 'Gap at the top, cab wall to seat',
      hint: 'Level, at height D, seat latched.',
      highlights: ['opening'],
      rangeMm: [20, 1500],
      typicalMm: 180,
      onSoftTrim: true,
    }),
    angleDimension({
      key: 'cabWallLean',
      letter: 'F',
      label: 'Cab wall, lean from plumb',
      hint: 'Angle finder on the cab wall. Plus where its top leans toward the seat.',
      need: 'optional',
      tighter: 'larger',
      highlights: ['cab-wall'],
      rangeDegrees: [-30, 30],
      typicalDegrees: 0,
      assumed: { valueRad: 0, plusMinusRad: 0.02, why: 'cab wall taken as plumb' },
    }),
    diagonalDimension('footToSeatTop', 'G', 'Foot of the cab wall to the seat at the opening'),
    lengthDimension({
      key: 'width',
      letter: 'H',
      label: 'Width of the space',
      hint: 'Trim to trim at the narrowest place: belt reels, door trim, brackets.',
      view: 'plan',
      highlights: ['whole'],
      rangeMm: [200, 2500],
      typicalMm: 1320,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'openingWidth',
      letter: 'J',
      label: 'Width of the way in',
      hint: 'The narrowest place the box is carried through with the seat tipped: pillar to pillar or door.',
      view: 'plan',
      highlights: ['opening'],
      rangeMm: [100, 2500],
      typicalMm: 1200,
    }),
  ],
};

type SeatFace = {
  readonly low: PointMm | null;
  readonly high: PointMm | null;
  readonly findings: CavityFinding[];
};

/** A depth taken as high as the space ends, or higher, says nothing about it. */
function seatFace(read: Reader, heightMm: number, wallAt: (yMm: number) => number): SeatFace {
  const findings: CavityFinding[] = [];
  const at = (key: string, yMm: number): PointMm | null => {
    const depthMm = read.ifKnown(key);
    if (depthMm === null) return null;
    if (yMm < heightMm) return { xMm: wallAt(yMm) + depthMm, yMm };
    findings.push({ code: 'taken-above-space', key, atMm: yMm, spaceMm: heightMm });
    return null;
  };
  return { low: at('depthAt300', LOW_STATION_MM), high: at('depthAt600', HIGH_STATION_MM), findings };
}

type Places = {
  readonly foot: PointMm;
  readonly floorEnd: PointMm;
  readonly seatTop: PointMm;
  readonly wallTop: PointMm;
  /** Where the cab wall is at a height. */
  readonly wallAt: (yMm: number) => number;
};

function placesOf(read: Reader): Places {
  const heightMm = read.of('height');
  const wallAt = (yMm: number) => yMm * Math.tan(read.of('cabWallLean'));
  return {
    foot: { xMm: 0, yMm: 0 },
    floorEnd: { xMm: read.of('floorDepth'), yMm: 0 },
    seatTop: { xMm: wallAt(heightMm) + read.of('gapAtTop'), yMm: heightMm },
    wallTop: { xMm: wallAt(heightMm), yMm: heightMm },
    wallAt,
  };
}

export function constructBehindSeat(form: SectionForm, values: DimensionValues): Construction {
  const read = reader(form, values);
  const places = placesOf(read);
  const face = seatFace(read, places.wallTop.yMm, places.wallAt);
  const { corners, walls } = outlineOf(places, face);
  const slab = wholeWidthSlab(
    'width',
    read,
    corners.map((corner) => corner.at),
  );
  return {
    corners,
    walls,
    slabs: [slab],
    openingWidthMm: read.of('openingWidth'),
    lidFrameMm: 0,
    derived: new Map([['footToSeatTop', betweenMm(places.foot, places.seatTop)]]),
    anchors: anchorsOf(read, places),
    comparisons: [],
    impossible: [],
    findings: face.findings,
  };
}

function outlineOf(places: Places, { low, high }: SeatFace) {
  const seat = { role: 'seat-back', surface: 'soft' } as const;
  const corners: PlannedCorner[] = [
    { id: 'foot', at: places.foot },
    { id: 'floor-end', at: places.floorEnd },
  ];
  const walls: PlannedWall[] = [
    { id: 'floor', name: 'Floor', role: 'floor', surface: 'soft' },
    { id: 'seat-low', name: 'Seat back, low', ...seat },
  ];
  if (low !== null) {
    corners.push({ id: 'seat-300', at: low });
    walls.push({ id: 'seat-mid', name: 'Seat back, middle', ...seat });
  }
  if (high !== null) {
    corners.push({ id: 'seat-600', at: high });
    walls.push({ id: 'seat-top', name: 'Seat back, top', ...seat });
  }
  corners.push({ id: 'seat-end', at: places.seatTop }, { id: 'wall-top', at: places.wallTop });
  walls.push(
    { id: 'opening', name: 'Opening, above the seat', role: 'opening', surface: 'open' },
    { id: 'cab-wall', name: 'Cab wall', role: 'cab-wall', surface: 'hard' },
  );
  return { corners, walls };
}

function anchorsOf(read: Reader, { foot, floorEnd, seatTop, wallTop, wallAt }: Places): PlannedAnchor[] {
  const plumbTop = { xMm: 0, yMm: wallTop.yMm };
  const level = (key: string, yMm: number) =>
    straight(key, { xMm: wallAt(yMm), yMm }, { xMm: wallAt(yMm) + read.of(key), yMm });
  return [
    level('floorDepth', 0),
    level('depthAt300', LOW_STATION_MM),
    level('depthAt600', HIGH_STATION_MM),
    straight('height', foot, plumbTop),
    straight('gapAtTop', wallTop, seatTop),
    { key: 'cabWallLean', view: 'section', from: plumbTop, to: wallTop, vertex: foot },
    straight('footToSeatTop', foot, seatTop),
    acrossAt('width', floorEnd.xMm / 2, read.of('width')),
    acrossAt('openingWidth', seatTop.xMm, read.of('openingWidth')),
  ];
}
