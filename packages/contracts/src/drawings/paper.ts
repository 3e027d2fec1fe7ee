import { z } from 'zod';
import { shortTextSchema } from '../common/index.ts';

/** ISO 216 and ANSI/ASME Y14.1 sizes that a shop's printer takes. */
export const paperSizeSchema = z.enum(['A4', 'Letter', 'A3', 'Tabloid']);
export type PaperSize = z.infer<typeof paperSizeSchema>;

export const paperOrientationSchema = z.enum(['portrait', 'landscape']);
export type PaperOrientation = z.infer<typeof paperOrientationSchema>;

/** What closes every sheet, on screen and on paper. Texts as they are to be read; empty = the box stays empty. */
export const titleBlockSchema = z.strictObject({
  shop: shortTextSchema,
  vehicle: shortTextSchema,
  customer: shortTextSchema,
  job: shortTextSchema,
  revision: shortTextSchema,
  drawn: shortTextSchema,
  /** Null = nobody checked it yet, and the sheet says so. */
  checked: shortTextSchema.nullable(),
  units: shortTextSchema,
  /** Day as the shop writes it. */
  date: shortTextSchema,
  /** `04 Box`. */
  sheet: shortTextSchema,
});
export type TitleBlock = Readonly<z.infer<typeof titleBlockSchema>>;
