// Room under a rear seat base, side section: cab wall at the back (x = 0), opening at the front edge of the seat
// (x grows toward it, the way the box comes out), seat underside above, perhaps a hump in the floor.
import type { SectionForm } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import {
  type Construction,
  type DimensionValues,
  type Impossible,
  type PlannedAnchor,
  type PlannedCorner,
  type PlannedWall,
  type Reader,
  reader,
} from './construction.ts';
import { lengthDimension } from './dimension.ts';
import { betweenMm, diagonalDimension, straight } from './shared-walls.ts';
import { acrossAt, wholeWidthSlab } from './widths.ts';

const HUMP_KEYS = ['humpFrom', 'humpLength', 'humpHeight'] as const;

export const UNDER_SEAT: SectionForm = {
  id: 'under-seat',
  kind: 'under-seat',
  name: 'Under the seat',
  construction: { by: 'under-seat' },
  dimensions: [
    lengthDimension({
      key: 'floorDepth',
      letter: 'A',
      label: 'Depth, cab wall to the front edge of the seat',
      hint: 'Level along the floor, plumb down from the front edge of the seat base.',
      highlights: ['floor'],
      rangeMm: [80, 1500],
      typicalMm: 460,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'backHeight',
      letter: 'B',
      label: 'Height at the cab wall',
      hint: 'Plumb, floor to the lowest metal or spring under the seat, somebody sitting on it.',
      highlights: ['cab-wall', 'seat-rear'],
      rangeMm: [40, 900],
      typicalMm: 260,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'middleHeight',
      letter: 'C',
      label: 'Height half way',
      hint: 'As B, half way between cab wall and front edge. Left out: straight from B to D.',
      need: 'optional',
      highlights: ['seat-rear', 'seat-front'],
      rangeMm: [40, 900],
      typicalMm: 240,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'frontHeight',
      letter: 'D',
      label: 'Height at the front edge',
      hint: 'As B, at the front edge of the seat base.',
      highlights: ['opening', 'seat-front'],
      rangeMm: [40, 900],
      typicalMm: 220,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'lipHeight',
      letter: 'E',
      label: 'Lip or bracket across the front',
      hint: 'Height of what the box must be lifted over at the front edge.',
      need: 'optional',
      tighter: 'larger',
      highlights: ['lip'],
      rangeMm: [0, 500],
      typicalMm: 0,
      assumed: { valueMm: 0, plusMinusMm: 0, why: 'no lip across the front' },
    }),
    ...humpDimensions(),
    lengthDimension({
      key: 'openingHeight',
      letter: 'J',
      label: 'Opening, square to the way in',
      hint: 'Lip to the front edge of the seat. A check on D and E.',
      need: 'check',
      highlights: ['opening'],
      rangeMm: [20, 900],
      typicalMm: 220,
    }),
    diagonalDimension('footToFrontEdge', 'K', 'Foot of the cab wall to the front edge of the seat'),
    lengthDimension({
      key: 'width',
      letter: 'L',
      label: 'Width of the space',
      hint: 'Between seat brackets, belt buckles or trim, the narrowest.',
      view: 'plan',
      highlights: ['whole'],
      rangeMm: [100, 2500],
      typicalMm: 1280,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'openingWidth',
      letter: 'M',
      label: 'Width of the way in',
      hint: 'Between the seat brackets at the front edge, or the door if that is narrower.',
      view: 'plan',
      highlights: ['opening'],
      rangeMm: [100, 2500],
      typicalMm: 1200,
    }),
  ],
};

function humpDimensions() {
  const hump = { need: 'optional' as const, highlights: ['hump-top'], onSoftTrim: true };
  return [
    lengthDimension({
      ...hump,
      key: 'humpFrom',
      letter: 'F',
      label: 'Cab wall to the hump',
      hint: 'Along the floor to where the hump begins. Leave all three out where the floor is flat.',
      rangeMm: [5, 1400],
      typicalMm: 160,
    }),
    lengthDimension({
      ...hump,
      key: 'humpLength',
      letter: 'G',
      label: 'Hump, along the car',
      hint: 'Where it begins to where it ends, at floor level.',
      tighter: 'larger',
      rangeMm: [5, 1400],
      typicalMm: 120,
    }),
    lengthDimension({
      ...hump,
      key: 'humpHeight',
      letter: 'H',
      label: 'Hump, height',
      hint: 'Floor to its highest place.',
      tighter: 'larger',
      rangeMm: [1, 500],
      typicalMm: 40,
    }),
  ];
}

type Hump = {
  readonly corners: PlannedCorner[];
  readonly walls: PlannedWall[];
  readonly impossible: Impossible[];
};

/** All three hump dimensions or none; the hump ends before the front edge. */
function humpOf(read: Reader, depthMm: number): Hump {
  const missing = HUMP_KEYS.filter((key) => read.ifKnown(key) === null);
  if (missing.length === HUMP_KEYS.length) return { corners: [], walls: [], impossible: [] };
  const impossible: Impossible[] = missing.map((key) => ({
    key,
    allowed: 'all three hump dimensions, or none',
    got: null,
    why: 'the hump is only partly measured',
  }));
  const fromMm = read.of('humpFrom');
  const toMm = fromMm + read.of('humpLength');
  const topMm = read.of('humpHeight');
  if (toMm >= depthMm) {
    impossible.push({
      key: 'humpLength',
      allowed: `below ${depthMm - fromMm} mm: the space is ${depthMm} mm deep and the hump begins at ${fromMm} mm`,
      got: toMm - fromMm,
      why: `the hump runs ${(toMm - depthMm).toFixed(1)} mm out of the space`,
    });
  }
  const corners = [
    { id: 'hump-back-foot', at: { xMm: fromMm, yMm: 0 } },
    { id: 'hump-back', at: { xMm: fromMm, yMm: topMm } },
    { id: 'hump-front', at: { xMm: toMm, yMm: topMm } },
    { id: 'hump-front-foot', at: { xMm: toMm, yMm: 0 } },
  ];
  const walls: PlannedWall[] = [
    { id: 'hump-rear-face', name: 'Hump, rear face', role: 'other', surface: 'hard' },
    { id: 'hump-top', name: 'Hump, top', role: 'floor', surface: 'soft' },
    { id: 'hump-front-face', name: 'Hump, front face', role: 'other', surface: 'hard' },
    { id: 'floor-front', name: 'Floor, in front of the hump', role: 'floor', surface: 'soft' },
  ];
  return { corners, walls, impossible };
}

type Places = {
  readonly foot: PointMm;
  readonly floorEnd: PointMm;
  readonly lip: PointMm;
  readonly front: PointMm;
  /** Seat underside half way; null where nobody measured it. */
  readonly middle: PointMm | null;
  readonly back: PointMm;
};

function placesOf(read: Reader): Places {
  const depthMm = read.of('floorDepth');
  const middleMm = read.ifKnown('middleHeight');
  return {
    foot: { xMm: 0, yMm: 0 },
    floorEnd: { xMm: depthMm, yMm: 0 },
    lip: { xMm: depthMm, yMm: read.of('lipHeight') },
    front: { xMm: depthMm, yMm: read.of('frontHeight') },
    middle: middleMm === null ? null : { xMm: depthMm / 2, yMm: middleMm },
    back: { xMm: 0, yMm: read.of('backHeight') },
  };
}

export function constructUnderSeat(form: SectionForm, values: DimensionValues): Construction {
  const read = reader(form, values);
  const places = placesOf(read);
  const { foot, lip, front } = places;
  const hump = humpOf(read, places.floorEnd.xMm);
  const { corners, walls } = outlineOf(places, hump);
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
    derived: new Map([
      ['openingHeight', front.yMm - lip.yMm],
      ['footToFrontEdge', betweenMm(foot, front)],
    ]),
    anchors: anchorsOf(read, places),
    comparisons: [],
    impossible: [...hump.impossible, ...lipTooHigh(lip.yMm, front.yMm)],
    findings: [],
  };
}

function outlineOf({ foot, floorEnd, lip, front, middle, back }: Places, hump: Hump) {
  const seat = { role: 'seat-underside', surface: 'hard' } as const;
  const corners: PlannedCorner[] = [
    { id: 'foot', at: foot },
    ...hump.corners,
    { id: 'floor-end', at: floorEnd },
    { id: 'lip', at: lip },
    { id: 'front-edge', at: front },
  ];
  const walls: PlannedWall[] = [
    { id: 'floor', name: 'Floor', role: 'floor', surface: 'soft' },
    ...hump.walls,
    { id: 'lip', name: 'Lip across the front', role: 'sill', surface: 'hard' },
    { id: 'opening', name: 'Opening, under the front edge', role: 'opening', surface: 'open' },
  ];
  if (middle !== null) {
    corners.push({ id: 'middle', at: middle });
    walls.push({ id: 'seat-front', name: 'Seat underside, front', ...seat });
  }
  corners.push({ id: 'back-top', at: back });
  walls.push(
    { id: 'seat-rear', name: 'Seat underside', ...seat },
    { id: 'cab-wall', name: 'Cab wall', role: 'cab-wall', surface: 'hard' },
  );
  return { corners, walls };
}

function anchorsOf(read: Reader, { foot, floorEnd, lip, front, back }: Places): PlannedAnchor[] {
  const halfMm = floorEnd.xMm / 2;
  const middle = { xMm: halfMm, yMm: read.of('middleHeight') };
  return [
    straight('floorDepth', foot, floorEnd),
    straight('backHeight', foot, back),
    straight('middleHeight', { xMm: halfMm, yMm: 0 }, middle),
    straight('frontHeight', floorEnd, front),
    straight('lipHeight', floorEnd, lip),
    ...humpAnchors(read),
    straight('openingHeight', lip, front),
    straight('footToFrontEdge', foot, front),
    acrossAt('width', halfMm, read.of('width')),
    acrossAt('openingWidth', floorEnd.xMm, read.of('openingWidth')),
  ];
}

function lipTooHigh(lipMm: number, frontMm: number): Impossible[] {
  if (lipMm < frontMm) return [];
  return [
    {
      key: 'lipHeight',
      allowed: `below the front edge of the seat (${frontMm} mm)`,
      got: lipMm,
      why: `a lip ${lipMm} mm high closes an opening that ends ${frontMm} mm up`,
    },
  ];
}

function humpAnchors(read: Reader) {
  const fromMm = read.of('humpFrom');
  const toMm = fromMm + read.of('humpLength');
  const topMm = read.of('humpHeight');
  return [
    straight('humpFrom', { xMm: 0, yMm: topMm }, { xMm: fromMm, yMm: topMm }),
    straight('humpLength', { xMm: fromMm, yMm: topMm }, { xMm: toMm, yMm: topMm }),
    straight('humpHeight', { xMm: toMm, yMm: 0 }, { xMm: toMm, yMm: topMm }),
  ];
}
