// Passenger footwell, side section: foot of the toe board at x = 0, x toward the seat (the way the box comes out), y up.
// The toe board leans away from the seat; the way in is the plane from the end of the floor up to the edge of the dash.
//
//     toe top S----dash----E
//            /             |  opening
//       toe /              |
//     board O----floor-----F
import type { SectionForm } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import { boundsOf, rectangle } from '../plane/polygon.ts';
import {
  type Construction,
  type DimensionValues,
  type Impossible,
  type PlannedAnchor,
  type PlannedSlab,
  type PlannedWall,
  type Reader,
  reader,
} from './construction.ts';
import { angleDimension, lengthDimension } from './dimension.ts';
import { betweenMm, diagonalDimension, straight } from './shared-walls.ts';
import { acrossAt, openingWidthComparison } from './widths.ts';

export const FOOTWELL: SectionForm = {
  id: 'footwell',
  kind: 'footwell',
  name: 'Passenger footwell',
  construction: { by: 'footwell' },
  dimensions: [
    lengthDimension({
      key: 'floorDepth',
      letter: 'A',
      label: 'Floor, toe board to the end of the room',
      hint: 'Along the floor from the foot of the toe board to where the feet must still find room. Never at the pedals.',
      highlights: ['floor'],
      rangeMm: [60, 1200],
      typicalMm: 320,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'toeHeight',
      letter: 'B',
      label: 'Toe board, height to the underside of the dash',
      hint: 'Plumb from the floor to the first thing under the dash: heater box, loom, bracket.',
      highlights: ['toe-board', 'dash'],
      rangeMm: [80, 900],
      typicalMm: 420,
      onSoftTrim: true,
    }),
    angleDimension({
      key: 'toeLean',
      letter: 'C',
      label: 'Toe board, lean from plumb',
      hint: 'Angle finder flat on the board. Plus where its top leans away from the seat.',
      tighter: 'smaller',
      highlights: ['toe-board'],
      rangeDegrees: [-20, 75],
      typicalDegrees: 35,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'dashDepth',
      letter: 'D',
      label: 'Underside of the dash, toe board to its edge',
      hint: 'Level, from the top of the toe board to the edge that knees pass.',
      highlights: ['dash'],
      rangeMm: [40, 1200],
      typicalMm: 420,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'dashEdgeHeight',
      letter: 'E',
      label: 'Height under the edge of the dash',
      hint: 'Plumb from the floor line to the lowest edge, glove box shut.',
      highlights: ['dash', 'opening'],
      rangeMm: [80, 900],
      typicalMm: 460,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'floorRise',
      letter: 'F',
      label: 'Floor, rise toward the seat',
      hint: 'Level from the foot of the toe board; how much the floor has risen at its end. Minus where it falls.',
      need: 'optional',
      tighter: 'larger',
      highlights: ['floor'],
      rangeMm: [-150, 200],
      typicalMm: 0,
      onSoftTrim: true,
      assumed: { valueMm: 0, plusMinusMm: 5, why: 'floor taken as level' },
    }),
    lengthDimension({
      key: 'openingHeight',
      letter: 'G',
      label: 'End of the floor to the edge of the dash',
      hint: 'Straight, tape tight. A check: it tests the other dimensions.',
      need: 'check',
      highlights: ['opening'],
      rangeMm: [60, 1500],
      typicalMm: 460,
      onSoftTrim: true,
    }),
    diagonalDimension('footToDashEdge', 'H', 'Foot of the toe board to the edge of the dash'),
    diagonalDimension('floorEndToToeTop', 'J', 'End of the floor to the top of the toe board'),
    lengthDimension({
      key: 'floorWidth',
      letter: 'K',
      label: 'Width at the floor',
      hint: 'Tunnel to kick panel at the narrowest place, trim on.',
      view: 'plan',
      highlights: ['low'],
      rangeMm: [100, 1200],
      typicalMm: 440,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'upperWidth',
      letter: 'L',
      label: 'Width under the dash',
      hint: 'Tunnel or console to side trim. Left out: the width at the floor holds everywhere.',
      need: 'optional',
      view: 'plan',
      highlights: ['high'],
      rangeMm: [100, 1200],
      typicalMm: 500,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'upperFrom',
      letter: 'M',
      label: 'Where that width begins, above the floor',
      hint: 'Plumb from the floor to where the tunnel or the kick panel steps back.',
      need: 'optional',
      tighter: 'larger',
      highlights: ['toe-board'],
      rangeMm: [10, 800],
      typicalMm: 200,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'openingWidth',
      letter: 'N',
      label: 'Width of the way in',
      hint: 'The narrowest place the box is carried through: door, seat at its rearmost, console.',
      view: 'plan',
      highlights: ['opening'],
      rangeMm: [100, 1500],
      typicalMm: 430,
    }),
  ],
};

const WALLS: readonly PlannedWall[] = [
  { id: 'floor', name: 'Floor', role: 'floor', surface: 'soft' },
  { id: 'opening', name: 'Opening, toward the seat', role: 'opening', surface: 'open' },
  { id: 'dash', name: 'Underside of the dash', role: 'shelf', surface: 'hard' },
  { id: 'toe-board', name: 'Toe board', role: 'cab-wall', surface: 'soft' },
];

type Places = {
  readonly foot: PointMm;
  readonly floorEnd: PointMm;
  readonly edge: PointMm;
  readonly toeTop: PointMm;
};

function placesOf(read: Reader): Places {
  const riseMm = read.of('floorRise');
  const depthMm = read.of('floorDepth');
  const toeMm = read.of('toeHeight');
  const toeTop = { xMm: -toeMm * Math.tan(read.of('toeLean')), yMm: toeMm };
  return {
    foot: { xMm: 0, yMm: 0 },
    floorEnd: { xMm: Math.sqrt(Math.max(0, depthMm ** 2 - riseMm ** 2)), yMm: riseMm },
    edge: { xMm: toeTop.xMm + read.of('dashDepth'), yMm: read.of('dashEdgeHeight') },
    toeTop,
  };
}

export function constructFootwell(form: SectionForm, values: DimensionValues): Construction {
  const read = reader(form, values);
  const places = placesOf(read);
  const { foot, floorEnd, edge, toeTop } = places;
  const widths = widthsOf(read, [foot, floorEnd, edge, toeTop]);
  const openingWidthMm = read.of('openingWidth');
  return {
    corners: [
      { id: 'foot', at: foot },
      { id: 'floor-end', at: floorEnd },
      { id: 'edge', at: edge },
      { id: 'toe-top', at: toeTop },
    ],
    walls: WALLS,
    slabs: widths.slabs,
    openingWidthMm,
    lidFrameMm: 0,
    derived: new Map([
      ['openingHeight', betweenMm(floorEnd, edge)],
      ['footToDashEdge', betweenMm(foot, edge)],
      ['floorEndToToeTop', betweenMm(floorEnd, toeTop)],
    ]),
    anchors: anchorsOf(read, places),
    comparisons: [openingWidthComparison('openingWidth', openingWidthMm, widths.slabs)],
    impossible: impossibleOf(read),
    findings: widths.findings,
  };
}

function impossibleOf(read: Reader): Impossible[] {
  const riseMm = read.of('floorRise');
  const depthMm = read.of('floorDepth');
  const edgeMm = read.of('dashEdgeHeight');
  const impossible: Impossible[] = [];
  if (Math.abs(riseMm) >= depthMm) {
    impossible.push({
      key: 'floorRise',
      allowed: `less than the floor is long (${depthMm} mm)`,
      got: riseMm,
      why: `a floor ${depthMm} mm long cannot rise ${riseMm} mm`,
    });
  }
  if (riseMm >= edgeMm) {
    impossible.push({
      key: 'dashEdgeHeight',
      allowed: `above the end of the floor (${riseMm} mm)`,
      got: edgeMm,
      why: `the edge of the dash stands ${(riseMm - edgeMm).toFixed(1)} mm below the end of the floor`,
    });
  }
  return impossible;
}

/** Wider higher up only with both: how wide, and from where. */
function widthsOf(
  read: Reader,
  corners: readonly PointMm[],
): { readonly slabs: PlannedSlab[]; readonly findings: Construction['findings'] } {
  const bounds = boundsOf(corners);
  const floorMm = read.of('floorWidth');
  const low = { id: 'low', name: 'at the floor', widthMm: floorMm };
  const upperMm = read.ifKnown('upperWidth');
  const fromMm = read.ifKnown('upperFrom');
  if (upperMm === null || fromMm === null) {
    const lonely =
      upperMm !== null
        ? (['upperWidth', 'upperFrom'] as const)
        : fromMm !== null
          ? (['upperFrom', 'upperWidth'] as const)
          : null;
    return {
      slabs: [{ ...low, polygon: rectangle(bounds) }],
      findings: lonely === null ? [] : [{ code: 'partner-missing', key: lonely[0], missing: [lonely[1]] }],
    };
  }
  const stepMm = Math.min(bounds.yMaxMm, Math.max(bounds.yMinMm, fromMm));
  const high = {
    id: 'high',
    name: 'under the dash',
    widthMm: upperMm,
    polygon: rectangle({ ...bounds, yMinMm: stepMm }),
  };
  const lowPart = { ...low, polygon: rectangle({ ...bounds, yMaxMm: stepMm }) };
  return {
    slabs: [lowPart, high].filter(({ polygon }) => boundsOf(polygon).yMaxMm > boundsOf(polygon).yMinMm),
    findings: [],
  };
}

function anchorsOf(read: Reader, { foot, floorEnd, edge, toeTop }: Places): PlannedAnchor[] {
  const plumb = { xMm: 0, yMm: toeTop.yMm };
  // Clear of the lean, which is drawn level with the top of the toe board.
  const topMm = Math.max(edge.yMm, toeTop.yMm);
  return [
    straight('floorDepth', foot, floorEnd),
    straight('toeHeight', foot, plumb),
    { key: 'toeLean', view: 'section', from: plumb, to: toeTop, vertex: foot },
    straight('dashDepth', { xMm: toeTop.xMm, yMm: topMm }, { xMm: edge.xMm, yMm: topMm }),
    straight('dashEdgeHeight', { xMm: edge.xMm, yMm: 0 }, edge),
    straight('floorRise', { xMm: floorEnd.xMm, yMm: 0 }, floorEnd),
    straight('openingHeight', floorEnd, edge),
    straight('footToDashEdge', foot, edge),
    straight('floorEndToToeTop', floorEnd, toeTop),
    straight(
      'upperFrom',
      { xMm: floorEnd.xMm / 2, yMm: 0 },
      { xMm: floorEnd.xMm / 2, yMm: read.of('upperFrom') },
    ),
    acrossAt('floorWidth', floorEnd.xMm / 2, read.of('floorWidth')),
    acrossAt('upperWidth', floorEnd.xMm / 4, read.of('upperWidth')),
    acrossAt('openingWidth', Math.max(floorEnd.xMm, edge.xMm), read.of('openingWidth')),
  ];
}
