// What others see of a box: its sizes with and without finish, the areas to be finished, the lines to draw.
import type { BoxFace, BoxResult, BoxSize, Vector } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import type { BoxPlan } from './box-plan.ts';
import { baffleBuildMm, type Carcass } from './carcass.ts';
import { finishOnMm } from './driver-layout.ts';
import { outlineAreaMm2 } from './openings.ts';
import { polygonAreaMm2, polygonExtent } from './plane.ts';
import { ringAt } from './ring.ts';
import { inSpace } from './vector.ts';
import { insetRing } from './wall-ring.ts';

const MM2_PER_M2 = 1e6;
const MM2_PER_CM2 = 100;

function size(polygon: readonly PointMm[], widthMm: number): BoxSize {
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = polygonExtent(polygon);
  return { depthMm: xMaxMm - xMinMm, heightMm: yMaxMm - yMinMm, widthMm };
}

function finishedRing({ carcass, design }: BoxPlan): PointMm[] {
  const { outMm } = baffleBuildMm(carcass);
  const insets = carcass.walls.map(
    ({ face }, index) =>
      -finishOnMm(design.finish, face) - (index === carcass.baffleIndex ? Math.max(0, outMm) : 0),
  );
  return insetRing(carcass.walls, insets);
}

export function boxSizes(plan: BoxPlan): BoxResult['sizes'] {
  const { carcass, design } = plan;
  const finishedWidthMm = carcass.widthMm + design.finish.leftMm + design.finish.rightMm;
  return {
    carcass: size(carcass.outline, carcass.widthMm),
    wood: size(carcass.wood, carcass.widthMm),
    finished: size(finishedRing(plan), finishedWidthMm),
  };
}

export function boxSection(plan: BoxPlan): BoxResult['section'] {
  const { carcass } = plan;
  return {
    walls: carcass.walls.map(({ face }) => face),
    carcass: carcass.outline,
    wood: carcass.wood,
    finished: finishedRing(plan),
    inner: carcass.inner,
    free: carcass.free,
  };
}

function rectangle(polygon: readonly PointMm[], widthMm: number): BoxResult['plan']['wood'] {
  const { xMinMm, xMaxMm } = polygonExtent(polygon);
  return { xMinMm, xMaxMm, zMinMm: -widthMm / 2, zMaxMm: widthMm / 2 };
}

export function boxPlanView({ carcass }: BoxPlan): BoxResult['plan'] {
  return {
    wood: rectangle(carcass.wood, carcass.widthMm),
    inner: rectangle(carcass.inner, carcass.innerWidthMm),
  };
}

type OuterFace = { readonly face: BoxFace; readonly cornersMm: Vector[]; readonly areaMm2: number };

function outerFaces({ walls, wood, widthMm }: Carcass): OuterFace[] {
  const half = widthMm / 2;
  const areaMm2 = polygonAreaMm2(wood);
  const wallFaces = walls.map(({ face }, index): OuterFace => {
    const from = ringAt(wood, index);
    const to = ringAt(wood, index + 1);
    const cornersMm = [inSpace(from, half), inSpace(from, -half), inSpace(to, -half), inSpace(to, half)];
    return { face, cornersMm, areaMm2: Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) * widthMm };
  });
  const left = wood.map((corner) => inSpace(corner, half));
  const right = wood.map((corner) => inSpace(corner, -half)).reverse();
  return [
    ...wallFaces,
    { face: 'left', cornersMm: left, areaMm2 },
    { face: 'right', cornersMm: right, areaMm2 },
  ];
}

export function boxFaces({ carcass }: BoxPlan): BoxResult['faces'] {
  return outerFaces(carcass).map(({ face, cornersMm }) => ({ face, cornersMm }));
}

/** Openings take the area of their largest circle on that face: the recess, or the cut-out where there is none. */
export function finishAreas(plan: BoxPlan): BoxResult['finishAreas'] {
  const { carcass, mount, drivers, terminal, ports } = plan;
  const driverMm2 = (face: BoxFace) => {
    if (drivers === null || mount !== carcass || face !== carcass.baffle.face) return 0;
    const diaMm = drivers.holes.recessDiaMm ?? drivers.holes.cutoutDiaMm;
    return (drivers.seats.length * Math.PI * diaMm ** 2) / 4;
  };
  const terminalMm2 = (face: BoxFace) =>
    terminal?.cup.face === face ? outlineAreaMm2(terminal.cup.cutout) : 0;
  const portMm2 = (face: BoxFace) =>
    ports
      .filter(({ placed }) => placed.face === face)
      .reduce((sum, { placed }) => sum + placed.openAreaCm2 * MM2_PER_CM2, 0);
  return outerFaces(carcass).map(({ face, areaMm2 }) => ({
    face,
    areaM2: areaMm2 / MM2_PER_M2,
    openingsM2: (driverMm2(face) + terminalMm2(face) + portMm2(face)) / MM2_PER_M2,
  }));
}
