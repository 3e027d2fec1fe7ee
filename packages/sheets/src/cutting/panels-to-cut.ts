// What is to be cut: the box's panels, spares of some of them, and parts that someone added by hand.
import type { BoardFact, CuttingFacts, CuttingInput, HandPart } from '@gusset/contracts/cutting-sheet';
import type { Panel } from '@gusset/contracts/panel';

const MM3_PER_M3 = 1e9;
/** Mark of the first part by hand is X1: boxes letter their panels from A. */
export const HAND_MARK = 'X';

export type PanelToCut = { readonly panel: Panel; readonly spares: number; readonly isByHand: boolean };

export function panelsToCut(
  input: CuttingInput,
  facts: CuttingFacts,
  panels: readonly Panel[],
): readonly PanelToCut[] {
  const sparesOf = new Map(input.spares.map(({ panelId, count }) => [panelId, count]));
  const ofBoxes = panels.map((panel): PanelToCut => {
    const spares = sparesOf.get(panel.id) ?? 0;
    return { panel: { ...panel, quantity: panel.quantity + spares }, spares, isByHand: false };
  });
  const byHand = input.handParts.flatMap((part, index): readonly PanelToCut[] => {
    const panel = handPanel(part, index, facts, panels);
    return panel === null ? [] : [{ panel, spares: 0, isByHand: true }];
  });
  return [...ofBoxes, ...byHand];
}

/** As thick as the boxes take the board to be; a board that only this part needs, as measured or sold. */
export function boardThicknessMm(board: BoardFact, panels: readonly Panel[]): number {
  const drawn = panels.find((panel) => panel.materialId === board.id)?.thicknessMm;
  return drawn ?? board.figures.measuredThicknessMm ?? board.figures.nominalThicknessMm;
}

function handPanel(
  part: HandPart,
  index: number,
  facts: CuttingFacts,
  panels: readonly Panel[],
): Panel | null {
  const board = facts.boards.find(({ id }) => id === part.boardId);
  if (board === undefined || part.length === null || part.width === null) return null;
  const [lengthMm, widthMm] = [part.length.mm, part.width.mm];
  const thicknessMm = boardThicknessMm(board, panels);
  const solidMm3 = lengthMm * widthMm * thicknessMm;
  const square = { bevelRad: 0, joint: 'free', runsThrough: false } as const;
  const mark = `${HAND_MARK}${index + 1}`;
  return {
    id: `hand:${part.key}`,
    mark,
    name: part.name === '' ? `Part ${mark}` : part.name.slice(0, 60),
    materialId: board.id,
    thicknessMm,
    lengthMm,
    widthMm,
    outline: [
      { xMm: 0, yMm: 0 },
      { xMm: lengthMm, yMm: 0 },
      { xMm: lengthMm, yMm: widthMm },
      { xMm: 0, yMm: widthMm },
    ],
    edges: [square, square, square, square],
    holes: [],
    grain: part.grain,
    quantity: part.quantity,
    solidMm3,
    massKg: (solidMm3 / MM3_PER_M3) * board.figures.densityKgPerM3,
  };
}
