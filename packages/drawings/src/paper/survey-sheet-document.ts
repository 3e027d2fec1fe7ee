// A blank measuring sheet for the car park: the cavity with its letters, and a box to write in for each of them.
import type { PaperSize, TitleBlock } from '@gusset/contracts/drawings';
import type { Scene } from '../scene/scene.ts';
import { type CavityViewInput, cavityPlan, cavitySection } from '../views/cavity-view.ts';
import { PLANNING_CAUTION, titleBlockPart } from './draw-sheet-page.ts';
import { balloonCell, writingBox } from './form-cells.ts';
import { PageFlow, type TableCell } from './page-flow.ts';
import type { PaperDocument } from './paper-page.ts';
import { printableArea } from './paper-size.ts';
import { TITLE_BLOCK_HEIGHT_PT } from './title-block.ts';
import { BODY, CAPTION, type Lettering, SMALL, TITLE } from './words-block.ts';

export type SurveyRow = {
  readonly letter: string;
  /** `Floor, seat back to sill`. */
  readonly what: string;
  /** How to hold the tape. */
  readonly how: string;
};

export type SurveySheetInput = {
  readonly paper: PaperSize;
  readonly language: string;
  readonly titleBlock: TitleBlock;
  readonly heading: string;
  readonly views: readonly { readonly kind: 'section' | 'plan'; readonly cavity: CavityViewInput }[];
  readonly rows: readonly SurveyRow[];
};

const GAP_PT = 8;
const ALONE_SHARE = 0.4; // of the page's height, for the only view
const FIGURE_SHARES = { section: 0.31, plan: 0.24 }; // for both: the section has most of the letters
const SECOND_ROW_PT = 30; // a second row of dimensions stands outside the figure
const BOX_PT = 24; // high enough for figures written with a pencil in gloves
const WHAT: Lettering = { face: 'semibold', sizePt: 10.5, ink: 'ink', leading: 1.3 };
const HOW_TO =
  'Measure twice and write what the tape says. Write how sure you are beside it (±). Nothing measured: draw a line through the box.';

export function surveySheetDocument(input: SurveySheetInput): PaperDocument {
  const format = { paper: input.paper, orientation: 'portrait' } as const;
  const area = printableArea(format);
  const flow = new PageFlow({ ...format, headPt: 0, footPt: TITLE_BLOCK_HEIGHT_PT + GAP_PT });
  flow.newPage(input.heading);
  flow.words(input.heading, TITLE, 'H1');
  flow.words(HOW_TO, BODY);
  flow.space(SECOND_ROW_PT);
  for (const view of input.views) {
    const share = input.views.length === 1 ? ALONE_SHARE : FIGURE_SHARES[view.kind];
    flow.figure(blank(view, { widthPt: flow.widthPt, heightPt: (area.bottom - area.top) * share }));
  }
  flow.space(6);
  flow.table({
    title: 'Measurements',
    columns: [
      { title: '', share: 0.7, align: 'start' },
      { title: 'Measure', share: 4.4, align: 'start' },
      { title: `Tape says, ${input.titleBlock.units}`, share: 2.4, align: 'start' },
      { title: '±', share: 1, align: 'start' },
      { title: 'How, note', share: 1.9, align: 'start' },
    ],
    header: CAPTION,
    rowPaddingPt: 3,
    rows: input.rows.map(({ letter, what, how }): TableCell[] => [
      balloonCell(letter, BOX_PT / 2),
      {
        kind: 'words',
        words: [
          [what, WHAT],
          [how, SMALL],
        ],
      },
      writingBox(BOX_PT, input.titleBlock.units),
      writingBox(BOX_PT, ''),
      writingBox(BOX_PT, ''),
    ]),
  });
  flow.space(6);
  flow.words(`${PLANNING_CAUTION} Prop the lid, chock the wheels, mind seat springs and airbags.`, SMALL);
  return {
    title: `Survey sheet, ${input.titleBlock.vehicle}`,
    language: input.language,
    author: input.titleBlock.shop,
    pages: flow.finish((page, pages) => [
      titleBlockPart(input.titleBlock, { page, pages, scale: null }, area),
    ]),
  };
}

/** The view with its letters and no values: they are what the sheet is for. */
function blank(
  { kind, cavity }: SurveySheetInput['views'][number],
  room: { readonly widthPt: number; readonly heightPt: number },
): Scene {
  const labels = cavity.labels.map((label) => ({ ...label, value: null, active: false }));
  const input = { ...cavity, labels };
  const view = { ...room, textPt: 12 };
  return kind === 'plan' ? cavityPlan(input, view) : cavitySection(input, view);
}
