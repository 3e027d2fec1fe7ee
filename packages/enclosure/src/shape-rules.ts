// Second half of the door: figures of a design against each other, before any wall has a thickness.
import type { BoxDesign, BoxShape, MountedDrivers, WallFace } from '@gusset/contracts/enclosure';
import { type Refusal, refuse } from '@gusset/units';
import {
  CORNER_MIN_RAD,
  HOLES_PER_PANEL,
  MITRE_FROM_RAD,
  OUTSIDE_MM,
  SLOT_CORNER_MIN_RAD,
  TURN_MIN_RAD,
} from './limits.ts';
import { polygonExtent } from './plane.ts';
import { narrowestPair } from './simple-polygon.ts';
import { cornerAngleRad, type Wall, wallRing } from './wall-ring.ts';

const rounded = (value: number) => Number(value.toFixed(2));
const degrees = (rad: number) => rounded((rad * 180) / Math.PI);

/** The field that someone would change to make a wall longer. */
export function fieldOfWall(shape: BoxShape, face: WallFace): string {
  switch (shape.kind) {
    case 'rectangular':
      return face === 'bottom' || face === 'top' ? 'shape.depthMm' : 'shape.heightMm';
    case 'wedge':
    case 'clipped-wedge':
      if (face === 'bottom') return 'shape.depthBottomMm';
      if (face === 'top') return 'shape.depthTopMm';
      return shape.kind === 'clipped-wedge' && (face === 'slope-1' || face === shape.slopedFace)
        ? 'shape.kneeHeightMm'
        : 'shape.heightMm';
    case 'profile':
      return `shape.walls[${shape.walls.findIndex((wall) => wall.face === face)}]`;
  }
}

function refuseWedge(shape: BoxShape): Refusal | null {
  if (shape.kind !== 'wedge' && shape.kind !== 'clipped-wedge') return null;
  const { depthBottomMm, depthTopMm, heightMm } = shape;
  const overhangMm = depthTopMm - depthBottomMm;
  if (overhangMm > 0) {
    return refuse('shape.depthTopMm', {
      allowed: `at most the bottom depth, ${depthBottomMm} mm`,
      got: depthTopMm,
      why: `the top is ${rounded(overhangMm)} mm deeper than the bottom`,
    });
  }
  if (shape.kind === 'clipped-wedge' && shape.kneeHeightMm >= heightMm) {
    return refuse('shape.kneeHeightMm', {
      allowed: `below the box height, ${heightMm} mm`,
      got: shape.kneeHeightMm,
      why: `the knee stands ${rounded(shape.kneeHeightMm - heightMm)} mm above the top`,
    });
  }
  return null;
}

/** Which way a named wall has to look; slopes may look anywhere. */
const LOOKS: Partial<Record<WallFace, { readonly axis: 'x' | 'y'; readonly sign: 1 | -1 }>> = {
  bottom: { axis: 'y', sign: -1 },
  top: { axis: 'y', sign: 1 },
  front: { axis: 'x', sign: 1 },
  back: { axis: 'x', sign: -1 },
};

function refuseProfile(shape: BoxShape): Refusal | null {
  if (shape.kind !== 'profile') return null;
  const { walls } = shape;
  const faces = walls.map((wall) => wall.face);
  if (!faces.includes('bottom')) {
    return refuse('shape.walls', {
      allowed: 'one wall named bottom',
      got: null,
      why: 'nothing stands on the floor',
    });
  }
  for (const [index, face] of faces.entries()) {
    if (faces.indexOf(face) !== index) {
      const why = 'two walls carry the same name';
      return refuse(`shape.walls[${index}].face`, { allowed: 'each face once', got: face, why });
    }
  }
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = polygonExtent(walls);
  const spans = [xMaxMm - xMinMm, yMaxMm - yMinMm];
  const wrong = spans.find((spanMm) => spanMm < OUTSIDE_MM.min || spanMm > OUTSIDE_MM.max);
  if (wrong === undefined) return null;
  return refuse('shape.walls', {
    allowed: `a side view of ${OUTSIDE_MM.min} to ${OUTSIDE_MM.max} mm each way`,
    got: rounded(wrong),
    why: `the side view is ${rounded(wrong)} mm from edge to edge`,
  });
}

const COINCIDENT_MM = 1; // corners closer than this are one corner drawn twice

function refuseRing(shape: BoxShape, walls: readonly Wall[]): Refusal | null {
  for (const wall of walls) {
    if (!(wall.lengthMm >= COINCIDENT_MM)) {
      const why = `the ${wall.face} wall has no length`;
      return refuse(fieldOfWall(shape, wall.face), {
        allowed: `above ${COINCIDENT_MM} mm`,
        got: wall.lengthMm,
        why,
      });
    }
  }
  return walls.reduce<Refusal | null>(
    (found, wall, index) => found ?? refuseCorner(shape, walls, wall, index) ?? refuseLook(shape, wall),
    null,
  );
}

function refuseCorner(shape: BoxShape, walls: readonly Wall[], wall: Wall, index: number): Refusal | null {
  const angleRad = cornerAngleRad(walls, index);
  // A hollow corner is judged by the angle outside it.
  const isHollow = angleRad > Math.PI;
  const seenRad = isHollow ? 2 * Math.PI - angleRad : angleRad;
  const [least, most] = [CORNER_MIN_RAD, Math.PI - TURN_MIN_RAD];
  if (seenRad >= least && seenRad <= most) return null;
  const short = seenRad < least;
  return refuse(fieldOfWall(shape, wall.face), {
    allowed: `${isHollow ? 'hollow' : 'inside'} corners of ${degrees(least)} to ${degrees(most)} degrees`,
    got: degrees(seenRad),
    why: `the corner where the ${wall.face} wall starts is ${degrees(short ? least - seenRad : seenRad - most)} degrees too ${short ? 'sharp' : 'flat'}`,
  });
}

function refuseLook(shape: BoxShape, wall: Wall): Refusal | null {
  const look = LOOKS[wall.face];
  if (look === undefined || wall.out[look.axis] * look.sign > 0) return null;
  return refuse(fieldOfWall(shape, wall.face), {
    allowed: `a ${wall.face} wall that looks to the ${wall.face}`,
    got: wall.face,
    why: 'the wall looks the other way; corners go counter-clockwise, seen with the front on the right',
  });
}

/** A ring goes round once when its turns add up to a full circle; a star goes round twice. One with hollow corners may
 * cross itself all the same. */
function refuseStar(shape: BoxShape, walls: readonly Wall[]): Refusal | null {
  const turns = walls.reduce((sum, _, index) => sum + Math.PI - cornerAngleRad(walls, index), 0);
  const crossed = narrowestPair(walls.map((wall) => wall.from))?.roomMm === 0;
  if (!crossed && Math.abs(turns - 2 * Math.PI) < 1e-6) return null; // radians; rounding only
  return refuse(shape.kind === 'profile' ? 'shape.walls' : 'shape', {
    allowed: 'corners that go round once, counter-clockwise',
    got: crossed ? 'two walls that cross' : `${degrees(turns)} degrees of turning`,
    why: 'the outline crosses itself',
  });
}

export function refuseShape({ shape }: BoxDesign): Refusal | null {
  const early = refuseWedge(shape) ?? refuseProfile(shape);
  if (early !== null) return early;
  const walls = wallRing(shape);
  return refuseRing(shape, walls) ?? refuseStar(shape, walls);
}

/** Wood that stays under a rabbet. */
const UNDER_RABBET_MM = 3;

/** A rabbet leaves wood in every panel that may carry one. */
export function refuseRabbets({ joints, stock }: BoxDesign): Refusal | null {
  const { rabbetDepthMm, kinds, sides } = joints;
  if (kinds.sides === 'rabbet' && sides === 'covered') {
    const why = 'the walls run over the sides, which have no room for a rabbet';
    return refuse('joints.kinds.sides', { allowed: 'butt, or sides that run through', got: 'rabbet', why });
  }
  if (rabbetDepthMm === null || !Object.values(kinds).includes('rabbet')) return null;
  const thinnestMm = Math.min(stock.carcass.thicknessMm, (stock.baffle ?? stock.carcass).thicknessMm);
  const mostMm = thinnestMm - UNDER_RABBET_MM;
  if (rabbetDepthMm >= 1 && rabbetDepthMm <= mostMm) return null;
  return refuse('joints.rabbetDepthMm', {
    allowed: `1 to ${rounded(mostMm)} mm`,
    got: rabbetDepthMm,
    why: `a board of ${thinnestMm} mm keeps ${rounded(thinnestMm - rabbetDepthMm)} mm under it`,
  });
}

/** A baffle that is set back needs something that runs on round it. */
export function refuseSetBack({ baffle, joints, ports, shape }: BoxDesign): Refusal | null {
  if (baffle.setBackMm === 0) return null;
  const walls = wallRing(shape);
  const index = walls.findIndex((wall) => wall.face === baffle.face);
  const isOpen = [index, index + 1].some((corner) => {
    const angleRad = cornerAngleRad(walls, corner);
    return angleRad < SLOT_CORNER_MIN_RAD || angleRad > MITRE_FROM_RAD;
  });
  const isSlotted = ports.some(
    (port) => port.kind === 'slot' && (port.face === baffle.face || port.along === baffle.face),
  );
  const reasons = [
    [baffle.doubler?.at === 'outside', 'a doubler outside lies over its edges'],
    [joints.sides === 'covered' || joints.kinds.sides === 'rabbet', 'the sides do not run on plain past it'],
    [isSlotted, 'a slot opens through it, or runs along it'],
    [isOpen, 'a corner beside it is sharper than 45 or flatter than 135 degrees'],
  ] as const;
  const why = reasons.find(([holds]) => holds)?.[1];
  return why === undefined
    ? null
    : refuse('baffle.setBackMm', { allowed: '0: the baffle flush', got: baffle.setBackMm, why });
}

function refuseBody({ body }: MountedDrivers): Refusal | null {
  const { overallDiaMm, cutoutDiaMm, boltCircleDiaMm, magnetDiaMm, poleVentDiaMm } = body;
  const between = (field: string, got: number, above: number, below: number, why: string) =>
    got > above && got < below
      ? null
      : refuse(`drivers.body.${field}`, { allowed: `between ${above} and ${below} mm`, got, why });
  return (
    between('cutoutDiaMm', cutoutDiaMm, 0, overallDiaMm, 'the flange has to cover the cut-out') ??
    between('boltCircleDiaMm', boltCircleDiaMm, cutoutDiaMm, overallDiaMm, 'bolts stand in the flange') ??
    (poleVentDiaMm === null
      ? null
      : between('poleVentDiaMm', poleVentDiaMm, 0, magnetDiaMm, 'the vent goes through the magnet'))
  );
}

export function refuseDrivers({ drivers, terminalCup }: BoxDesign): Refusal | null {
  if (drivers === null) return null;
  const { count, positions, body } = drivers;
  if (positions !== null && positions.length !== count) {
    const why = `${count} drivers need ${count} places`;
    return refuse('drivers.positions', { allowed: `${count} positions`, got: positions.length, why });
  }
  const holes = count * (body.boltCount + 2) + (terminalCup === null ? 0 : 1);
  if (holes > HOLES_PER_PANEL) {
    const why = `${count} drivers with ${body.boltCount} bolts make ${holes} holes in one panel`;
    return refuse('drivers.body.boltCount', {
      allowed: `${HOLES_PER_PANEL} holes`,
      got: body.boltCount,
      why,
    });
  }
  return refuseBody(drivers);
}
