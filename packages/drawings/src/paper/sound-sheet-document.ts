// The sound sheet on one landscape page: verdict, level, the box as a section, the other curves, the figures beside
// them and the designs that were compared. The same vectors as on the screen, drawn to the room of the page.
import type { PaperSize, TitleBlock } from '@gusset/contracts/drawings';
import { type ResponseChartInput, responseChart } from '../charts/response-chart.ts';
import { line } from '../scene/items.ts';
import type { SceneItem } from '../scene/scene.ts';
import { spot } from '../scene/spot.ts';
import { type EnclosureSectionInput, enclosureSection } from '../views/enclosure-section.ts';
import { titleBlockPart } from './draw-sheet-page.ts';
import type { PaperBlock, PaperDocument, TableRow } from './paper-page.ts';
import { printableArea } from './paper-size.ts';
import { TITLE_BLOCK_HEIGHT_PT } from './title-block.ts';
import {
  BODY,
  CAPTION,
  type Column,
  HEADING,
  type Lettering,
  SMALL,
  setWords,
  TITLE,
} from './words-block.ts';

export type SoundSheetInput = {
  readonly paper: PaperSize;
  readonly language: string;
  readonly titleBlock: TitleBlock;
  /** `Reaches 28 Hz in this car`. */
  readonly verdict: string;
  readonly detail: string;
  readonly level: ResponseChartInput;
  /** In the order in which they are asked for; as many are drawn as the page takes. */
  readonly others: readonly ResponseChartInput[];
  readonly section: EnclosureSectionInput;
  readonly figures: readonly { readonly label: string; readonly value: string }[];
  /** Designs side by side, the one that counts first; empty = there is only one. */
  readonly designs: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
  readonly notes: readonly string[];
  readonly caution: string;
};

const GAP_PT = 10;
const BESIDE_SHARE = 0.33; // of the width, for section and figures
const LEVEL_SHARE = 0.48; // of the height, for the level
const SECTION_SHARE = 0.26;
const ACROSS = 3;
const MOST_OTHERS = 6;
const CHART_TEXT_PT = 8;
const FIGURE: Lettering = { face: 'mono', sizePt: 8.5, ink: 'ink', leading: 1.55 };
const LABEL: Lettering = { face: 'regular', sizePt: 8.5, ink: 'ink-2', leading: 1.55 };

type Place = {
  readonly left: number;
  readonly top: number;
  readonly widthPt: number;
  readonly heightPt: number;
};

export function soundSheetDocument(input: SoundSheetInput): PaperDocument {
  const format = { paper: input.paper, orientation: 'landscape' } as const;
  const area = printableArea(format);
  const widthPt = area.right - area.left;
  const whole: Column = { left: area.left, widthPt, align: 'start' };
  const verdict = setWords(input.verdict, TITLE, whole, area.top);
  const detail = setWords(input.detail, BODY, whole, area.top + verdict.heightPt);
  const caution = { ...CAPTION, ink: 'ink' } as const;
  const cautionPt = setWords(input.caution, caution, whole, 0).heightPt;
  const foot = area.bottom - TITLE_BLOCK_HEIGHT_PT - GAP_PT - cautionPt;
  const top = area.top + verdict.heightPt + detail.heightPt + GAP_PT;
  const heightPt = foot - GAP_PT - top;
  const besidePt = widthPt * BESIDE_SHARE;
  const chartsPt = widthPt - besidePt - 2 * GAP_PT;
  const levelPt = heightPt * LEVEL_SHARE;
  const charts: Place = { left: area.left, top, widthPt: chartsPt, heightPt };
  const beside: Place = { left: area.right - besidePt, top, widthPt: besidePt, heightPt };
  const words = (role: 'H1' | 'P', items: readonly SceneItem[]): PaperBlock => ({
    kind: 'words',
    role,
    items,
    url: null,
  });
  return {
    title: `Sound, job ${input.titleBlock.job}, rev ${input.titleBlock.revision}`,
    language: input.language,
    author: input.titleBlock.shop,
    pages: [
      {
        ...format,
        bookmark: 'Sound',
        blocks: [
          words('H1', verdict.items),
          words('P', detail.items),
          chartBlock(input.level, { ...charts, heightPt: levelPt }),
          ...otherBlocks(input.others, {
            ...charts,
            top: top + levelPt + GAP_PT,
            heightPt: heightPt - levelPt - GAP_PT,
          }),
          ...besideBlocks(input, beside),
          words('P', setWords(input.caution, caution, whole, foot).items),
          titleBlockPart(input.titleBlock, { page: 1, pages: 1, scale: null }, area),
        ],
      },
    ],
  };
}

function chartBlock(chart: ResponseChartInput, { left, top, widthPt, heightPt }: Place): PaperBlock {
  const scene = responseChart(chart, { widthPt, heightPt, textPt: CHART_TEXT_PT });
  return { kind: 'figure', scene, at: spot(left, top), scale: 1 };
}

/** In rows of three. */
function otherBlocks(charts: readonly ResponseChartInput[], place: Place): readonly PaperBlock[] {
  const drawn = charts.slice(0, MOST_OTHERS);
  const rows = Math.max(1, Math.ceil(drawn.length / ACROSS));
  const widthPt = (place.widthPt - GAP_PT * (ACROSS - 1)) / ACROSS;
  const heightPt = (place.heightPt - GAP_PT * (rows - 1)) / rows;
  return drawn.map((chart, i) =>
    chartBlock(chart, {
      left: place.left + (i % ACROSS) * (widthPt + GAP_PT),
      top: place.top + Math.floor(i / ACROSS) * (heightPt + GAP_PT),
      widthPt,
      heightPt,
    }),
  );
}

/** Section, figures, designs and notes, one under the other; notes that the page has no room for are left out. */
function besideBlocks(input: SoundSheetInput, place: Place): readonly PaperBlock[] {
  const { left, widthPt, heightPt } = place;
  const sectionPt = heightPt * SECTION_SHARE;
  const section = enclosureSection(input.section, { widthPt, heightPt: sectionPt, textPt: 9 });
  const bottom = place.top + heightPt;
  let y = place.top + sectionPt + GAP_PT;
  const blocks: PaperBlock[] = [{ kind: 'figure', scene: section, at: spot(left, place.top), scale: 1 }];
  const rules: SceneItem[] = [];
  const table = (
    title: string,
    rows: readonly (readonly string[])[],
    lettering: readonly [Lettering, Lettering],
  ) => {
    const set = tableRows(rows, lettering, { left, widthPt, top: y });
    blocks.push({ kind: 'table', title, rows: set.rows });
    rules.push(...set.rules);
    y = set.bottom + GAP_PT;
  };
  table(
    'Figures',
    input.figures.map(({ label, value }) => [label, value]),
    [LABEL, FIGURE],
  );
  if (input.designs.rows.length > 0) {
    table(
      'Designs side by side',
      [input.designs.head, ...input.designs.rows],
      [
        { ...SMALL, sizePt: 7.5, ink: 'ink' },
        { ...FIGURE, sizePt: 7.5 },
      ],
    );
  }
  const column: Column = { left, widthPt, align: 'start' };
  if (input.notes.length > 0) {
    const heading = setWords('To mind', { ...HEADING, sizePt: 9.5 }, column, y);
    const items = [...heading.items];
    y += heading.heightPt;
    for (const note of input.notes) {
      const set = setWords(note, SMALL, column, y);
      if (y + set.heightPt > bottom) break;
      items.push(...set.items);
      y += set.heightPt;
    }
    blocks.push({ kind: 'words', role: 'P', items, url: null });
  }
  return [...blocks, { kind: 'furniture', items: rules }];
}

/** First column from the left, the others right-aligned in equal shares; a rule under each row. */
function tableRows(
  rows: readonly (readonly string[])[],
  [label, figure]: readonly [Lettering, Lettering],
  { left, widthPt, top }: { readonly left: number; readonly widthPt: number; readonly top: number },
): { readonly rows: readonly TableRow[]; readonly rules: readonly SceneItem[]; readonly bottom: number } {
  const columns = Math.max(...rows.map((row) => row.length));
  const firstPt = widthPt * (columns === 2 ? 0.58 : 0.36);
  const otherPt = (widthPt - firstPt) / Math.max(columns - 1, 1);
  const rules: SceneItem[] = [];
  let y = top;
  const set = rows.map((row): TableRow => {
    const cells = row.map((words, i) =>
      i === 0
        ? setWords(words, label, { left, widthPt: firstPt, align: 'start' }, y)
        : setWords(
            words,
            figure,
            { left: left + firstPt + (i - 1) * otherPt, widthPt: otherPt, align: 'end' },
            y,
          ),
    );
    y += Math.max(...cells.map(({ heightPt }) => heightPt));
    rules.push(line(spot(left, y), spot(left + widthPt, y), { role: 'thin', dashPt: null, widthPt: 0.3 }));
    return { header: false, cells: cells.map(({ items }) => items) };
  });
  return { rows: set, rules, bottom: y };
}
