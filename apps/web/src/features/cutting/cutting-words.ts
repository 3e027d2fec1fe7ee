// Sentences for what the layout says: the verdict first, then the number, then how sure we are.
import type { SawCut } from '@gusset/contracts/cutting';
import type {
  CutBoard,
  CutRow,
  CuttingInput,
  CuttingNote,
  CuttingResult,
} from '@gusset/contracts/cutting-sheet';
import type { PanelHole } from '@gusset/contracts/panel';

type LengthWords = (mm: number) => string;

export type Headline = {
  readonly tone: 'pass' | 'check' | 'fail';
  readonly words: string;
  readonly lines: readonly string[];
};

const MM2_PER_M2 = 1_000_000;

export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** How many sheets, and how sure it is that fewer will not do. */
export function cuttingHeadline(result: CuttingResult): Headline {
  const left = result.boards.flatMap(({ layout }) => layout.unplacedPartIds);
  if (left.length > 0) {
    return {
      tone: 'fail',
      words: `${counted(left.length, 'part has', 'parts have')} no room`,
      lines: ['Allow another sheet or more offcuts of that board.'],
    };
  }
  const { fullSheets, offcutsUsed } = result.totals;
  const rack = offcutsUsed === 0 ? '' : counted(offcutsUsed, 'offcut');
  const bought = fullSheets === 0 ? '' : counted(fullSheets, 'sheet');
  return {
    tone: 'pass',
    words: `${[bought, rack].filter((words) => words !== '').join(' and ')} for ${counted(result.pieces, 'part')}`,
    lines: result.boards.map((board) => `${board.name}: ${boundWords(board)}.`),
  };
}

/** The count of a real layout beside the least that any layout could do with. */
export function boundWords({ layout }: Pick<CutBoard, 'layout'>): string {
  const { lowerBoundSheets, provenFewest, totals } = layout;
  const sheets = counted(totals.fullSheets, 'sheet');
  if (totals.fullSheets === 0) return 'from the rack, no sheet needed';
  return provenFewest
    ? `${sheets}, and no layout can do with fewer`
    : `${sheets}; ${lowerBoundSheets} cannot be ruled out`;
}

/** One line for a note; those on thickness have their own field. Null = said elsewhere. */
export function noteWords(note: CuttingNote, length: LengthWords): string | null {
  switch (note.code) {
    case 'beyond-tilt':
      return `${note.mark}: bevel of ${note.bevelDeg.toFixed(1)}°, the blade tilts to ${note.limitDeg}°. Cut that edge standing, or on another machine`;
    case 'unplaced':
      return `No room on ${note.name} for ${note.marks.join(', ')}`;
    case 'heavy-sheet':
      return `A full sheet of ${note.name} weighs ${note.massKg.toFixed(1)} kg: two people or a panel carrier`;
    case 'spare-gone':
      return 'A spare was asked for of a panel that the box no longer has';
    case 'thickness-differs':
      return `${note.name} is ${length(note.thicknessMm)} thick, the box is drawn with ${length(note.boardMm)}`;
    case 'thickness-nominal':
    case 'thickness-moved':
      return null;
  }
}

/** `2 × Ø4 bolt` … each kind of opening once, through unless a depth is given. */
export function holeWords(holes: readonly PanelHole[], length: LengthWords): readonly string[] {
  const words = holes.map((hole) => {
    const size =
      hole.shape === 'circle'
        ? `Ø ${length(hole.diameterMm)}`
        : `${length(hole.widthMm)} × ${length(hole.heightMm)}`;
    return `${size} ${kindOf(hole.purpose)}${hole.depthMm === null ? '' : `, ${length(hole.depthMm)} deep`}`;
  });
  return [...Map.groupBy(words, (word) => word)].map(([word, same]) =>
    same.length === 1 ? word : `${same.length} × ${word}`,
  );
}

/** `bolt 3 of driver 1` → `bolt`: openings of one kind are counted, not numbered. */
function kindOf(purpose: string): string {
  return purpose.replace(/ \d+( of .*)?$/u, '').replace(/ of .*$/u, '');
}

/** What the blade does: along the sheet or across it, or as deep into its strips. */
export function cutWords({ along, depth }: SawCut): string {
  const way = along === 'length' ? 'lengthwise' : 'across';
  return depth === 0 ? `Right through, ${way}` : `In the strip, ${way}`;
}

/** Finished size of a row, and the blank where it is cut larger. */
export function isCutLarger(row: CutRow): boolean {
  return row.blankLengthMm > row.finishedLengthMm || row.blankWidthMm > row.finishedWidthMm;
}

export type BalanceLine = { readonly label: string; readonly areaM2: number; readonly percent: number };

/** Where every square metre goes; the lines add up to the sheets taken. */
export function areaBalance({ totals }: Pick<CuttingResult, 'totals'>): readonly BalanceLine[] {
  const line = (label: string, mm2: number): BalanceLine => ({
    label,
    areaM2: mm2 / MM2_PER_M2,
    percent: totals.sheetMm2 === 0 ? 0 : (mm2 / totals.sheetMm2) * 100,
  });
  return [
    line('Parts', totals.partsMm2),
    line('Offcuts worth keeping', totals.offcutsMm2),
    line('Kerf', totals.kerfMm2),
    line('Trim', totals.trimMm2),
    line('Waste', totals.wasteMm2),
  ];
}

/** What a search came to: figure by figure as `BoardScore` lists them. */
export function searchWords(
  before: readonly (readonly number[])[],
  after: readonly (readonly number[])[],
  aim: CuttingInput['aim'],
): string {
  const changed = after.filter((figures, index) =>
    figures.some((figure, at) => figure !== before[index]?.[at]),
  );
  if (changed.length === 0) return 'Nothing better found';
  const sum = (scores: readonly (readonly number[])[], at: number) =>
    scores.reduce((total, figures) => total + (figures[at] ?? 0), 0);
  const fewerParts = sum(before, 0) - sum(after, 0);
  if (fewerParts > 0) return `Room for ${counted(fewerParts, 'part')} more`;
  if (sum(after, 1) < sum(before, 1)) return 'Less board than before';
  const isSecondBetter = sum(after, 2) < sum(before, 2);
  if (aim === 'largest-offcut') return 'A larger offcut than before';
  return isSecondBetter ? 'Less board than before' : 'A larger offcut than before';
}
