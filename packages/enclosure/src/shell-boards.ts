// Every panel of the bare box: walls, sides and doublers, in the order in which they get their marks.
import type { BoxDesign, BoxFace, WallFace } from '@gusset/contracts/enclosure';
import type { PanelEdge } from '@gusset/contracts/panel';
import { type Refusal, refuse } from '@gusset/units';
import {
  type Across,
  type Board,
  boardAcross,
  boardUpright,
  type EndStop,
  type WallCut,
  wallCut,
} from './board.ts';
import { type Rabbet, rabbeted, rabbetedSide } from './board-rabbet.ts';
import { baffleBuildMm, type Carcass } from './carcass.ts';
import { type EndJoint, endJoints, isRabbeted, rabbetDepthMm } from './corner-joints.ts';
import { BEVEL_MAX_RAD } from './limits.ts';
import { besideMouths, boardWithMouths, endAtMouth, type Mouths } from './mouths.ts';
import type { Mouth } from './port-types.ts';
import { ringAt } from './ring.ts';
import type { Wall } from './wall-ring.ts';

const WALL_NAMES: Record<WallFace, string> = {
  bottom: 'Bottom',
  front: 'Front',
  top: 'Top',
  back: 'Back',
  'slope-1': 'Slope 1',
  'slope-2': 'Slope 2',
  'slope-3': 'Slope 3',
  'slope-4': 'Slope 4',
};

/** Where a panel's end stops on its neighbour: its outer line, its inner line, or from one to the other. */
function endStop(carcass: Carcass, neighbour: number, joint: EndJoint, rabbetMm = 0): EndStop {
  const { thicknessMm } = ringAt(carcass.stocks, neighbour);
  if (joint === 'rabbeted') {
    const insetMm = thicknessMm - rabbetMm;
    return { wall: ringAt(carcass.walls, neighbour), outerInsetMm: insetMm, innerInsetMm: insetMm };
  }
  return {
    wall: ringAt(carcass.walls, neighbour),
    outerInsetMm: joint === 'covered' ? thicknessMm : 0,
    innerInsetMm: joint === 'through' ? 0 : thicknessMm,
  };
}

type Ending = { readonly stop: EndStop; readonly joint: EndJoint; readonly rabbet: Rabbet | null };

/** A baffle that is set back stands between its neighbours, which run out past it to its line. */
function besideSetBack(carcass: Carcass, own: number, neighbour: number): Ending | null {
  if (carcass.setBackMm === 0) return null;
  const count = carcass.walls.length;
  const [isBaffle, atBaffle] = [own, neighbour].map(
    (index) => (index + count) % count === carcass.baffleIndex,
  );
  if (isBaffle === true) {
    return { stop: endStop(carcass, neighbour, 'covered'), joint: 'covered', rabbet: null };
  }
  return atBaffle === true
    ? { stop: endStop(carcass, neighbour, 'through'), joint: 'through', rabbet: null }
    : null;
}

/** How wall `own` ends at a neighbour: by a mouth there, or by its joint, stepped where the other is let into it. */
function ending(
  { joints }: BoxDesign,
  carcass: Carcass,
  mouths: Mouths,
  own: number,
  isStart: boolean,
): Ending {
  const neighbour = isStart ? own - 1 : own + 1;
  const atMouth = endAtMouth(carcass, mouths, own, neighbour);
  if (atMouth !== null) return { ...atMouth, rabbet: null };
  const setBack = besideSetBack(carcass, own, neighbour);
  if (setBack !== null) return setBack;
  const joint = endJoints(carcass.walls, own, joints)[isStart ? 'start' : 'end'];
  const depthMm = (index: number) => rabbetDepthMm(joints, ringAt(carcass.stocks, index).thicknessMm);
  const isStepped = joint === 'through' && isRabbeted(carcass.walls, isStart ? own : own + 1, joints);
  return {
    stop: endStop(carcass, neighbour, joint, depthMm(neighbour)),
    joint,
    rabbet: isStepped
      ? {
          atStart: isStart,
          neighbour: ringAt(carcass.walls, neighbour),
          widthMm: ringAt(carcass.stocks, neighbour).thicknessMm,
          depthMm: depthMm(own),
        }
      : null,
  };
}

/** Where a wall's panel ends across the box: over the sides, between them, or in their rabbets. */
function halfAcrossMm({ joints }: BoxDesign, carcass: Carcass): number {
  if (joints.sides === 'covered') return carcass.widthMm / 2;
  const letInMm = joints.kinds.sides === 'rabbet' ? rabbetDepthMm(joints, carcass.sideStock.thicknessMm) : 0;
  return carcass.innerWidthMm / 2 + letInMm;
}

/** A wall's ends in the sides' rabbets say so. */
function letIntoSides({ joints }: BoxDesign, board: Board): Board {
  if (joints.kinds.sides !== 'rabbet') return board;
  const edges = board.edges.map(
    (edge, index): PanelEdge => (index % 2 === 1 ? { ...edge, joint: 'rabbet' } : edge),
  );
  return { ...board, edges };
}

/** The layer with what the mouths leave of it: stopped short where one takes its whole end, else notched. */
function mouthedBoard(
  carcass: Carcass,
  mouths: Mouths,
  index: number,
  zs: { readonly zMinMm: number; readonly zMaxMm: number },
  layer: (across: Across, stopsAt: (neighbour: number, stop: EndStop) => EndStop) => MadeLayer,
): Board {
  const across = besideMouths(mouths, index, zs.zMinMm, zs.zMaxMm);
  const own = mouths.across.filter(({ faceIndex }) => faceIndex === index);
  const isWhole = ({ zFromMm, zToMm }: Mouth) =>
    zFromMm <= across.zMinMm + WHOLE_MM && zToMm >= across.zMaxMm - WHOLE_MM;
  const count = carcass.walls.length;
  const { board, ...made } = layer(across, (neighbour, stop) => {
    const whole = own.find((mouth) => isWhole(mouth) && mouth.alongIndex === (neighbour + count) % count);
    return whole === undefined ? stop : { ...stop, outerInsetMm: whole.insetMm, innerInsetMm: whole.insetMm };
  });
  return boardWithMouths(
    board,
    carcass,
    own.filter((mouth) => !isWhole(mouth)),
    made,
  );
}

type MadeLayer = { readonly board: Board; readonly wall: Wall; readonly cut: WallCut };

const WHOLE_MM = 1e-6; // rounding of places across the box

function wallBoard(design: BoxDesign, carcass: Carcass, mouths: Mouths, index: number): Board {
  const wall = ringAt(carcass.walls, index);
  const stock = ringAt(carcass.stocks, index);
  const isBaffle = index === carcass.baffleIndex;
  const start = ending(design, carcass, mouths, index, true);
  const end = ending(design, carcass, mouths, index, false);
  const rabbets = [start.rabbet, end.rabbet].filter((rabbet) => rabbet !== null);
  const runsOverSides = design.joints.sides === 'covered';
  const half = halfAcrossMm(design, carcass);
  const backMm = isBaffle ? carcass.setBackMm : 0;
  const name = isBaffle ? 'Baffle' : WALL_NAMES[wall.face];
  return mouthedBoard(carcass, mouths, index, { zMinMm: -half, zMaxMm: half }, (across, stopsAt) => {
    const cut = wallCut(
      wall,
      { outerMm: backMm, innerMm: backMm + stock.thicknessMm },
      stopsAt(index - 1, start.stop),
      stopsAt(index + 1, end.stop),
    );
    const board = boardAcross(
      { id: `wall-${wall.face}`, name, role: isBaffle ? 'baffle' : 'wall', face: wall.face, stock },
      { wall, cut },
      across,
      { start: start.joint, end: end.joint, runsOverSides },
    );
    return { board: rabbeted(letIntoSides(design, board), wall, rabbets), wall, cut };
  });
}

function sideBoard(design: BoxDesign, carcass: Carcass, face: 'left' | 'right'): Board {
  const { joints } = design;
  const runsThrough = joints.sides === 'through';
  const board = boardUpright(
    {
      id: `side-${face}`,
      name: face === 'left' ? 'Left side' : 'Right side',
      role: 'side',
      face,
      stock: carcass.sideStock,
    },
    runsThrough ? carcass.outline : carcass.inner,
    { outerZMm: ((face === 'left' ? 1 : -1) * carcass.widthMm) / 2, looksLeft: face === 'left' },
    runsThrough,
  );
  if (joints.kinds.sides === 'butt') return board;
  const widthsMm = carcass.stocks.map(({ thicknessMm }) => thicknessMm);
  const depthMm = rabbetDepthMm(joints, carcass.sideStock.thicknessMm);
  return rabbetedSide(board, carcass.inner, widthsMm, depthMm);
}

/** Layer `layer` counts away from the baffle board, from 0. Outside layers end flush with the neighbours' outer
 * faces over the whole width; inside layers fill the clear baffle between the neighbours' inner faces. */
function doublerBoard(carcass: Carcass, mouths: Mouths, at: 'inside' | 'outside', layer: number): Board {
  const { baffleIndex, baffleStock: stock } = carcass;
  const outside = at === 'outside';
  const nearMm = outside ? layer * stock.thicknessMm : (layer + 1) * stock.thicknessMm + carcass.setBackMm;
  const depth = outside
    ? { outerMm: -nearMm - stock.thicknessMm, innerMm: -nearMm }
    : { outerMm: nearMm, innerMm: nearMm + stock.thicknessMm };
  const joint: EndJoint = outside ? 'through' : 'covered';
  const stop = (neighbour: number) => endStop(carcass, neighbour, joint);
  const half = (outside ? carcass.widthMm : carcass.innerWidthMm) / 2;
  const zs = { zMinMm: -half, zMaxMm: half };
  return mouthedBoard(carcass, mouths, baffleIndex, zs, (across, stopsAt) => {
    const cut = wallCut(
      carcass.baffle,
      depth,
      stopsAt(baffleIndex - 1, stop(baffleIndex - 1)),
      stopsAt(baffleIndex + 1, stop(baffleIndex + 1)),
    );
    const board = boardAcross(
      {
        id: `doubler-${at}-${layer + 1}`,
        name: outside ? `Outside doubler ${layer + 1}` : `Inside doubler ${layer + 1}`,
        role: 'doubler',
        face: carcass.baffle.face,
        stock,
      },
      { wall: carcass.baffle, cut },
      across,
      null,
    );
    return { board, wall: carcass.baffle, cut };
  });
}

export type ShellBoards = {
  readonly walls: readonly Board[];
  readonly sides: readonly Board[];
  readonly outsideDoublers: readonly Board[];
  readonly insideDoublers: readonly Board[];
};

export function shellBoards(design: BoxDesign, carcass: Carcass, mouths: Mouths): ShellBoards {
  const layers = (at: 'inside' | 'outside') =>
    Array.from({ length: carcass.doublers[at] }, (_, layer) => doublerBoard(carcass, mouths, at, layer));
  return {
    walls: carcass.walls.map((_, index) => wallBoard(design, carcass, mouths, index)),
    sides: [sideBoard(design, carcass, 'left'), sideBoard(design, carcass, 'right')],
    outsideDoublers: layers('outside'),
    insideDoublers: layers('inside'),
  };
}

/** Refused where two boards meet so that one of them would end in a feather. */
export function refuseFeather({ walls, outsideDoublers, insideDoublers }: ShellBoards): Refusal | null {
  const steepest = (board: Board) => Math.max(...board.edges.map(({ bevelRad }) => bevelRad));
  const feather = [...walls, ...outsideDoublers, ...insideDoublers].reduce((worst, board) =>
    steepest(board) > steepest(worst) ? board : worst,
  );
  if (steepest(feather) <= BEVEL_MAX_RAD) return null;
  const degrees = (rad: number) => Number(((rad * 180) / Math.PI).toFixed(2));
  return refuse('stock.baffle.thicknessMm', {
    allowed: `bevels of at most ${degrees(BEVEL_MAX_RAD)} degrees; boards of like thickness need less`,
    got: degrees(steepest(feather)),
    why: `the ${feather.name.toLowerCase()} meets a board of another thickness at a flat corner`,
  });
}

/** Boards glued face to face on one side of the box, outermost first: what a hole through that face goes through. */
export function boardsBehind(shell: ShellBoards, face: BoxFace): readonly Board[] {
  const own = [...shell.walls, ...shell.sides].filter((board) => board.face === face);
  const doubled = (board: Board) => board.face === face;
  return [
    ...shell.outsideDoublers.filter(doubled).toReversed(),
    ...own,
    ...shell.insideDoublers.filter(doubled),
  ];
}

/** Wood from the outermost to the innermost face of the baffle. */
export function baffleThicknessMm(carcass: Carcass): number {
  const { outMm, inMm } = baffleBuildMm(carcass);
  return outMm + inMm;
}
