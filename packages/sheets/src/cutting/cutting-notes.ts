// What to settle or to mind before the saw is switched on.
import type {
  CutBoard,
  CutRow,
  CuttingFacts,
  CuttingInput,
  CuttingNote,
} from '@gusset/contracts/cutting-sheet';
import type { Panel } from '@gusset/contracts/panel';

/** Load constant of the revised NIOSH lifting equation (1994): the most that one person lifts, held well. */
const ONE_PERSON_KG = 23;
/** Callipers read a tenth; two readings of one sheet differ by about as much. */
const SAME_THICKNESS_MM = 0.1;

export function cuttingNotes(
  boards: readonly CutBoard[],
  input: CuttingInput,
  facts: CuttingFacts,
  panels: readonly Panel[],
): readonly CuttingNote[] {
  return [
    ...boards.flatMap((board) => unplacedNotes(board)),
    ...boards.flatMap((board) => thicknessNotes(board, facts)),
    ...boards.flatMap((board) => tiltNotes(board, facts.saw.bladeMaxTiltDeg)),
    ...spareNotes(input, panels),
    ...boards.flatMap((board) => heavyNotes(board)),
  ];
}

/** A list that may still change in size: cutting from it can waste a sheet. */
export function keepsDraft(note: CuttingNote): boolean {
  return (
    note.code === 'thickness-nominal' || note.code === 'thickness-moved' || note.code === 'thickness-differs'
  );
}

function thicknessNotes(board: CutBoard, facts: CuttingFacts): readonly CuttingNote[] {
  const { boardId, name, thicknessMm } = board;
  const measuredMm = facts.boards.find(({ id }) => id === boardId)?.figures.measuredThicknessMm ?? null;
  const differs = board.sheets.flatMap(({ partId }): readonly CuttingNote[] => {
    const sheet =
      partId === null || partId === boardId ? undefined : facts.boards.find(({ id }) => id === partId);
    if (sheet === undefined) return [];
    const sheetMm = sheet.figures.measuredThicknessMm ?? sheet.figures.nominalThicknessMm;
    if (Math.abs(sheetMm - thicknessMm) <= SAME_THICKNESS_MM) return [];
    const { id: sheetId, name: sheetName } = sheet;
    return [
      { code: 'thickness-differs', sheetId, name: sheetName, thicknessMm: sheetMm, boardMm: thicknessMm },
    ];
  });
  if (measuredMm === null) return [{ code: 'thickness-nominal', boardId, name, thicknessMm }, ...differs];
  if (Math.abs(measuredMm - thicknessMm) <= 1e-6) return differs;
  return [{ code: 'thickness-moved', boardId, name, drawnMm: thicknessMm, measuredMm }, ...differs];
}

/** Each mark once, with its steepest edge. */
function tiltNotes({ rows }: CutBoard, limitDeg: number): readonly CuttingNote[] {
  return rows.flatMap(({ mark, edges }: CutRow): readonly CuttingNote[] => {
    const beyond = edges.filter((edge) => edge.exceedsTilt).map((edge) => edge.bevelDeg);
    return beyond.length === 0
      ? []
      : [{ code: 'beyond-tilt', mark, bevelDeg: Math.max(...beyond), limitDeg }];
  });
}

function unplacedNotes(board: CutBoard): readonly CuttingNote[] {
  const { unplacedPartIds } = board.layout;
  if (unplacedPartIds.length === 0) return [];
  const marks = unplacedPartIds.map((partId) => markOf(board, partId));
  return [{ code: 'unplaced', boardId: board.boardId, name: board.name, marks }];
}

function spareNotes({ spares }: CuttingInput, panels: readonly Panel[]): readonly CuttingNote[] {
  return spares.flatMap(({ panelId }): readonly CuttingNote[] =>
    panels.some(({ id }) => id === panelId) ? [] : [{ code: 'spare-gone', panelId }],
  );
}

function heavyNotes({ sheets }: CutBoard): readonly CuttingNote[] {
  return sheets.flatMap(({ name, massKg }): readonly CuttingNote[] =>
    massKg <= ONE_PERSON_KG ? [] : [{ code: 'heavy-sheet', name, massKg }],
  );
}

/** `cutParts` numbers the second piece of a row `id#2`. */
export function markOf({ rows }: Pick<CutBoard, 'rows'>, partId: string): string {
  const [panelId] = partId.split('#');
  return rows.find((row) => row.panelId === panelId)?.mark ?? partId;
}
