// Spare-wheel well, side section through its middle: x from its near rim (toward the seat) to its far one, y up from the
// bottom; the way in is the top, at the underside of the floor panel. A round well is given by how far its corners,
// seen from above, are rounded.
//
//      far rim ____opening____ near rim        from above:   .--------.   corner reach r
//             \               /                             (          )  widest across W
//              \____bottom___/                               '--------'
import type { SectionForm } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import {
  type Construction,
  type DimensionValues,
  type Impossible,
  type PlannedAnchor,
  type PlannedCorner,
  type PlannedSlab,
  type PlannedWall,
  type Reader,
  reader,
} from './construction.ts';
import { lengthDimension } from './dimension.ts';
import { betweenMm, diagonalDimension, straight } from './shared-walls.ts';
import { wellSlabs } from './well-widths.ts';
import { acrossAt } from './widths.ts';

const rim = { onSoftTrim: false, highlights: ['opening'] } as const;

export const SPARE_WHEEL_WELL: SectionForm = {
  id: 'spare-wheel-well',
  kind: 'spare-wheel-well',
  name: 'Spare-wheel well',
  construction: { by: 'spare-wheel-well' },
  dimensions: [
    lengthDimension({
      ...rim,
      key: 'rimLength',
      letter: 'A',
      label: 'Rim, front to rear',
      hint: 'Across the middle of the well at floor level, rim to rim along the car.',
      rangeMm: [150, 1500],
      typicalMm: 640,
    }),
    lengthDimension({
      key: 'bottomLength',
      letter: 'B',
      label: 'Bottom, flat part front to rear',
      hint: 'Along the bottom through the middle, where it turns up to where it turns up.',
      highlights: ['bottom'],
      rangeMm: [100, 1500],
      typicalMm: 560,
    }),
    lengthDimension({
      key: 'depth',
      letter: 'C',
      label: 'Depth under the floor panel',
      hint: 'Straightedge over the rim; down to the bottom, less the thickness of the panel that lies in it.',
      highlights: ['front-wall', 'rear-wall'],
      rangeMm: [30, 800],
      typicalMm: 190,
    }),
    lengthDimension({
      key: 'frontStep',
      letter: 'D',
      label: 'Front rim to the bottom, level',
      hint: 'How far the wall toward the seat slopes in. Left out: the same at both ends.',
      need: 'optional',
      tighter: 'larger',
      highlights: ['front-wall'],
      rangeMm: [-100, 500],
      typicalMm: 40,
    }),
    lengthDimension({
      key: 'bossHeight',
      letter: 'E',
      label: 'Wheel mount, height',
      hint: 'Bottom to the top of whatever holds the wheel and stays. Leave all three out where nothing stands up.',
      need: 'optional',
      tighter: 'larger',
      highlights: ['boss-top'],
      rangeMm: [1, 500],
      typicalMm: 50,
    }),
    lengthDimension({
      key: 'bossFrom',
      letter: 'F',
      label: 'Front rim to the wheel mount, level',
      hint: 'From the rim toward the seat, level, to where the mount begins.',
      need: 'optional',
      highlights: ['boss-top'],
      rangeMm: [1, 1400],
      typicalMm: 280,
    }),
    lengthDimension({
      key: 'bossLength',
      letter: 'G',
      label: 'Wheel mount, along the car',
      hint: 'Where it begins to where it ends, bolt heads and weld flanges counted.',
      need: 'optional',
      tighter: 'larger',
      highlights: ['boss-top'],
      rangeMm: [1, 600],
      typicalMm: 80,
    }),
    diagonalDimension('frontRimToRearBottom', 'H', 'Front rim to the rear end of the bottom'),
    diagonalDimension('rearRimToFrontBottom', 'J', 'Rear rim to the front end of the bottom'),
    lengthDimension({
      key: 'rimWidth',
      letter: 'K',
      label: 'Rim, widest across',
      hint: 'Side to side at floor level, in the middle of the well.',
      view: 'plan',
      highlights: ['top'],
      rangeMm: [150, 1500],
      typicalMm: 640,
    }),
    lengthDimension({
      key: 'bottomWidth',
      letter: 'L',
      label: 'Bottom, widest across',
      hint: 'Side to side along the bottom. Left out: the sides slope in as the ends do.',
      need: 'optional',
      view: 'plan',
      highlights: ['bottom-0'],
      rangeMm: [100, 1500],
      typicalMm: 560,
    }),
    lengthDimension({
      key: 'cornerReach',
      letter: 'M',
      label: 'Rim, where the side begins to bend',
      hint: 'From the front rim along the car to where the side runs straight. A round well: half of A. Square corners: 0.',
      tighter: 'larger',
      view: 'plan',
      highlights: ['top'],
      rangeMm: [0, 750],
      typicalMm: 320,
    }),
    lengthDimension({
      key: 'openingWidth',
      letter: 'N',
      label: 'Hole in the floor, narrowest across',
      hint: 'Where the box goes down: panel frame, brackets and flanges counted.',
      view: 'plan',
      highlights: ['opening'],
      rangeMm: [100, 1500],
      typicalMm: 620,
    }),
  ],
};

const BOSS_KEYS = ['bossHeight', 'bossFrom', 'bossLength'] as const;

/** Of the section: where rims and ends of the bottom are. */
export type WellPlaces = {
  readonly frontRim: PointMm;
  readonly rearRim: PointMm;
  readonly frontBottom: PointMm;
  readonly rearBottom: PointMm;
};

function placesOf(read: Reader): WellPlaces {
  const rimMm = read.of('rimLength');
  const bottomMm = read.of('bottomLength');
  const depthMm = read.of('depth');
  const stepMm = read.ifKnown('frontStep') ?? (rimMm - bottomMm) / 2;
  return {
    frontRim: { xMm: 0, yMm: depthMm },
    rearRim: { xMm: rimMm, yMm: depthMm },
    frontBottom: { xMm: stepMm, yMm: 0 },
    rearBottom: { xMm: stepMm + bottomMm, yMm: 0 },
  };
}

export function constructSpareWheelWell(form: SectionForm, values: DimensionValues): Construction {
  const read = reader(form, values);
  const places = placesOf(read);
  const { frontRim, rearRim, frontBottom, rearBottom } = places;
  const boss = bossOf(read, places);
  const slabs = wellSlabs(places, {
    rimWidthMm: read.of('rimWidth'),
    bottomWidthMm: read.ifKnown('bottomWidth') ?? slopedIn(read),
    cornerReachMm: read.of('cornerReach'),
  });
  const openingWidthMm = read.of('openingWidth');
  return {
    corners: [
      { id: 'front-bottom', at: frontBottom },
      ...boss.corners,
      { id: 'rear-bottom', at: rearBottom },
      { id: 'rear-rim', at: rearRim },
      { id: 'front-rim', at: frontRim },
    ],
    walls: [
      { id: 'bottom', name: 'Bottom', role: 'floor', surface: 'hard' },
      ...boss.walls,
      { id: 'rear-wall', name: 'Rear wall', role: 'other', surface: 'hard' },
      { id: 'opening', name: 'Opening, under the floor panel', role: 'opening', surface: 'open' },
      { id: 'front-wall', name: 'Front wall', role: 'other', surface: 'hard' },
    ],
    slabs,
    openingWidthMm,
    lidFrameMm: 0,
    derived: new Map([
      ['frontRimToRearBottom', betweenMm(frontRim, rearBottom)],
      ['rearRimToFrontBottom', betweenMm(rearRim, frontBottom)],
    ]),
    anchors: anchorsOf(read, places, slabs),
    comparisons: [
      {
        code: 'opening-wider-than-cavity',
        key: 'openingWidth',
        openingMm: openingWidthMm,
        cavityMm: read.of('rimWidth'),
      },
    ],
    impossible: [...boss.impossible, ...cornersTooRound(read)],
    findings: [],
  };
}

/** Sides that nobody took slope in by as much as the ends do together. */
function slopedIn(read: Reader): number {
  return Math.max(1, read.of('rimWidth') - Math.max(0, read.of('rimLength') - read.of('bottomLength')));
}

function cornersTooRound(read: Reader): Impossible[] {
  const reachMm = read.of('cornerReach');
  return (['rimLength', 'rimWidth'] as const).flatMap((key) => {
    const halfMm = read.of(key) / 2;
    // Half of a tape's reading is rarely the other reading: a millimetre between the two is no contradiction.
    if (reachMm <= halfMm + HALF_SLACK_MM) return [];
    return [
      {
        key: 'cornerReach',
        allowed: `at most ${halfMm} mm, half of ${read.of(key)} mm`,
        got: reachMm,
        why: `corners that bend over ${reachMm} mm from either end overlap by ${(2 * (reachMm - halfMm)).toFixed(1)} mm`,
      },
    ];
  });
}

const HALF_SLACK_MM = 5;

type Boss = {
  readonly corners: PlannedCorner[];
  readonly walls: PlannedWall[];
  readonly impossible: Impossible[];
};

/** All three dimensions of the wheel mount or none; it stands on the bottom. */
function bossOf(read: Reader, { frontBottom, rearBottom }: WellPlaces): Boss {
  const missing = BOSS_KEYS.filter((key) => read.ifKnown(key) === null);
  if (missing.length === BOSS_KEYS.length) return { corners: [], walls: [], impossible: [] };
  const impossible: Impossible[] = missing.map((key) => ({
    key,
    allowed: 'all three dimensions of the wheel mount, or none',
    got: null,
    why: 'the wheel mount is only partly measured',
  }));
  const fromMm = read.of('bossFrom');
  const toMm = fromMm + read.of('bossLength');
  const topMm = read.of('bossHeight');
  if (missing.length === 0 && (fromMm <= frontBottom.xMm || toMm >= rearBottom.xMm)) {
    const overMm = Math.max(frontBottom.xMm - fromMm, toMm - rearBottom.xMm);
    impossible.push({
      key: 'bossFrom',
      allowed: `between ${frontBottom.xMm} and ${(rearBottom.xMm - (toMm - fromMm)).toFixed(1)} mm`,
      got: fromMm,
      why: `the wheel mount runs ${overMm.toFixed(1)} mm past the end of the bottom`,
    });
  }
  if (missing.length === 0 && topMm >= read.of('depth')) {
    impossible.push({
      key: 'bossHeight',
      allowed: `below the floor panel (${read.of('depth')} mm)`,
      got: topMm,
      why: `a wheel mount ${topMm} mm high stands ${(topMm - read.of('depth')).toFixed(1)} mm out of the well`,
    });
  }
  const corners = [
    { id: 'boss-front-foot', at: { xMm: fromMm, yMm: 0 } },
    { id: 'boss-front', at: { xMm: fromMm, yMm: topMm } },
    { id: 'boss-rear', at: { xMm: toMm, yMm: topMm } },
    { id: 'boss-rear-foot', at: { xMm: toMm, yMm: 0 } },
  ];
  const walls: PlannedWall[] = [
    { id: 'boss-front-face', name: 'Wheel mount, front face', role: 'other', surface: 'hard' },
    { id: 'boss-top', name: 'Wheel mount, top', role: 'other', surface: 'hard' },
    { id: 'boss-rear-face', name: 'Wheel mount, rear face', role: 'other', surface: 'hard' },
    { id: 'bottom-rear', name: 'Bottom, behind the wheel mount', role: 'floor', surface: 'hard' },
  ];
  return { corners, walls, impossible };
}

function anchorsOf(read: Reader, places: WellPlaces, slabs: readonly PlannedSlab[]): PlannedAnchor[] {
  const { frontRim, rearRim, frontBottom, rearBottom } = places;
  const middleMm = rearRim.xMm / 2;
  // Clear of the wheel mount and of the middles of the diagonals.
  const quarterMm = rearRim.xMm / 5;
  const bossFrom = { xMm: read.of('bossFrom'), yMm: read.of('bossHeight') };
  const bossTo = { xMm: bossFrom.xMm + read.of('bossLength'), yMm: bossFrom.yMm };
  const bottomMm = Math.min(...slabs.map(({ widthMm }) => widthMm));
  return [
    straight('rimLength', frontRim, rearRim),
    straight('bottomLength', frontBottom, rearBottom),
    straight('depth', { xMm: quarterMm, yMm: 0 }, { xMm: quarterMm, yMm: frontRim.yMm }),
    straight('frontStep', { xMm: 0, yMm: 0 }, frontBottom),
    straight('bossHeight', { xMm: bossTo.xMm, yMm: 0 }, bossTo),
    straight('bossFrom', { xMm: 0, yMm: bossFrom.yMm }, bossFrom),
    straight('bossLength', bossFrom, bossTo),
    straight('frontRimToRearBottom', frontRim, rearBottom),
    straight('rearRimToFrontBottom', rearRim, frontBottom),
    acrossAt('rimWidth', middleMm, read.of('rimWidth')),
    acrossAt('bottomWidth', middleMm + quarterMm, read.ifKnown('bottomWidth') ?? bottomMm),
    acrossAt('openingWidth', middleMm - quarterMm, read.of('openingWidth')),
    cornerAnchor(read),
  ];
}

/** Along the side, seen from above. */
function cornerAnchor(read: Reader): PlannedAnchor {
  const sideMm = -read.of('rimWidth') / 2;
  return {
    key: 'cornerReach',
    view: 'plan',
    from: { xMm: 0, yMm: sideMm },
    to: { xMm: read.of('cornerReach'), yMm: sideMm },
    vertex: null,
  };
}
