// A page that hangs at one machine: a caution, then rows of a large figure and what it is for.
import { PLANNING_CAUTION } from './draw-sheet-page.ts';
import type { FlowTable, PageFlow, TableCell } from './page-flow.ts';
import { BODY, CAPTION, HEADING, type Lettering, TITLE } from './words-block.ts';

export type WorkRow = {
  /** Read from a step away: a fence distance, a mark, a number. */
  readonly figure: string;
  /** The first line is the strongest. */
  readonly lines: readonly string[];
};

export type WorkTable = {
  readonly heading: string;
  /** Over the two columns. */
  readonly columns: readonly [string, string];
  readonly rows: readonly WorkRow[];
};

export type WorkPage = {
  readonly title: string;
  readonly lead: string | null;
  /** Beside the usual one. */
  readonly caution: string | null;
  readonly tables: readonly WorkTable[];
};

const FIGURE: Lettering = { face: 'mono', sizePt: 16, ink: 'ink', leading: 1.25 };
const FIRST: Lettering = { face: 'regular', sizePt: 12, ink: 'ink', leading: 1.35 };
const MORE: Lettering = { face: 'regular', sizePt: 11, ink: 'ink-2', leading: 1.35 };

/** Begins a page of its own. */
export function flowWorkPage(flow: PageFlow, page: WorkPage): void {
  flow.newPage(page.title);
  flow.words(page.title, TITLE, 'H1');
  if (page.lead !== null) flow.words(page.lead, BODY);
  flow.space(4);
  const caution = page.caution === null ? PLANNING_CAUTION : `${PLANNING_CAUTION} ${page.caution}`;
  flow.words(caution, { ...BODY, face: 'semibold' });
  for (const table of page.tables) {
    flow.space(10);
    flow.heading(table.heading, { ...HEADING, sizePt: 14 }, 'H2');
    flow.table(tableOf(table));
  }
}

function tableOf({ heading, columns, rows }: WorkTable): FlowTable {
  const cell = (words: readonly (readonly [string, Lettering])[]): TableCell => ({ kind: 'words', words });
  return {
    title: heading,
    columns: [
      { title: columns[0], share: 1.4, align: 'start' },
      { title: columns[1], share: 6, align: 'start' },
    ],
    header: CAPTION,
    rowPaddingPt: 5,
    rows: rows.map(({ figure, lines }): TableCell[] => [
      cell([[figure, FIGURE]]),
      cell(lines.map((line, index) => [line, index === 0 ? FIRST : MORE])),
    ]),
  };
}
