// The plan's boards as the panels that cutting gets: marked, holed, weighed.
import type { PanelBody } from '@gusset/contracts/enclosure';
import type { Panel, PanelHole } from '@gusset/contracts/panel';
import type { Board } from './board.ts';
import type { BoxPlan } from './box-plan.ts';
import { type Weighted, weightedCentre } from './vector.ts';

/** A board with what was cut from it. */
export type MarkedBoard = {
  readonly board: Board;
  readonly mark: string;
  readonly holes: readonly PanelHole[];
  readonly solidMm3: number;
  readonly massKg: number;
  /** Weight at its centre, for the box's centre of gravity. */
  readonly weight: Weighted;
};

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const MM3_PER_M3 = 1e9;

/** A, B, … Z, A1, B1, … */
function markAt(index: number): string {
  const round = Math.floor(index / LETTERS.length);
  return `${LETTERS[index % LETTERS.length] ?? ''}${round === 0 ? '' : round}`;
}

function marked(
  board: Board,
  index: number,
  cut: { readonly holes: readonly PanelHole[]; readonly removed: readonly Weighted[] },
): MarkedBoard {
  const gone = cut.removed.map(({ amount, at }) => ({ amount: -amount, at }));
  const solidMm3 = gone.reduce((sum, { amount }) => sum + amount, board.blankMm3);
  const massKg = (solidMm3 * board.stock.densityKgM3) / MM3_PER_M3;
  const centre = weightedCentre([{ amount: board.blankMm3, at: board.blankCentreMm }, ...gone]);
  return {
    board,
    mark: markAt(index),
    holes: cut.holes,
    solidMm3,
    massKg,
    weight: { amount: massKg, at: centre ?? board.blankCentreMm },
  };
}

/** Walls round the side view from the bottom, sides, doublers outside and inside, ports, divider, braces from
 * right to left. */
export function markedBoards(plan: BoxPlan): readonly MarkedBoard[] {
  const { shell, braces, ports, divider, cuts } = plan;
  const cutsOf = ({ id }: Board) => ({
    holes: cuts.holes.get(id) ?? [],
    removed: cuts.removed.get(id) ?? [],
  });
  const shellBoards = [...shell.walls, ...shell.sides, ...shell.outsideDoublers, ...shell.insideDoublers];
  const dividers = divider === null ? [] : [divider.board];
  return [
    ...[...shellBoards, ...ports.flatMap(({ boards }) => boards), ...dividers].map((board) => ({
      board,
      cut: cutsOf(board),
    })),
    ...braces.frames.map(({ board, holes, removed }) => ({ board, cut: { holes, removed } })),
  ].map(({ board, cut }, index) => marked(board, index, cut));
}

export function toPanel({ board, mark, holes, solidMm3, massKg }: MarkedBoard): Panel {
  return {
    id: board.id,
    mark,
    name: board.name,
    materialId: board.stock.materialId,
    thicknessMm: board.stock.thicknessMm,
    lengthMm: board.lengthMm,
    widthMm: board.widthMm,
    outline: board.outline,
    edges: board.edges,
    holes: [...holes],
    grain: board.stock.hasGrain ? 'length' : 'none',
    quantity: 1,
    solidMm3,
    massKg,
  };
}

export function toBody({ board, mark }: MarkedBoard): PanelBody {
  return {
    panelId: board.id,
    mark,
    role: board.role,
    face: board.face,
    placement: board.placement,
    thicknessMm: board.stock.thicknessMm,
    outerFace: board.outerFace,
    innerFace: board.innerFace,
    edgeLeans: board.edgeLeans,
    section: board.section,
  };
}
