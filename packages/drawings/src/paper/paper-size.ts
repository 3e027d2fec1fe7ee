// Sheets of paper and what of them may be printed on. Points: 1/72 in.
import type { PaperOrientation, PaperSize } from '@gusset/contracts/drawings';
import type { Extent } from '../scene/spot.ts';

const PT_PER_INCH = 72;
const mm = (lengthMm: number): number => (lengthMm * PT_PER_INCH) / 25.4;

// ISO 216 and ANSI/ASME Y14.1, portrait, points.
const SIZES_PT: Readonly<Record<PaperSize, readonly [number, number]>> = {
  A4: [mm(210), mm(297)],
  A3: [mm(297), mm(420)],
  Letter: [8.5 * PT_PER_INCH, 11 * PT_PER_INCH],
  Tabloid: [11 * PT_PER_INCH, 17 * PT_PER_INCH],
};

export type PaperFormat = { readonly paper: PaperSize; readonly orientation: PaperOrientation };

export function paperExtent({ paper, orientation }: PaperFormat): { widthPt: number; heightPt: number } {
  const [shortPt, longPt] = SIZES_PT[paper];
  return orientation === 'portrait'
    ? { widthPt: shortPt, heightPt: longPt }
    : { widthPt: longPt, heightPt: shortPt };
}

export const PAGE_MARGIN_PT = 36; // 12.7 mm: printers need 6.4

/** The page inside its margins. */
export function printableArea(format: PaperFormat): Extent {
  const { widthPt, heightPt } = paperExtent(format);
  return {
    left: PAGE_MARGIN_PT,
    top: PAGE_MARGIN_PT,
    right: widthPt - PAGE_MARGIN_PT,
    bottom: heightPt - PAGE_MARGIN_PT,
  };
}
