// Fills pages from top to bottom: text, figures and tables whose header rows come again on each page. Rows are never
// split, headings never stand alone at the foot of a page.
import { line } from '../scene/items.ts';
import type { Scene, SceneItem } from '../scene/scene.ts';
import { type Extent, spot } from '../scene/spot.ts';
import { wrapText } from '../text/text-width.ts';
import type { PaperBlock, PaperPage, TableRow, WordsRole } from './paper-page.ts';
import { type PaperFormat, printableArea } from './paper-size.ts';
import { type Column, type Lettering, setWords } from './words-block.ts';

export type TableColumn = {
  readonly title: string;
  /** Share of the width. */
  readonly share: number;
  readonly align: 'start' | 'end';
};

/** Words one under the other, or something drawn of a known height. */
export type TableCell =
  | { readonly kind: 'words'; readonly words: readonly (readonly [string, Lettering])[] }
  | {
      readonly kind: 'drawn';
      readonly heightPt: number;
      readonly draw: (column: Column, top: number, heightPt: number) => readonly SceneItem[];
    };

export type FlowTable = {
  readonly title: string;
  readonly columns: readonly TableColumn[];
  readonly header: Lettering;
  readonly rows: readonly (readonly TableCell[])[];
  readonly rowPaddingPt: number;
};

const COLUMN_GAP_PT = 10;
const FEWEST_LINES = 2; // of a paragraph at the foot of a page
const KEEP_WITH_NEXT_PT = 60; // a heading moves on with at least this much of what follows

export type FlowPage = { readonly bookmark: string | null; readonly blocks: PaperBlock[] };

export type PageFlowOptions = PaperFormat & { readonly headPt: number; readonly footPt: number };

export class PageFlow {
  readonly #format: PaperFormat;
  readonly #area: Extent;
  readonly #pages: FlowPage[] = [];
  #y = 0;

  constructor({ paper, orientation, headPt, footPt }: PageFlowOptions) {
    this.#format = { paper, orientation };
    const area = printableArea(this.#format);
    this.#area = { ...area, top: area.top + headPt, bottom: area.bottom - footPt };
  }

  get widthPt(): number {
    return this.#area.right - this.#area.left;
  }

  get roomPt(): number {
    return this.#pages.length === 0 ? this.#area.bottom - this.#area.top : this.#area.bottom - this.#y;
  }

  /** Where the next thing will stand. */
  get y(): number {
    this.#page();
    return this.#y;
  }

  get left(): number {
    return this.#area.left;
  }

  /** Starts a page under a bookmark. */
  newPage(bookmark: string | null): void {
    this.#pages.push({ bookmark, blocks: [] });
    this.#y = this.#area.top;
  }

  space(heightPt: number): void {
    this.#y = Math.min(this.y + heightPt, this.#area.bottom);
  }

  /** Moves on to the next page unless so much room is left. */
  keep(heightPt: number): void {
    if (this.roomPt < heightPt && heightPt <= this.#area.bottom - this.#area.top) this.newPage(null);
  }

  heading(words: string, lettering: Lettering, role: WordsRole): void {
    this.keep(setWords(words, lettering, this.#column(), 0).heightPt + KEEP_WITH_NEXT_PT);
    this.words(words, lettering, role);
  }

  /** A paragraph; a long one goes on over the page. */
  words(words: string, lettering: Lettering, role: WordsRole = 'P', url: string | null = null): void {
    if (words === '') return;
    const column = this.#column();
    const lineHeightPt = lettering.sizePt * lettering.leading;
    let left = wrapText(words, lettering.face, lettering.sizePt, column.widthPt);
    while (left.length > 0) {
      this.keep(lineHeightPt * Math.min(left.length, FEWEST_LINES));
      const lines = Math.max(1, Math.floor(this.roomPt / lineHeightPt + 1e-6)); // rounding of a quotient
      const set = setWords(left.slice(0, lines).join('\n'), lettering, column, this.y);
      this.add({ kind: 'words', role, items: set.items, url }, set.heightPt);
      left = left.slice(lines);
    }
  }

  /** Adds a block that the caller has set at `y`. */
  add(block: PaperBlock, heightPt: number): void {
    this.#page().blocks.push(block);
    this.#y += heightPt;
  }

  figure(scene: Scene): void {
    this.keep(scene.heightPt);
    const scale = Math.min(1, this.widthPt / scene.widthPt, this.roomPt / scene.heightPt);
    this.add({ kind: 'figure', scene, at: spot(this.#area.left, this.y), scale }, scene.heightPt * scale);
  }

  table(table: FlowTable): void {
    const columns = this.#columns(table.columns);
    const header = (top: number) => headerRow(table, columns, top, this.#area);
    let rows: TableRow[] = [];
    let rules: SceneItem[] = [];
    const close = (): void => {
      if (rows.length === 0) return;
      this.#page().blocks.push(
        { kind: 'table', title: table.title, rows },
        { kind: 'furniture', items: rules },
      );
      rows = [];
      rules = [];
    };
    for (const cells of table.rows) {
      const heightPt = rowHeight(cells, columns, table.rowPaddingPt);
      const headerPt = rows.length === 0 ? header(0).heightPt : 0;
      if (this.roomPt < heightPt + headerPt) {
        close();
        this.newPage(null);
      }
      if (rows.length === 0) {
        const head = header(this.y);
        rows.push(head.row);
        rules.push(...head.rules);
        this.#y += head.heightPt;
      }
      rows.push(bodyRow(cells, columns, this.y, heightPt, table.rowPaddingPt));
      this.#y += heightPt;
      rules.push(levelRule(this.#area, this.#y, 0.4));
    }
    close();
  }

  /** The pages, each closed by its running head and foot. */
  finish(
    furniture: (page: number, pages: number, content: readonly PaperBlock[]) => readonly PaperBlock[],
  ): PaperPage[] {
    const total = this.#pages.length;
    return this.#pages.map(({ bookmark, blocks }, index) => ({
      ...this.#format,
      bookmark,
      blocks: [...blocks, ...furniture(index + 1, total, blocks)],
    }));
  }

  #page(): FlowPage {
    const last = this.#pages.at(-1);
    if (last !== undefined) return last;
    return this.#page();
  }

  #column(): Column {
    return { left: this.#area.left, widthPt: this.widthPt, align: 'start' };
  }

  #columns(columns: readonly TableColumn[]): readonly Column[] {
    const sum = columns.reduce((total, { share }) => total + share, 0);
    const room = this.widthPt - COLUMN_GAP_PT * (columns.length - 1);
    let left = this.#area.left;
    return columns.map(({ share, align }) => {
      const column = { left, widthPt: (room * share) / sum, align };
      left += column.widthPt + COLUMN_GAP_PT;
      return column;
    });
  }
}

const levelRule = (area: Extent, y: number, widthPt: number): SceneItem =>
  line(spot(area.left, y), spot(area.right, y), { role: 'thin', dashPt: null, widthPt });

function headerRow(
  { columns: titles, header }: FlowTable,
  columns: readonly Column[],
  top: number,
  area: Extent,
): { row: TableRow; rules: SceneItem[]; heightPt: number } {
  const cells = columns.map((column, index) => setWords(titles[index]?.title ?? '', header, column, top));
  const heightPt = Math.max(...cells.map((cell) => cell.heightPt)) + 3;
  return {
    row: { header: true, cells: cells.map(({ items }) => items) },
    rules: [levelRule(area, top + heightPt, 1)],
    heightPt,
  };
}

function rowHeight(cells: readonly TableCell[], columns: readonly Column[], paddingPt: number): number {
  const heights = cells.map((cell, index) => cellHeight(cell, columns[index]));
  return Math.max(0, ...heights) + 2 * paddingPt;
}

function cellHeight(cell: TableCell, column: Column | undefined): number {
  if (column === undefined) return 0;
  if (cell.kind === 'drawn') return cell.heightPt;
  return cell.words.reduce(
    (sum, [words, lettering]) => sum + setWords(words, lettering, column, 0).heightPt,
    0,
  );
}

function bodyRow(
  cells: readonly TableCell[],
  columns: readonly Column[],
  top: number,
  heightPt: number,
  paddingPt: number,
): TableRow {
  return {
    header: false,
    cells: columns.map((column, index) => {
      const cell = cells[index];
      if (cell === undefined) return [];
      if (cell.kind === 'drawn') return cell.draw(column, top + paddingPt, heightPt - 2 * paddingPt);
      let y = top + paddingPt;
      return cell.words.flatMap(([words, lettering]) => {
        const set = setWords(words, lettering, column, y);
        y += set.heightPt;
        return set.items;
      });
    }),
  };
}
