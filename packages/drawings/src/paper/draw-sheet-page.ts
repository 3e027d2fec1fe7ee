// One sheet of a job on paper: the drawing as large as the page takes it, notes under it, the title block below.
import type { TitleBlock } from '@gusset/contracts/drawings';
import { text } from '../scene/items.ts';
import type { Scene, SceneItem } from '../scene/scene.ts';
import { type Extent, spot } from '../scene/spot.ts';
import type { PaperBlock, PaperPage } from './paper-page.ts';
import { type PaperFormat, printableArea } from './paper-size.ts';
import { type PageFacts, TITLE_BLOCK_HEIGHT_PT, titleBlockItems } from './title-block.ts';
import { BODY, CAPTION, type SetWords, setWords, TITLE } from './words-block.ts';

/** What a cautious drawing says where nothing more particular is said. */
export const PLANNING_CAUTION = "Planning aid only. Follow the makers' instructions and local law.";

export type DrawingSheet = PaperFormat & {
  readonly heading: string;
  readonly titleBlock: TitleBlock;
  /** Draws to the size that the page leaves, in points. */
  readonly draw: (room: { readonly widthPt: number; readonly heightPt: number }) => Scene;
  readonly notes: readonly string[];
  readonly caution: string;
};

const HEADING_PT = TITLE.sizePt * TITLE.leading;
const GAP_PT = 8;

/** The pages of some sheets, numbered through. */
export function drawSheetPages(sheets: readonly DrawingSheet[]): readonly PaperPage[] {
  return sheets.map((sheet, index) => drawSheetPage(sheet, { page: index + 1, pages: sheets.length }));
}

export function drawSheetPage(sheet: DrawingSheet, { page, pages }: Omit<PageFacts, 'scale'>): PaperPage {
  const area = printableArea(sheet);
  const column = { left: area.left, widthPt: area.right - area.left, align: 'start' } as const;
  const heading = setWords(sheet.heading, TITLE, column, area.top);
  const under = footWords(sheet, area);
  const top = area.top + HEADING_PT + GAP_PT;
  const room = { widthPt: column.widthPt, heightPt: under.top - GAP_PT - top };
  const scene = sheet.draw(room);
  const scale = Math.min(1, room.widthPt / scene.widthPt, room.heightPt / scene.heightPt);
  const blocks: PaperBlock[] = [
    { kind: 'words', role: 'H1', items: heading.items, url: null },
    { kind: 'figure', scene, at: spot(area.left, top), scale },
    ...(under.items.length === 0
      ? []
      : [{ kind: 'words', role: 'P', items: under.items, url: null } as const]),
    titleBlockPart(sheet.titleBlock, { page, pages, scale: scale === 1 ? scene.scaleLabel : null }, area),
  ];
  return { paper: sheet.paper, orientation: sheet.orientation, bookmark: sheet.heading, blocks };
}

/** The title block is read out too: it is the only place of the job number and the revision. */
export function titleBlockPart(block: TitleBlock, facts: PageFacts, area: Extent): PaperBlock {
  return { kind: 'words', role: 'P', items: titleBlockItems(block, facts, area), url: null };
}

/** Notes and caution, set upwards from the title block. */
function footWords(sheet: DrawingSheet, area: Extent): { top: number; items: readonly SceneItem[] } {
  const column = { left: area.left, widthPt: area.right - area.left, align: 'start' } as const;
  const caution = { ...CAPTION, sizePt: 8.5, ink: 'ink' } as const;
  const parts = [...sheet.notes.map((words) => [words, BODY] as const), [sheet.caution, caution] as const];
  const heightPt = parts.reduce(
    (sum, [words, lettering]) => sum + setWords(words, lettering, column, 0).heightPt,
    0,
  );
  const top = area.bottom - TITLE_BLOCK_HEIGHT_PT - GAP_PT - heightPt;
  let y = top;
  const set = parts.map(([words, lettering]): SetWords => {
    const each = setWords(words, lettering, column, y);
    y += each.heightPt;
    return each;
  });
  return { top, items: set.flatMap(({ items }) => items) };
}

/** Small caption at the top right of a page, outside the text: continued pages say what they belong to. */
export const runningHead = (words: string, area: Extent): PaperBlock => ({
  kind: 'furniture',
  items: [
    text(spot(area.right, area.top + 8), words, {
      sizePt: 7.5,
      face: 'condensed',
      anchor: 'end',
      ink: 'ink-2',
    }),
  ],
});
