import type { PartInput, PartKind, partFiguresSchemas } from '@gusset/contracts/records';
import type { z } from 'zod';

/** A part of the demo's catalogue; the supplier by name, because ids are given when it is stored. Prices in cents. */
export type CatalogueEntry<K extends PartKind = PartKind> = {
  readonly maker?: string;
  readonly name: string;
  readonly code: string;
  readonly unit?: PartInput['unit'];
  readonly supplier: string;
  readonly buyPriceMinor: number;
  readonly sellPriceMinor: number;
  readonly stockQuantity: number;
  readonly leadDays?: number;
  readonly notes?: string;
  readonly figures: z.input<(typeof partFiguresSchemas)[K]>;
};
