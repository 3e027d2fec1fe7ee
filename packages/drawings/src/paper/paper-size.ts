// Sheets of paper and what of them may be printed on. Points: 1/72 in.
import type { PaperOrientation, PaperSize } from '@gusset/contracts/drawings';
import type { Extent } from '../scene/spot.ts';

const PT_PER_MM = 72 / 25.4;

// ISO 216 and ANSI/ASME Y14.1, portrait, mm.
const SIZES_MM: Readonly<Record<PaperSize, readonly [number, number]>> = {
  A4: [210, 297],
  A3: [297, 420],
  Letter: [215.9, 279.4],
  Tabloid: [279.4, 431.8],
};

export type PaperFormat = { readonly paper: PaperSize; readonly orientation: PaperOrientation };

export function paperExtent({ paper, orientation }: PaperFormat): { widthPt: number; heightPt: number } {
  const [shortMm, longMm] = SIZES_MM[paper];
  const [shortPt, longPt] = [shortMm * PT_PER_MM, longMm * PT_PER_MM];
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
