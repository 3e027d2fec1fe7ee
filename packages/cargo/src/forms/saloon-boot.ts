// Boot of a saloon, side section on the centre line: floor, sill, opening under the lid, parcel shelf, seat back.
//
//        seat top  S--shelf--K
//                 /           \   opening
//      seat back /             L  lip
//               O----floor-----F sill
import type { SectionForm } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import { type Construction, type DimensionValues, type PlannedWall, reader } from './construction.ts';
import { LETTERS, lengthDimension } from './dimension.ts';
import {
  betweenMm,
  diagonalDimension,
  floorDepthDimension,
  floorRiseDimension,
  frameAnchor,
  lidFrameDimension,
  seatFloorAndSill,
  seatLeanDimension,
  sillHeightDimension,
  sillLeanDimension,
  straight,
} from './shared-walls.ts';
import { archAnchors, archDimensions, archSlabs, openingWidthComparison } from './widths.ts';

const FIRST_WIDTH_LETTER = LETTERS.indexOf('N');

export const SALOON_BOOT: SectionForm = {
  id: 'saloon-boot',
  kind: 'saloon-boot',
  name: 'Saloon boot',
  construction: { by: 'saloon-boot' },
  dimensions: [
    floorDepthDimension('A'),
    lengthDimension({
      key: 'seatHeight',
      letter: 'B',
      label: 'Height at the seat back',
      hint: 'Plumb from the floor to the underside of the parcel shelf, where it meets the seat back.',
      highlights: ['seat-back'],
      rangeMm: [100, 1500],
      typicalMm: 520,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'shelfDepth',
      letter: 'C',
      label: 'Parcel shelf, seat back to opening',
      hint: 'Level under the shelf, from the top of the seat back to the near edge of the opening.',
      highlights: ['shelf'],
      rangeMm: [20, 2000],
      typicalMm: 260,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'shelfEdgeHeight',
      letter: 'D',
      label: 'Height at the near edge of the opening',
      hint: 'Plumb from the floor to the lower edge of the metal, trim on.',
      highlights: ['shelf', 'opening'],
      rangeMm: [100, 1500],
      typicalMm: 500,
      onSoftTrim: true,
    }),
    sillHeightDimension('E'),
    seatLeanDimension('F'),
    sillLeanDimension('G'),
    floorRiseDimension('H'),
    lidFrameDimension('J'),
    lengthDimension({
      key: 'openingHeight',
      letter: 'K',
      label: 'Opening, square to the way in',
      hint: 'From the sill lip straight to the near edge of the opening, at right angles to the travel.',
      need: 'check',
      highlights: ['opening'],
      rangeMm: [50, 2500],
      typicalMm: 560,
    }),
    diagonalDimension('footToEdge', 'L', 'Seat foot to the near edge of the opening'),
    diagonalDimension('floorEndToSeatTop', 'M', 'Sill foot to the top of the seat back'),
    ...archDimensions(FIRST_WIDTH_LETTER),
  ],
};

const WALLS: readonly PlannedWall[] = [
  { id: 'floor', name: 'Floor', role: 'floor', surface: 'soft' },
  { id: 'sill', name: 'Sill', role: 'sill', surface: 'hard' },
  { id: 'opening', name: 'Opening, lid shut', role: 'opening', surface: 'open' },
  { id: 'shelf', name: 'Parcel shelf', role: 'shelf', surface: 'hard' },
  { id: 'seat-back', name: 'Seat back', role: 'seat-back', surface: 'soft' },
];

export function constructSaloonBoot(form: SectionForm, values: DimensionValues): Construction {
  const read = reader(form, values);
  const { foot, floorEnd, lip, seatTop, anchors, impossible } = seatFloorAndSill(read);
  const edge: PointMm = { xMm: seatTop.xMm + read.of('shelfDepth'), yMm: read.of('shelfEdgeHeight') };
  const points = [foot, floorEnd, lip, edge, seatTop];
  const slabs = archSlabs(read, points);
  const openingWidthMm = read.of('openingWidth');
  return {
    corners: [
      { id: 'foot', at: foot },
      { id: 'floor-end', at: floorEnd },
      { id: 'lip', at: lip },
      { id: 'edge', at: edge },
      { id: 'seat-top', at: seatTop },
    ],
    walls: WALLS,
    slabs,
    openingWidthMm,
    lidFrameMm: read.of('lidFrame'),
    derived: new Map([
      ['openingHeight', betweenMm(lip, edge)],
      ['footToEdge', betweenMm(foot, edge)],
      ['floorEndToSeatTop', betweenMm(floorEnd, seatTop)],
    ]),
    anchors: [
      ...anchors,
      straight('shelfDepth', { xMm: seatTop.xMm, yMm: edge.yMm }, edge),
      straight('shelfEdgeHeight', { xMm: edge.xMm, yMm: 0 }, edge),
      straight('openingHeight', lip, edge),
      straight('lidFrame', ...frameAnchor(lip, edge, read.of('lidFrame'))),
      straight('footToEdge', foot, edge),
      straight('floorEndToSeatTop', floorEnd, seatTop),
      ...archAnchors(read, points),
    ],
    comparisons: [openingWidthComparison('openingWidth', openingWidthMm, slabs)],
    impossible,
    findings: [],
  };
}
