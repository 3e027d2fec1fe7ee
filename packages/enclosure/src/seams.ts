// Joints of the box: how long they are inside, and how many screws hold them while the glue cures.
import type { BoxResult, Seam } from '@gusset/contracts/enclosure';
import type { Board } from './board.ts';
import type { BoxPlan } from './box-plan.ts';
import { polygonAreaMm2 } from './plane.ts';
import { ringAt } from './ring.ts';
import { insetLengthMm } from './wall-ring.ts';

/** Along a joint, middle of the usual 100 to 200 mm. */
const SCREW_SPACING_MM = 150;
/** Into an edge of MDF, nearer to the panel's end the board splits. European MDF makers' screwing advice. */
const SCREW_TO_END_MM = 70;
const MM2_PER_M2 = 1e6;

/** Screws along one joint: both ends, and no gap wider than the spacing. A joint too short for two gets one. */
export function screwsAlong(lengthMm: number): number {
  const spanMm = lengthMm - 2 * SCREW_TO_END_MM;
  return spanMm <= 0 ? 1 : Math.ceil(spanMm / SCREW_SPACING_MM) + 1;
}

function shellSeams({ carcass }: BoxPlan): Seam[] {
  const { walls, innerWidthMm, inner } = carcass;
  const seam = (between: Seam['between'], lengthMm: number): Seam => ({
    between,
    lengthMm,
    screws: screwsAlong(lengthMm),
  });
  const across = walls.map((wall, index) => seam([ringAt(walls, index - 1).face, wall.face], innerWidthMm));
  const round = walls.flatMap((wall, index) => {
    const lengthMm = insetLengthMm(walls, inner, index);
    return [seam([wall.face, 'left'], lengthMm), seam([wall.face, 'right'], lengthMm)];
  });
  return [...across, ...round];
}

function braceScrews({ carcass, braces }: BoxPlan): number {
  const perBrace = carcass.walls.reduce(
    (sum, _, index) => sum + screwsAlong(insetLengthMm(carcass.walls, carcass.free, index)),
    0,
  );
  return perBrace * braces.placesMm.length;
}

/** Every edge of a port's panels that is glued to something. */
function gluedEdgesMm({ outline, edges }: Board): number {
  return edges.reduce((sum, { joint }, index) => {
    const from = ringAt(outline, index);
    const to = ringAt(outline, index + 1);
    return joint === 'free' ? sum : sum + Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  }, 0);
}

function dividerSeam({ divider }: BoxPlan): { readonly dividerSeamMm?: number } {
  return divider === null ? {} : { dividerSeamMm: gluedEdgesMm(divider.board) };
}

function portSeam({ ports }: BoxPlan): { readonly portSeamMm?: number } {
  const boards = ports.flatMap((port) => port.boards);
  return boards.length === 0
    ? {}
    : { portSeamMm: boards.reduce((sum, board) => sum + gluedEdgesMm(board), 0) };
}

export function boxJoints(plan: BoxPlan): BoxResult['joints'] {
  const { shell, braces } = plan;
  const seams = shellSeams(plan);
  const glued = [
    ...shell.outsideDoublers.map((board) => board.innerFace),
    ...shell.insideDoublers.map((board) => board.outerFace),
  ];
  return {
    seams,
    shellSeamMm: seams.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    braceSeamMm: braces.girthMm * braces.placesMm.length,
    ...portSeam(plan),
    ...dividerSeam(plan),
    laminatedM2: glued.reduce((sum, face) => sum + polygonAreaMm2(face), 0) / MM2_PER_M2,
    screws: seams.reduce((sum, { screws }) => sum + screws, 0) + braceScrews(plan),
  };
}
