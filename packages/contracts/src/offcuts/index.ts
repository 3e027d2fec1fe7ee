// Leftovers in the rack, and the report that a sheet has been cut.
import { z } from 'zod';
import { idSchema, shortTextSchema } from '../common/index.ts';

/** Largest side of a sheet that a shop handles, mm. */
const SIDE_LIMIT_MM = 5_000;
const sideMm = z.number().min(10).max(SIDE_LIMIT_MM);

export const newOffcutSchema = z.strictObject({
  /** The board of the catalogue that it is a piece of. */
  partId: idSchema,
  /** Along the grain where the board has one. */
  lengthMm: sideMm,
  widthMm: sideMm,
  place: shortTextSchema,
});
export type NewOffcut = z.infer<typeof newOffcutSchema>;

export type RackedOffcut = {
  readonly id: string;
  /** Written on it. */
  readonly number: number;
  readonly partId: string;
  readonly boardName: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly place: string;
  /** The job that left it; null = put in by hand. */
  readonly fromJobNumber: number | null;
  readonly version: number;
};

/** What moved in stock because a cutting sheet was cut. */
export type CutReportView = {
  readonly id: string;
  readonly issueId: string;
  readonly reportedByName: string;
  readonly reportedAt: string;
  /** Whole sheets taken out of stock. */
  readonly taken: readonly { readonly partId: string; readonly name: string; readonly count: number }[];
  /** Offcuts that it put into the rack, and those that it used up. */
  readonly left: readonly RackedOffcut[];
  readonly usedNumbers: readonly number[];
};
