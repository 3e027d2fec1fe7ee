// Paper pages as one tagged PDF: headings, tables and figures are marked as such, text can be selected and searched,
// each page that has a bookmark stands in the outline. Same pages and same instant in, same bytes out.
import PDFDocument from 'pdfkit';
import { blockItems, type PaperBlock, type PaperDocument, type TableRow } from '../paper/paper-page.ts';
import { paperExtent } from '../paper/paper-size.ts';
import { flattenItem } from '../scene/flatten.ts';
import type { SceneItem } from '../scene/scene.ts';
import { extentOf } from '../scene/spot.ts';
import { drawShapes } from './draw-shapes.ts';
import { registerFonts } from './font-cuts.ts';

export type PdfOptions = {
  /** Written into the file as its date: the caller's clock, not this package's. */
  readonly createdAt: Date;
};

export async function renderPdf(paper: PaperDocument, { createdAt }: PdfOptions): Promise<Uint8Array> {
  const document = new PDFDocument({
    autoFirstPage: false,
    tagged: true,
    lang: paper.language,
    displayTitle: true,
    pdfVersion: '1.7',
    margin: 0,
    info: {
      Title: paper.title,
      Author: paper.author,
      Creator: 'Gusset',
      Producer: 'Gusset',
      CreationDate: createdAt,
    },
  });
  const bytes = collect(document);
  registerFonts(document);
  const root = document.struct('Document');
  document.addStructure(root);
  for (const page of paper.pages) {
    const { widthPt, heightPt } = paperExtent(page);
    document.addPage({ size: [widthPt, heightPt], margin: 0 });
    if (page.bookmark !== null) document.outline.addItem(page.bookmark);
    for (const block of page.blocks) drawBlock(document, root, block);
  }
  root.end();
  document.end();
  return bytes;
}

function collect(document: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () => {
      const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
      let offset = 0;
      for (const chunk of chunks) {
        whole.set(chunk, offset);
        offset += chunk.length;
      }
      resolve(whole);
    });
  });
}

function drawBlock(document: PDFKit.PDFDocument, root: PDFKit.PDFStructureElement, block: PaperBlock): void {
  const draw = (items: readonly SceneItem[]) => () =>
    drawShapes(
      document,
      items.flatMap((item) => flattenItem(item).shapes),
    );
  switch (block.kind) {
    case 'furniture':
      document.markContent('Artifact', { type: 'Layout' });
      draw(block.items)();
      document.endMarkedContent();
      return;
    case 'figure':
      root.add(
        document.struct(
          'Figure',
          { title: block.scene.title, alt: block.scene.description },
          draw(blockItems(block)),
        ),
      );
      return;
    case 'table':
      root.add(
        document.struct(
          'Table',
          { title: block.title },
          block.rows.map((row) => tableRow(document, row, draw)),
        ),
      );
      return;
    case 'words':
      root.add(document.struct(block.role, {}, draw(block.items)));
      if (block.url !== null) linkOver(document, block.items, block.url);
  }
}

function tableRow(
  document: PDFKit.PDFDocument,
  { header, cells }: TableRow,
  draw: (items: readonly SceneItem[]) => () => void,
): PDFKit.PDFStructureElement {
  return document.struct(
    'TR',
    {},
    cells.map((items) => document.struct(header ? 'TH' : 'TD', {}, draw(items))),
  );
}

/** Makes the whole paragraph lead to the address. */
function linkOver(document: PDFKit.PDFDocument, items: readonly SceneItem[], url: string): void {
  const texts = items.filter((item) => item.kind === 'text');
  const extent = extentOf(texts.map(({ at }) => at));
  if (extent === null) return;
  const sizePt = Math.max(...texts.map((item) => item.sizePt));
  const widthPt = document.page.width - 2 * extent.left;
  document.link(extent.left, extent.top - sizePt, widthPt, extent.bottom - extent.top + sizePt * 1.5, url);
}
