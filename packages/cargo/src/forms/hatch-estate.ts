// Cargo space of a hatch or estate, side section on the centre line. The opening is taken from lip to lid seal,
// square to the way in; how high the seal stands follows from it.
//
//        S----roof----K.
//       /               'R  seal
//      / seat back       |  opening
//     /                  L  lip
//    O-------floor------F  sill
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
import { LETTERS, lengthDimension } from './dimension.ts';
import {
  type Base,
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

const FIRST_WIDTH_LETTER = LETTERS.indexOf('P');

export const HATCH_ESTATE: SectionForm = {
  id: 'hatch-estate',
  kind: 'hatch-estate',
  name: 'Hatch or estate',
  construction: { by: 'hatch-estate' },
  dimensions: [
    floorDepthDimension('A'),
    lengthDimension({
      key: 'seatHeight',
      letter: 'B',
      label: 'Height at the seat back',
      hint: 'Plumb from the floor to the roof lining or load cover, above the top of the seat back.',
      highlights: ['seat-back', 'roof'],
      rangeMm: [100, 2200],
      typicalMm: 760,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'opening',
      letter: 'C',
      label: 'Opening, square to the way in',
      hint: 'Hold the tape at right angles to the travel, from the sill lip to the lid seal.',
      highlights: ['opening'],
      rangeMm: [100, 2500],
      typicalMm: 600,
    }),
    lengthDimension({
      key: 'roofDepth',
      letter: 'D',
      label: 'Roof, flat part',
      hint: 'Level under the roof, from above the seat back to where it bends down or meets the seal.',
      highlights: ['roof'],
      rangeMm: [20, 3500],
      typicalMm: 520,
      onSoftTrim: true,
    }),
    sillHeightDimension('E'),
    seatLeanDimension('F'),
    sillLeanDimension('G'),
    floorRiseDimension('H'),
    lengthDimension({
      key: 'sealDepth',
      letter: 'J',
      label: 'Seat foot to the lid seal, along the floor',
      hint: 'Plumb down from the seal; measure along the floor. Left out: the flat roof runs to the seal.',
      need: 'optional',
      highlights: ['header'],
      rangeMm: [50, 4000],
      typicalMm: 820,
      onSoftTrim: true,
    }),
    lidFrameDimension('K'),
    lengthDimension({
      key: 'sealHeight',
      letter: 'L',
      label: 'Height under the lid seal',
      hint: 'Plumb from the floor line to the seal at the top of the opening. A check on the opening.',
      need: 'check',
      highlights: ['opening'],
      rangeMm: [100, 2500],
      typicalMm: 740,
      onSoftTrim: true,
    }),
    diagonalDimension('footToSeal', 'M', 'Seat foot to the lid seal'),
    diagonalDimension('floorEndToSeatTop', 'N', 'Sill foot to the top of the seat back'),
    ...archDimensions(FIRST_WIDTH_LETTER),
  ],
};

type Roof = {
  readonly bend: PointMm | null;
  readonly seal: PointMm;
  readonly impossible: readonly Impossible[];
};

/** The seal lies one opening away from the lip, above it, at its own depth or at the end of the flat roof. */
function roofOf(read: Reader, lip: PointMm, seatTop: PointMm): Roof {
  const bend = { xMm: seatTop.xMm + read.of('roofDepth'), yMm: seatTop.yMm };
  const sealDepthMm = read.ifKnown('sealDepth');
  const sealXMm = sealDepthMm ?? bend.xMm;
  const openingMm = read.of('opening');
  const apartMm = Math.abs(sealXMm - lip.xMm);
  const riseMm = Math.sqrt(Math.max(0, openingMm * openingMm - apartMm * apartMm));
  const impossible: Impossible[] = [];
  if (apartMm > openingMm) {
    impossible.push({
      key: 'opening',
      allowed: `at least ${apartMm.toFixed(1)} mm: lip and seal are that far apart along the floor`,
      got: openingMm,
      why: `the opening is ${(apartMm - openingMm).toFixed(1)} mm too short to reach from the lip to the seal`,
    });
  }
  const seal = { xMm: sealXMm, yMm: lip.yMm + riseMm };
  return { bend: sealDepthMm === null ? null : bend, seal, impossible };
}

export function constructHatchEstate(form: SectionForm, values: DimensionValues): Construction {
  const read = reader(form, values);
  const base = seatFloorAndSill(read);
  const { foot, floorEnd, lip, seatTop, anchors, impossible } = base;
  const roof = roofOf(read, lip, seatTop);
  const points = [foot, floorEnd, lip, roof.seal, roof.bend ?? roof.seal, seatTop];
  const slabs = archSlabs(read, points);
  const openingWidthMm = read.of('openingWidth');
  return {
    ...outlineOf(base, roof),
    slabs,
    openingWidthMm,
    lidFrameMm: read.of('lidFrame'),
    derived: new Map([
      ['sealHeight', roof.seal.yMm],
      ['footToSeal', betweenMm(foot, roof.seal)],
      ['floorEndToSeatTop', betweenMm(floorEnd, seatTop)],
    ]),
    anchors: [...anchors, ...anchorsOf(read, base, roof), ...archAnchors(read, points)],
    comparisons: [
      openingWidthComparison('openingWidth', openingWidthMm, slabs),
      {
        code: 'opening-taller-than-cavity',
        key: 'opening',
        openingMm: roof.seal.yMm,
        cavityMm: seatTop.yMm,
      },
    ],
    impossible: [...impossible, ...roof.impossible],
    findings: [],
  };
}

function anchorsOf(
  read: Reader,
  { foot, floorEnd, lip, seatTop }: Base,
  { bend, seal }: Roof,
): PlannedAnchor[] {
  const bendAt = bend ?? seal;
  return [
    straight('opening', lip, seal),
    straight('roofDepth', { xMm: seatTop.xMm, yMm: bendAt.yMm }, bendAt),
    straight('sealDepth', { xMm: 0, yMm: seal.yMm }, seal),
    straight('lidFrame', ...frameAnchor(lip, seal, read.of('lidFrame'))),
    straight('sealHeight', { xMm: seal.xMm, yMm: 0 }, seal),
    straight('footToSeal', foot, seal),
    straight('floorEndToSeatTop', floorEnd, seatTop),
  ];
}

function outlineOf({ foot, floorEnd, lip, seatTop }: Base, roof: Roof) {
  const corners: PlannedCorner[] = [
    { id: 'foot', at: foot },
    { id: 'floor-end', at: floorEnd },
    { id: 'lip', at: lip },
    { id: 'seal', at: roof.seal },
  ];
  const walls: PlannedWall[] = [
    { id: 'floor', name: 'Floor', role: 'floor', surface: 'soft' },
    { id: 'sill', name: 'Sill', role: 'sill', surface: 'hard' },
    { id: 'opening', name: 'Opening, lid shut', role: 'opening', surface: 'open' },
  ];
  if (roof.bend !== null) {
    corners.push({ id: 'bend', at: roof.bend });
    walls.push({ id: 'header', name: 'Roof, bent part over the lid', role: 'header', surface: 'hard' });
  }
  corners.push({ id: 'seat-top', at: seatTop });
  walls.push(
    { id: 'roof', name: 'Roof', role: 'roof', surface: 'soft' },
    { id: 'seat-back', name: 'Seat back', role: 'seat-back', surface: 'soft' },
  );
  return { corners, walls };
}
