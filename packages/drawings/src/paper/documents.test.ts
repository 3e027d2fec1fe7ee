import { quotePaperSchema } from '@gusset/contracts/drawings';
import { describe, expect, it } from 'vitest';
import { flattenItem } from '../scene/flatten.ts';
import { renderSvg } from '../svg/render-svg.ts';
import { BOX_SHEET, CUT_SHEET, QUOTE, SURVEY_SHEET, TITLE_BLOCK } from '../testing/sample-papers.ts';
import { BOX_SECTION, SHEET } from '../testing/sample-views.ts';
import { readXml } from '../testing/xml-check.ts';
import { boxSection } from '../views/box-view.ts';
import { cutSheetDocument, SAW_CAUTION } from './cut-sheet-document.ts';
import { drawSheetPage, drawSheetPages, PLANNING_CAUTION } from './draw-sheet-page.ts';
import { blockItems, type PaperDocument, type PaperPage, pageScene } from './paper-page.ts';
import { paperExtent } from './paper-size.ts';
import { quoteDocument } from './quote-document.ts';
import { surveySheetDocument } from './survey-sheet-document.ts';

const wordsOf = (page: PaperPage): string[] =>
  page.blocks
    .flatMap(blockItems)
    .flatMap((item) => flattenItem(item).shapes)
    .flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
const allWords = (paper: PaperDocument): string => paper.pages.flatMap(wordsOf).join('\n');
const drawing = (room: { widthPt: number; heightPt: number }) =>
  boxSection(BOX_SECTION, { ...room, textPt: 9 });

const LONG_QUOTE = {
  ...QUOTE,
  sections: [
    {
      title: 'Many things',
      lines: Array.from({ length: 120 }, (_, index) => ({
        description: `Thing number ${index + 1}`,
        detail: index % 3 === 0 ? 'with a second row that says a little more about it' : '',
        quantity: '1',
        unitPriceMinor: 100,
        amountMinor: 100,
      })),
    },
  ],
  subtotalMinor: 12_000,
  taxes: [{ name: 'VAT 20 %', baseMinor: 12_000, amountMinor: 2_400 }],
  totalMinor: 14_400,
};

describe('paperExtent', () => {
  it('is 210 × 297 mm for A4 and 8½ × 11 in for Letter', () => {
    const a4 = paperExtent({ paper: 'A4', orientation: 'portrait' });
    expect(a4.widthPt).toBeCloseTo(595.276, 3);
    expect(a4.heightPt).toBeCloseTo(841.89, 2);
    expect(paperExtent({ paper: 'Letter', orientation: 'landscape' })).toEqual({
      widthPt: 792,
      heightPt: 612,
    });
    expect(paperExtent({ paper: 'Tabloid', orientation: 'portrait' }).heightPt).toBeCloseTo(1224, 6);
  });
});

describe('quoteDocument', () => {
  const paper = quoteDocument(quotePaperSchema.parse(QUOTE), drawing);

  it('says who, what, how much, until when and where to approve', () => {
    const words = allWords(paper);
    for (const part of [
      'Quarry Road Sound',
      'Quote Q-2417',
      'Version 2',
      'Valid until 24 December 2026',
      'R. Okafor',
      'Halden Brisk hatch, 2021',
      'Quince 12 driver',
      '£462.00',
      '-£50.00',
      '£1,407.50',
      'VAT 20 % on £1,407.50',
      '£281.50',
      '£1,689.00',
      'Deposit, on approval',
      '£600.00',
      'https://quarryroad.example/q/7hK2-w9Qd',
    ]) {
      expect(words).toContain(part);
    }
    expect(words).toContain('Planning aid only.');
  });

  it('numbers its pages and names its language', () => {
    paper.pages.forEach((page, index) => {
      expect(wordsOf(page)).toContain(`Page ${index + 1} of ${paper.pages.length}`);
    });
    expect(paper.language).toBe('en-GB');
    expect(paper.pages[0]?.bookmark).toBe('Quote Q-2417, version 2');
  });

  it('writes money as the shop’s place does', () => {
    const german = quoteDocument({ ...QUOTE, locale: 'de-DE', currency: 'EUR' }, null);
    expect(allWords(german)).toContain('1.689,00\u00a0€');
  });

  it('repeats the header row on every page and loses no line of 120', () => {
    const long = quoteDocument(quotePaperSchema.parse(LONG_QUOTE), null);
    expect(long.pages.length).toBeGreaterThan(3);
    const tables = long.pages.map((page) => page.blocks.find((block) => block.kind === 'table'));
    for (const table of tables.slice(0, -1))
      expect(table?.kind === 'table' && table.rows[0]?.header).toBe(true);
    const words = long.pages.flatMap(wordsOf);
    const things = words.filter((each) => each.startsWith('Thing number'));
    expect(things).toEqual(LONG_QUOTE.sections[0]?.lines.map(({ description }) => description));
  });

  it('sets nothing below the foot of a page', () => {
    for (const page of quoteDocument(quotePaperSchema.parse(LONG_QUOTE), drawing).pages) {
      const limit = paperExtent(page).heightPt - 36 - 26;
      for (const block of page.blocks) {
        if (block.kind !== 'table' && block.kind !== 'words') continue;
        for (const item of blockItems(block)) {
          if (item.kind === 'text') expect(item.at.y).toBeLessThanOrEqual(limit + 0.01);
        }
      }
    }
  });

  it('lets a long note run over the page without losing a word', () => {
    const note = Array.from({ length: 1_400 }, (_, index) => `w${index}`).join(' ');
    const long = quoteDocument({ ...QUOTE, note }, null);
    const found = allWords(long).match(/\bw\d+\b/g) ?? [];
    expect(found).toHaveLength(1_400);
    expect(long.pages.length).toBeGreaterThan(2);
  });

  it('leaves out what a quote does not have', () => {
    const bare = quoteDocument(
      { ...QUOTE, taxes: [], totalMinor: QUOTE.subtotalMinor, deposit: null, terms: [], approveUrl: '' },
      null,
    );
    expect(allWords(bare)).not.toMatch(/Deposit|Terms|Approve|VAT 20/);
  });
});

describe('cutSheetDocument', () => {
  const paper = cutSheetDocument(CUT_SHEET);

  it('lists every panel with figures of 14 pt or more', () => {
    const table = paper.pages[0]?.blocks.find((block) => block.kind === 'table');
    const rows = table?.kind === 'table' ? table.rows.slice(1) : [];
    expect(rows).toHaveLength(6);
    for (const { cells } of rows) {
      for (const item of cells.slice(2, 5).flat()) {
        expect(item.kind === 'text' && item.sizePt >= 14).toBe(true);
      }
    }
    expect(allWords(paper)).toContain('438.2');
  });

  it('draws one landscape page a sheet, numbered on after the list', () => {
    expect(paper.pages.map(({ orientation }) => orientation)).toEqual(['portrait', 'portrait', 'landscape']);
    expect(wordsOf(paper.pages[2] ?? drawSheetPage(BOX_SHEET, { page: 1, pages: 1 }))).toContain('3 of 3');
  });

  it('gives each machine a page of its own, its settings as large as the sizes of the list', () => {
    const page = paper.pages[1];
    const table = page?.blocks.find((block) => block.kind === 'table');
    const rows = table?.kind === 'table' ? table.rows.slice(1) : [];
    expect(rows).toHaveLength(2);
    expect(
      rows[0]?.cells[0]?.some((item) => item.kind === 'text' && item.text === '584' && item.sizePt >= 14),
    ).toBe(true);
    expect(page === undefined ? '' : wordsOf(page).join(' ').replace(/\s+/g, ' ')).toContain(
      PLANNING_CAUTION,
    );
  });

  it('says the saw caution on the list and on every map', () => {
    for (const page of [paper.pages[0], paper.pages[2]]) {
      expect(page === undefined ? '' : wordsOf(page).join(' ').replace(/\s+/g, ' ')).toContain(SAW_CAUTION);
    }
    for (const part of ['Guard', 'riving knife', 'push stick', 'extraction', "makers' instructions"]) {
      expect(SAW_CAUTION).toContain(part);
    }
  });

  it('carries the job and the revision in the title block of each page', () => {
    const long = cutSheetDocument({
      ...CUT_SHEET,
      materials: CUT_SHEET.materials.map((each) => ({
        ...each,
        rows: Array.from({ length: 8 }, () => each.rows).flat(),
        maps: [SHEET, SHEET],
      })),
    });
    expect(long.pages.length).toBeGreaterThan(4);
    long.pages.forEach((page, index) => {
      expect(wordsOf(page)).toEqual(
        expect.arrayContaining(['2417', 'C', `${index + 1} of ${long.pages.length}`]),
      );
    });
  });
});

describe('surveySheetDocument', () => {
  it('draws the letters without values and a box for each', () => {
    const [page] = surveySheetDocument(SURVEY_SHEET).pages;
    const words = page === undefined ? [] : wordsOf(page);
    expect(words).not.toContain('812');
    for (const letter of ['A', 'B', 'C', 'D', 'E']) {
      expect(words.filter((each) => each === letter).length).toBeGreaterThanOrEqual(2); // on the drawing and in the list
    }
    const table = page?.blocks.find((block) => block.kind === 'table');
    const boxes =
      table?.kind === 'table'
        ? table.rows.flatMap(({ cells }) => cells.flat()).filter(({ kind }) => kind === 'polyline')
        : [];
    expect(boxes).toHaveLength(5 * 3);
  });
});

describe('drawSheetPages', () => {
  it('states the scale when the drawing has one, and that it has none when it was shrunk', () => {
    const [page] = drawSheetPages([BOX_SHEET]);
    expect(page === undefined ? [] : wordsOf(page)).toContain('1:5');
    const oversize = drawSheetPage(
      {
        ...BOX_SHEET,
        draw: () => boxSection(BOX_SECTION, { widthPt: 3000, heightPt: 2000, scale: 'standard' }),
      },
      { page: 1, pages: 1 },
    );
    expect(wordsOf(oversize)).toContain('not to scale');
  });

  it('says in red that nobody checked the sheet', () => {
    const page = drawSheetPage(BOX_SHEET, { page: 1, pages: 1 });
    const open = page.blocks
      .flatMap(blockItems)
      .find((item) => item.kind === 'text' && item.text === 'not yet');
    expect(open).toMatchObject({ ink: 'pencil' });
    expect(TITLE_BLOCK.checked).toBeNull();
  });

  it('shows on screen what goes to paper', () => {
    const page = drawSheetPage(BOX_SHEET, { page: 1, pages: 1 });
    const root = readXml(renderSvg(pageScene(page, 'Box'), { theme: 'print', idPrefix: 'p' }));
    expect(root.children[0]?.text).toBe('Box: Box and dry fit');
    expect(root.children[1]?.text).toContain('812 mm deep');
  });
});
