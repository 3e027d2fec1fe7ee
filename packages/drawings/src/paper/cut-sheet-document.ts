// What goes to the saw: a cut list that reads at arm's length, then a map of every sheet, each page under the job's
// title block and the caution for the saw.
import type { PaperSize, TitleBlock } from '@gusset/contracts/drawings';
import { type SheetMapInput, sheetMap } from '../views/sheet-map.ts';
import { drawSheetPage, PLANNING_CAUTION, titleBlockPart } from './draw-sheet-page.ts';
import { tickBox } from './form-cells.ts';
import { type FlowTable, PageFlow, type TableCell } from './page-flow.ts';
import type { PaperDocument } from './paper-page.ts';
import { printableArea } from './paper-size.ts';
import { TITLE_BLOCK_HEIGHT_PT } from './title-block.ts';
import { BODY, CAPTION, HEADING, type Lettering, TITLE } from './words-block.ts';
import { flowWorkPage, type WorkPage } from './work-page.ts';

export type CutListRow = {
  readonly mark: string;
  readonly name: string;
  readonly quantity: number;
  /** Along the grain where it matters. */
  readonly lengthMm: number;
  readonly widthMm: number;
  /** `bevel 7.5° one long edge`, `grain along length`; empty = none. */
  readonly note: string;
};

export type CutMaterial = {
  /** `Birch ply`. */
  readonly name: string;
  readonly thicknessMm: number;
  readonly rows: readonly CutListRow[];
  readonly maps: readonly SheetMapInput[];
};

export type CutSheetInput = {
  readonly paper: PaperSize;
  readonly language: string;
  readonly titleBlock: TitleBlock;
  readonly kerfMm: number;
  readonly materials: readonly CutMaterial[];
  readonly notes: readonly string[];
  /** Pages for the machines and the bench, after the list. */
  readonly work: readonly WorkPage[];
  readonly formatLength: (lengthMm: number) => string;
};

export const SAW_CAUTION =
  `${PLANNING_CAUTION} Disconnect the saw before you set it. Guard and riving knife fitted, push stick to hand, ` +
  'extraction on, eyes and ears protected. Check each size against the sheet before you cut.';

// Arm's length is some 700 mm: 14 pt figures there look as large as 8 pt ones in a book.
const FIGURE: Lettering = { face: 'mono', sizePt: 16, ink: 'ink', leading: 1.25 };
const MARK: Lettering = { face: 'semibold', sizePt: 18, ink: 'ink', leading: 1.15 };
const NAME: Lettering = { face: 'semibold', sizePt: 12, ink: 'ink', leading: 1.3 };
const NOTE: Lettering = { face: 'regular', sizePt: 10, ink: 'ink-2', leading: 1.3 };
const MAP_FIGURE_PT = 14;
const GAP_PT = 8;

export function cutSheetDocument(input: CutSheetInput): PaperDocument {
  const list = cutList(input);
  const maps = input.materials.flatMap(({ maps: sheets }) => sheets);
  const { pageCount } = list;
  const pages = pageCount + maps.length;
  return {
    title: `Cut sheet, job ${input.titleBlock.job}, rev ${input.titleBlock.revision}`,
    language: input.language,
    author: input.titleBlock.shop,
    pages: [
      ...list.pages(pages),
      ...maps.map((map, index) => mapPage(map, input, pageCount + index + 1, pages)),
    ],
  };
}

function cutList(input: CutSheetInput): {
  pageCount: number;
  pages: (total: number) => PaperDocument['pages'];
} {
  const format = { paper: input.paper, orientation: 'portrait' } as const;
  const flow = new PageFlow({ ...format, headPt: 0, footPt: TITLE_BLOCK_HEIGHT_PT + GAP_PT });
  flow.newPage('Cut list');
  flow.words('Cut list', TITLE, 'H1');
  flow.words(
    `Finished sizes in ${input.titleBlock.units}. A kerf of ${input.formatLength(input.kerfMm)} is allowed for between panels.`,
    BODY,
  );
  flow.space(4);
  flow.words(SAW_CAUTION, { ...BODY, face: 'semibold' });
  flow.space(12);
  for (const material of input.materials) {
    flow.heading(
      `${material.name}, ${input.formatLength(material.thicknessMm)} thick`,
      { ...HEADING, sizePt: 14 },
      'H2',
    );
    flow.table(cutTable(material, input));
    flow.space(14);
  }
  for (const note of input.notes) flow.words(note, BODY);
  for (const page of input.work) flowWorkPage(flow, page);
  const area = printableArea(format);
  let pageCount = 0;
  flow.finish((_page, pages) => {
    pageCount = pages;
    return [];
  });
  return {
    pageCount,
    pages: (total) =>
      flow.finish((page) => [titleBlockPart(input.titleBlock, { page, pages: total, scale: null }, area)]),
  };
}

function cutTable(material: CutMaterial, { formatLength }: CutSheetInput): FlowTable {
  const one = (words: string, lettering: Lettering): TableCell => ({
    kind: 'words',
    words: [[words, lettering]],
  });
  return {
    title: material.name,
    columns: [
      { title: 'Mark', share: 1.1, align: 'start' },
      { title: 'Panel', share: 3.6, align: 'start' },
      { title: 'Off', share: 0.8, align: 'end' },
      { title: 'Length', share: 2, align: 'end' },
      { title: 'Width', share: 2, align: 'end' },
      { title: 'Cut', share: 0.7, align: 'end' },
    ],
    header: CAPTION,
    rowPaddingPt: 5,
    rows: material.rows.map((row): TableCell[] => [
      one(row.mark, MARK),
      {
        kind: 'words',
        words: [
          [row.name, NAME],
          [row.note, NOTE],
        ],
      },
      one(String(row.quantity), FIGURE),
      one(formatLength(row.lengthMm), FIGURE),
      one(formatLength(row.widthMm), FIGURE),
      tickBox(),
    ]),
  };
}

function mapPage(
  map: SheetMapInput,
  input: CutSheetInput,
  page: number,
  pages: number,
): PaperDocument['pages'][number] {
  return drawSheetPage(
    {
      paper: input.paper,
      orientation: 'landscape',
      heading: map.title,
      titleBlock: input.titleBlock,
      notes: [
        'Numbers in circles: the order of the cuts. Broken outline and hatching: offcut worth keeping. ↻ turned.',
      ],
      caution: SAW_CAUTION,
      draw: (room) =>
        sheetMap(map, {
          ...room,
          textPt: MAP_FIGURE_PT,
          formatLength: input.formatLength,
        }),
    },
    { page, pages },
  );
}
