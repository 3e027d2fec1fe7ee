// The layout as drawings and the list as paper: the same for screen, print and PDF.

import type { SawCut, SheetLayout } from '@gusset/contracts/cutting';
import type { CutBoard, CutRow, CuttingResult } from '@gusset/contracts/cutting-sheet';
import type { CutMaterial, SheetCut, SheetMapInput } from '@gusset/drawings';
import { markOf } from './cutting-notes.ts';
import { notchWords } from './notch-words.ts';

export type FormatLength = (lengthMm: number) => string;

/** One map a sheet, in the order of the layout. */
export function sheetMaps(board: CutBoard, trimMm: number): readonly SheetMapInput[] {
  const { sheets } = board.layout;
  return sheets.map((sheet, index) => ({
    title: `${sheetName(board, sheet)}, sheet ${index + 1} of ${sheets.length}`,
    description: mapWords(board, sheet),
    widthMm: sheet.lengthMm,
    heightMm: sheet.widthMm,
    trimMm,
    grain: board.grain === 'none' ? null : grainOf(board, sheet),
    placements: sheet.placements.map((placement) => ({
      key: placement.partId,
      mark: markOf(board, placement.partId),
      xMm: placement.xMm,
      yMm: placement.yMm,
      widthMm: placement.lengthMm,
      heightMm: placement.widthMm,
      turned: placement.turned,
    })),
    offcuts: sheet.offcuts.map(({ xMm, yMm, lengthMm, widthMm }) => ({
      xMm,
      yMm,
      widthMm: lengthMm,
      heightMm: widthMm,
    })),
    cuts: partingCuts(sheet).map(lineOfCut),
  }));
}

/** The cuts that part the sheet, in order. Its edges are trimmed before the first of them. */
export function partingCuts(sheet: SheetLayout): readonly SawCut[] {
  return sheet.cuts.filter(({ kind }) => kind === 'part');
}

export function sheetName(board: CutBoard, sheet: SheetLayout): string {
  return board.sheets.find(({ stockId }) => stockId === sheet.stockId)?.name ?? board.name;
}

/** What the cut-sheet paper prints of each board. */
export function cutMaterials(result: CuttingResult, formatLength: FormatLength): readonly CutMaterial[] {
  return result.boards.map((board) => ({
    name: board.name,
    thicknessMm: board.thicknessMm,
    rows: board.rows.map((row) => ({
      mark: row.mark,
      name: row.name,
      quantity: row.quantity,
      lengthMm: row.finishedLengthMm,
      widthMm: row.finishedWidthMm,
      note: [
        blankWords(row, formatLength),
        rowWords(row),
        ...notchWords(row.outline, formatLength),
        openingWords(row),
      ]
        .filter((words) => words !== '')
        .join(', '),
    })),
    maps: sheetMaps(board, result.trimMm),
  }));
}

/** The size to cut where some edge is trimmed flush after glue-up; empty = cut to size. */
export function blankWords(row: CutRow, formatLength: FormatLength): string {
  const isLarger = row.blankLengthMm > row.finishedLengthMm || row.blankWidthMm > row.finishedWidthMm;
  if (!isLarger) return '';
  return `cut ${formatLength(row.blankLengthMm)} × ${formatLength(row.blankWidthMm)}, trim flush after glue-up`;
}

/** What else the row asks of the saw; empty = a plain square-edged rectangle. */
export function rowWords(row: CutRow): string {
  const words: string[] = [];
  const bevels = row.edges.filter((edge) => edge.bevelDeg > 0);
  const tilts = Map.groupBy(bevels, (edge) => edge.bevelDeg.toFixed(1));
  for (const [tilt, edges] of tilts) {
    words.push(`bevel ${tilt}° on ${edges.length} ${edges.length === 1 ? 'edge' : 'edges'}`);
  }
  if (!row.isRectangle) words.push('cut to shape after');
  if (row.grain !== 'none') words.push(`grain along ${row.grain}`);
  if (row.mirror !== null) {
    words.push(row.mirror.sameWhenTurnedOver ? `same as ${row.mirror.mark}` : `mirror of ${row.mirror.mark}`);
  }
  if (row.spares > 0) words.push(`${row.spares} spare`);
  return words.join(', ');
}

function openingWords({ holes }: CutRow): string {
  if (holes.length === 0) return '';
  return `${holes.length} ${holes.length === 1 ? 'opening' : 'openings'}`;
}

function mapWords(board: CutBoard, sheet: SheetLayout): string {
  const marks = sheet.placements.map(({ partId }) => markOf(board, partId)).join(', ');
  return `Marks ${marks}; ${partingCuts(sheet).length} cuts, ${sheet.offcuts.length} offcuts worth keeping.`;
}

function grainOf(board: CutBoard, sheet: SheetLayout): 'x' | 'y' {
  if (sheet.isOffcut) return 'x';
  return board.grain === 'width' ? 'y' : 'x';
}

/** The blade's path, in the middle of its kerf. */
function lineOfCut({ along, kerf }: SawCut): SheetCut {
  const midX = kerf.xMm + kerf.lengthMm / 2;
  const midY = kerf.yMm + kerf.widthMm / 2;
  return along === 'length'
    ? { fromXMm: kerf.xMm, fromYMm: midY, toXMm: kerf.xMm + kerf.lengthMm, toYMm: midY }
    : { fromXMm: midX, fromYMm: kerf.yMm, toXMm: midX, toYMm: kerf.yMm + kerf.widthMm };
}
