export {
  type PaperOrientation,
  type PaperSize,
  paperOrientationSchema,
  paperSizeSchema,
  type TitleBlock,
  titleBlockSchema,
} from './paper.ts';
export {
  type QuotePaper,
  type QuotePaperLine,
  quotePaperLineSchema,
  quotePaperSchema,
} from './quote-paper.ts';
