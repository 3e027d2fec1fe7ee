// Drivers on their baffle: size, edges, neighbours, wood under the recess, fixings, grille.
import type { BoxFinding } from '@gusset/contracts/enclosure';
import { baffleBuildMm, type Carcass } from './carcass.ts';
import { deepest } from './deepest.ts';
import { type DriverLayout, grilleRoomMm, type Seat } from './driver-layout.ts';
import { distanceAlong } from './plane.ts';
import { ringAt } from './ring.ts';
import { cornerAngleRad, insetLengthMm } from './wall-ring.ts';

/** From a recess to the inner face of the panel round the corner; to the outer edge it is one thickness more. */
export const EDGE_WOOD_MM = 20;
/** Between two recesses. */
export const NEIGHBOUR_WOOD_MM = 20;
/** Wood that must stay under a recess; else a doubler. */
export const UNDER_RECESS_MM = 12;
/** A length on the nose passes: rounding only. */
const EXACT_MM = 1e-6;

/** Ends of the outermost wood of the baffle, and how much of it the panels round the corner cover. */
function baffleSpan(carcass: Carcass, layout: DriverLayout) {
  const { baffleIndex, walls, wood, stocks } = carcass;
  const { foot, up, runsUp } = layout.axis;
  const ends = [
    { index: baffleIndex, neighbour: baffleIndex - 1 },
    { index: baffleIndex + 1, neighbour: baffleIndex + 1 },
  ].map(({ index, neighbour }) => ({
    upMm: distanceAlong(foot, ringAt(wood, index), up),
    // a thickness that meets the face at an angle covers more of it
    // and at a hollow corner none of it
    coveredMm: Math.max(0, ringAt(stocks, neighbour).thicknessMm / Math.sin(cornerAngleRad(walls, index))),
  }));
  const start = ringAt(ends, 0);
  const end = ringAt(ends, 1);
  return runsUp ? { lower: start, upper: end } : { lower: end, upper: start };
}

function sizeFindings(carcass: Carcass, layout: DriverLayout): BoxFinding[] {
  const { holes, body, seats } = layout;
  const { lower, upper } = baffleSpan(carcass, layout);
  const flangeMm = Math.max(holes.faceDiaMm, body.overallDiaMm);
  const rowMm = (diaMm: number) => seats.length * diaMm + (seats.length - 1) * NEIGHBOUR_WOOD_MM;
  const inOneRow = layout.drivers.positions === null;
  const across = (diaMm: number) => (inOneRow ? rowMm(diaMm) : diaMm);
  const clearUpMm = insetLengthMm(carcass.walls, carcass.free, carcass.baffleIndex);
  // Set back, a baffle shows only between the panels round it.
  const isSetBack = carcass.setBackMm > 0;
  const edgesMm = isSetBack ? lower.coveredMm + upper.coveredMm : 0;
  const widthMm = isSetBack ? carcass.innerWidthMm : carcass.widthMm;
  const sizes = [
    { measure: 'flange', direction: 'up', neededMm: flangeMm, haveMm: upper.upMm - lower.upMm - edgesMm },
    { measure: 'flange', direction: 'across', neededMm: across(flangeMm), haveMm: widthMm },
    { measure: 'cut-out', direction: 'up', neededMm: holes.cutoutDiaMm, haveMm: clearUpMm },
    {
      measure: 'cut-out',
      direction: 'across',
      neededMm: across(holes.cutoutDiaMm),
      haveMm: carcass.innerWidthMm,
    },
  ] as const;
  const over = sizes
    .map((size) => ({
      code: 'driver-larger-than-baffle' as const,
      ...size,
      byMm: size.neededMm - size.haveMm,
    }))
    .filter(({ byMm }) => byMm > EXACT_MM);
  return deepest(over, ({ direction }) => direction);
}

function edgeFindings(carcass: Carcass, layout: DriverLayout): BoxFinding[] {
  const { lower, upper } = baffleSpan(carcass, layout);
  const radiusMm = layout.holes.faceDiaMm / 2;
  const half = carcass.widthMm / 2;
  const sideNeedMm = carcass.sideStock.thicknessMm + EDGE_WOOD_MM;
  const near = layout.seats.flatMap(({ number, position: { zMm, upMm } }) => {
    const edges = [
      { edge: 'lower', distanceMm: upMm - lower.upMm, neededMm: lower.coveredMm + EDGE_WOOD_MM },
      { edge: 'upper', distanceMm: upper.upMm - upMm, neededMm: upper.coveredMm + EDGE_WOOD_MM },
      { edge: 'left', distanceMm: half - zMm, neededMm: sideNeedMm },
      { edge: 'right', distanceMm: half + zMm, neededMm: sideNeedMm },
    ] as const;
    return edges.map(({ edge, distanceMm, neededMm }) => ({
      code: 'driver-near-edge' as const,
      driver: number,
      edge,
      distanceMm: distanceMm - radiusMm,
      neededMm,
      byMm: neededMm - (distanceMm - radiusMm),
    }));
  });
  return deepest(
    near.filter(({ byMm }) => byMm > EXACT_MM),
    ({ edge }) => edge,
  );
}

const apartMm = (a: Seat, b: Seat) =>
  Math.hypot(a.position.zMm - b.position.zMm, a.position.upMm - b.position.upMm);

function neighbourFindings({ seats, holes }: DriverLayout): BoxFinding[] {
  return seats.flatMap((seat, index) =>
    seats.slice(index + 1).flatMap((other): BoxFinding[] => {
      const gapMm = apartMm(seat, other) - holes.faceDiaMm;
      const byMm = NEIGHBOUR_WOOD_MM - gapMm;
      if (byMm <= EXACT_MM) return [];
      const drivers: [number, number] = [seat.number, other.number];
      return [{ code: 'drivers-close', drivers, gapMm, neededMm: NEIGHBOUR_WOOD_MM, byMm }];
    }),
  );
}

/** A T-nut's flange lies behind the baffle, up to the cut-out; a screw or an insert wants as much wood round its
 * hole as the hole's own radius (estimate). */
function fixingFindings({ holes, body, drivers: { fixing } }: DriverLayout): BoxFinding[] {
  if (fixing === null || body.boltCount === 0) return [];
  const roomMm = (body.boltCircleDiaMm - holes.cutoutDiaMm) / 2;
  const neededMm = fixing.flangeDiaMm === null ? fixing.holeDiaMm : fixing.flangeDiaMm / 2;
  const byMm = neededMm - roomMm;
  return byMm <= EXACT_MM ? [] : [{ code: 'fixing-at-cutout', fixing: fixing.kind, roomMm, neededMm, byMm }];
}

function woodFindings(carcass: Carcass, { holes, body }: DriverLayout): BoxFinding[] {
  const findings: BoxFinding[] = [];
  const { outMm, inMm } = baffleBuildMm(carcass);
  const leftMm = outMm + inMm - holes.recessDepthMm;
  if (holes.recessDiaMm !== null && leftMm < UNDER_RECESS_MM - EXACT_MM) {
    const byMm = UNDER_RECESS_MM - leftMm;
    findings.push({ code: 'recess-thin', leftMm, neededMm: UNDER_RECESS_MM, byMm });
  }
  if (body.magnetDiaMm > holes.cutoutDiaMm) {
    findings.push({
      code: 'magnet-larger-than-cutout',
      magnetDiaMm: body.magnetDiaMm,
      cutoutDiaMm: holes.cutoutDiaMm,
      byMm: body.magnetDiaMm - holes.cutoutDiaMm,
    });
  }
  return findings;
}

function grilleFindings(layout: DriverLayout, standOffMm: number | null): BoxFinding[] {
  const neededMm = grilleRoomMm(layout);
  if (standOffMm === null || neededMm === null || standOffMm >= neededMm - EXACT_MM) return [];
  return [{ code: 'grille-close', standOffMm, neededMm, byMm: neededMm - standOffMm }];
}

export function baffleFindings(
  carcass: Carcass,
  layout: DriverLayout,
  grilleStandOffMm: number | null,
): BoxFinding[] {
  const missing: BoxFinding[] =
    layout.body.displacementLitres === null
      ? [{ code: 'driver-displacement-missing', count: layout.seats.length }]
      : [];
  return [
    ...sizeFindings(carcass, layout),
    ...edgeFindings(carcass, layout),
    ...neighbourFindings(layout),
    ...woodFindings(carcass, layout),
    ...fixingFindings(layout),
    ...grilleFindings(layout, grilleStandOffMm),
    ...missing,
  ];
}
