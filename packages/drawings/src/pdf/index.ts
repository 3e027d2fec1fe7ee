export { type PdfOptions, renderPdf } from './render-pdf.ts';
