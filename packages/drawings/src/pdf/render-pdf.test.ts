import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import PDFDocument from 'pdfkit';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cutSheetDocument } from '../paper/cut-sheet-document.ts';
import { drawSheetPages } from '../paper/draw-sheet-page.ts';
import type { PaperDocument } from '../paper/paper-page.ts';
import { quoteDocument } from '../paper/quote-document.ts';
import { surveySheetDocument } from '../paper/survey-sheet-document.ts';
import { polygon, text } from '../scene/items.ts';
import type { TextFace } from '../scene/scene.ts';
import { rectangle, spot } from '../scene/spot.ts';
import { readPdf } from '../testing/read-pdf.ts';
import { BOX_SHEET, CUT_SHEET, QUOTE, SURVEY_SHEET } from '../testing/sample-papers.ts';
import { BOX_SECTION } from '../testing/sample-views.ts';
import { textWidthPt } from '../text/text-width.ts';
import { boxSection } from '../views/box-view.ts';
import { registerFonts, textRuns } from './font-cuts.ts';
import { renderPdf } from './render-pdf.ts';

const createdAt = new Date('2026-11-24T12:00:00Z');
const FACES: readonly TextFace[] = ['regular', 'semibold', 'condensed', 'mono'];

/** A page of words in one face each. */
const sheetOf = (words: string): PaperDocument => ({
  title: 'Signs Ж ½″ ⌀ ×',
  language: 'en-GB',
  author: 'Quarry Road Sound',
  pages: [
    {
      paper: 'A4',
      orientation: 'portrait',
      bookmark: 'Signs',
      blocks: FACES.map((face, index) => ({
        kind: 'words',
        role: 'P',
        items: [text(spot(50, 100 + index * 40), words, { face, sizePt: 20 })],
        url: null,
      })),
    },
  ],
});

const papers: Readonly<Record<string, PaperDocument>> = {
  quote: quoteDocument(QUOTE, (room) => boxSection(BOX_SECTION, { ...room, textPt: 9 })),
  'cut sheet': cutSheetDocument(CUT_SHEET),
  survey: surveySheetDocument(SURVEY_SHEET),
  'box sheet': {
    title: 'Box',
    language: 'en-US',
    author: 'Quarry Road Sound',
    pages: drawSheetPages([BOX_SHEET]),
  },
};

const rendered = new Map<PaperDocument, Promise<Uint8Array>>();

/** The PDF of a paper, made once for all tests. */
function pdfOf(paper: PaperDocument): Promise<Uint8Array> {
  const made = rendered.get(paper) ?? renderPdf(paper, { createdAt });
  rendered.set(paper, made);
  return made;
}

describe('renderPdf, read back from its bytes', () => {
  it.each(Object.entries(papers))(
    'writes a tagged %s with title, language and outline',
    async (_name, paper) => {
      const pdf = readPdf(await pdfOf(paper));
      const all = [...pdf.objects.values()].join('\n');
      expect(pdf.version).toBe('1.7');
      expect(pdf.pageCount).toBe(paper.pages.length);
      expect(all).toContain('/StructTreeRoot');
      expect(all).toMatch(/\/Marked true/);
      expect(all).toContain(`/Lang (${paper.language})`);
      expect(all).toMatch(/\/DisplayDocTitle true/);
      expect(all).toMatch(/\/Type \/Outlines|\/Outlines \d+ 0 R/);
      expect(all).toMatch(/\/S \/(Table|Figure)/);
      expect(all).toMatch(/\/FontFile2 \d+ 0 R/); // embedded, not named
    },
  );

  it('marks header cells, rows and figures with their description', async () => {
    const pdf = readPdf(await pdfOf(papers.quote ?? sheetOf('')));
    const all = [...pdf.objects.values()].join('\n');
    expect(all.match(/\/S \/TH\b/g)?.length).toBe(4 * 3); // four columns; two sections, one of them over two pages
    expect(all).toContain('/Alt (Wedge box, 18 mm panels, 584 mm on the floor, 402 mm high.)');
    expect(all).toContain('/URI (https://quarryroad.example/q/7hK2-w9Qd)');
  });

  it('keeps its text as text', async () => {
    const { pageTexts } = readPdf(await pdfOf(papers['cut sheet'] ?? sheetOf('')));
    const words = pageTexts.join('\n');
    for (const part of [
      'Cut list',
      'Birch plywood, 18 thick',
      'bevel 18.9° both long edges',
      '438.2',
      '1516 × 468',
    ]) {
      expect(words).toContain(part);
    }
  });

  it('finds a font for every sign of Ж ½ ″ ⌀ × ≈ → √ in each face', async () => {
    const { pageTexts } = readPdf(await renderPdf(sheetOf('Ж½″⌀×≈→√ΔŁ'), { createdAt }));
    const drawn = (pageTexts[0] ?? '').replaceAll('\n', '');
    expect(drawn).toBe('Ж½″⌀×≈→√ΔŁ'.repeat(FACES.length));
  });

  it('shows a box where no font has the sign, and control signs as spaces', async () => {
    const { pageTexts } = readPdf(await renderPdf(sheetOf('a\nb\u{1F9F0}c\ud800'), { createdAt }));
    expect((pageTexts[0] ?? '').replaceAll('\n', '')).toContain('a b□c');
  });

  it('takes hostile words as words', async () => {
    const words = ') Tj ET (\\) >> endobj <</JS(x)>>';
    const pdf = readPdf(await renderPdf({ ...sheetOf(words), title: words, author: words }, { createdAt }));
    expect((pdf.pageTexts[0] ?? '').split('\n')[0]).toBe(words);
    expect(pdf.pageCount).toBe(1);
  });

  it('is the same to the byte for the same pages and instant', async () => {
    const [first, second] = await Promise.all(
      [sheetOf('A'), sheetOf('A')].map((paper) => renderPdf(paper, { createdAt })),
    );
    expect(first).toEqual(second);
  });

  it('stays small', async () => {
    for (const paper of Object.values(papers)) {
      expect((await pdfOf(paper)).length).toBeLessThan(150_000);
    }
  });
});

describe('textWidthPt against the fonts themselves', () => {
  const document = new PDFDocument({ autoFirstPage: false });
  registerFonts(document);

  it.each(FACES)('is at most 3 % wider than what the %s cut prints, and never narrower', (face) => {
    for (const words of [
      'Quarry Road Sound, 4 Quarry Road',
      'VAT 20 % on £1,407.50',
      'AVATAR Tyre, Łódź – ½″ × 438.2',
    ]) {
      const printed = textRuns(document, words, face).reduce(
        (sum, run) => sum + document.font(run.font).fontSize(10).widthOfString(run.text),
        0,
      );
      const ratio = textWidthPt(words, face, 10) / printed;
      expect(ratio).toBeGreaterThan(0.998); // kerning left out makes it wider, so lines never run over
      expect(ratio).toBeLessThan(1.03);
    }
  });
});

// Poppler gives a second opinion where the machine has it; the checks on the bytes run everywhere.
const hasPoppler = spawnSync('pdfinfo', ['-v']).error === undefined;

describe('renderPdf, read by its own bytes and by poppler', () => {
  const folder = mkdtempSync(join(tmpdir(), 'gusset-drawings-'));
  const file = join(folder, 'signs.pdf');
  let bytes = new Uint8Array();
  beforeAll(async () => {
    const paper = sheetOf('Ж ½″ ⌀ ×');
    const square = { kind: 'furniture', items: [polygon(rectangle(100, 400, 72, 72), null, 'ink')] } as const;
    const pages = paper.pages.map((page) => ({ ...page, blocks: [...page.blocks, square] }));
    bytes = new Uint8Array(await renderPdf({ ...paper, pages }, { createdAt }));
    writeFileSync(file, bytes);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('carries title and page size', () => {
    const all = [...readPdf(bytes).objects.values()].join('\n');
    expect(all).toMatch(/\/MediaBox \[0 0 595\.2\d* 841\.8\d*\]/);
    expect(all).toMatch(/\/Title \(/);
    if (!hasPoppler) return;
    const info = spawnSync('pdfinfo', [file], { encoding: 'utf8' }).stdout;
    expect(info).toMatch(/Title:\s+Signs Ж ½″ ⌀ ×/);
    expect(info).toMatch(/Tagged:\s+yes/);
    expect(info).toMatch(/\(A4\)/);
  });

  it('lets the same words be selected in all four faces', () => {
    expect(
      readPdf(bytes)
        .pageTexts[0]?.replaceAll('\n', '')
        .match(/Ж ½″ ⌀ ×/g),
    ).toHaveLength(4);
    if (!hasPoppler) return;
    const words = spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).stdout;
    expect(words.match(/Ж ½″ ⌀ ×/g)).toHaveLength(4);
  });

  it('draws an inch as an inch', () => {
    expect(readPdf(bytes).pageContents[0]).toContain('100 400 m\n172 400 l\n172 472 l\n100 472 l\nh');
    if (!hasPoppler) return;
    const image = spawnSync('pdftoppm', ['-r', '100', '-gray', file], { maxBuffer: 1 << 26 }).stdout;
    const [, header = '', width = '0'] = /^(P5\n(\d+) \d+\n\d+\n)/.exec(image.toString('latin1')) ?? [];
    const dark = (x: number, y: number): boolean =>
      (image[header.length + y * Number(width) + x] ?? 255) < 128;
    const [left, top] = [Math.round((100 / 72) * 100), Math.round((400 / 72) * 100)];
    const row = Array.from({ length: 140 }, (_, index) => dark(left - 20 + index, top + 50)).filter(
      Boolean,
    ).length;
    const column = Array.from({ length: 140 }, (_, index) => dark(left + 50, top - 20 + index)).filter(
      Boolean,
    ).length;
    expect(Math.abs(row - 100)).toBeLessThanOrEqual(1);
    expect(Math.abs(column - 100)).toBeLessThanOrEqual(1);
  });
});
