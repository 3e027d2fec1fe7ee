// Looking for a better layout than the first: the same computation from other seeds, each board keeping the seed that
// served it best. What is kept is the seed, so that the server's computation lands on the same layout.
import {
  type CutBoard,
  type CuttingInput,
  type CuttingResult,
  MOST_LAYOUTS_TRIED,
} from '@gusset/contracts/cutting-sheet';

export type BoardSearch = CuttingInput['searches'][number];

/** How good a board's layout is: compared figure by figure, lower is better. */
export type BoardScore = { readonly search: BoardSearch; readonly figures: readonly number[] };

export function withSeed(input: CuttingInput, boardIds: readonly string[], seed: number): CuttingInput {
  const searches = boardIds.map((boardId) => ({ boardId, seed, iterations: MOST_LAYOUTS_TRIED }));
  return { ...input, searches };
}

export function boardScores(result: CuttingResult, aim: CuttingInput['aim']): readonly BoardScore[] {
  return result.boards.map((board) => ({
    search: { boardId: board.boardId, ...board.search },
    figures: scoreOf(board, aim),
  }));
}

/** Board by board the better of both; of equals the one that stood first. */
export function betterOf(stood: readonly BoardScore[], found: readonly BoardScore[]): readonly BoardScore[] {
  return stood.map((one) => {
    const other = found.find(({ search }) => search.boardId === one.search.boardId);
    return other !== undefined && isBetter(other.figures, one.figures) ? other : one;
  });
}

/** Figures of a layout in the order in which they count for the aim; lower is better. */
export function scoreOf({ layout }: Pick<CutBoard, 'layout'>, aim: CuttingInput['aim']): readonly number[] {
  const full = layout.sheets.filter(({ isOffcut }) => !isOffcut);
  const boughtMm2 = full.reduce((sum, { sheetMm2 }) => sum + sheetMm2, 0);
  const offcuts = layout.sheets.flatMap((sheet) => sheet.offcuts);
  const largestMm2 = Math.max(0, ...offcuts.map(({ lengthMm, widthMm }) => lengthMm * widthMm));
  const unplaced = layout.unplacedPartIds.length;
  const kept = -Math.round(largestMm2);
  switch (aim) {
    case 'fewest-sheets':
      return [unplaced, full.length, boughtMm2, kept];
    case 'least-board':
      return [unplaced, boughtMm2, full.length, kept];
    case 'largest-offcut':
      return [unplaced, full.length, kept, boughtMm2];
  }
}

export function isBetter(one: readonly number[], two: readonly number[]): boolean {
  const at = one.findIndex((figure, index) => figure !== two[index]);
  return at >= 0 && (one[at] ?? 0) < (two[at] ?? 0);
}
