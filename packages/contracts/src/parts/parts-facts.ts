import type { PartSource } from '../estimating/index.ts';
import type { FinishFigures, PartKind } from '../records/index.ts';

/** What the parts sheet knows of a catalogue part: no prices. */
export type PartFact = {
  readonly id: string;
  readonly kind: PartKind;
  readonly name: string;
  readonly unit: string;
  readonly stockQuantity: number;
  readonly supplierId: string | null;
  readonly supplierName: string | null;
  /** What a supply or a piece of hardware is for; null for other kinds. */
  readonly use: string | null;
  /** Finishes only. */
  readonly finish: FinishFigures | null;
};

export type PartsFacts = {
  /** The parts that the design or a hand line names. */
  readonly parts: readonly PartFact[];
  /** For each use (glue, sealant, screw …) the part that the shop takes. */
  readonly usual: readonly { readonly use: string; readonly partId: string }[];
};

/** Where a part comes from when nobody has said: from the shelf if there is enough, else bought. */
export function usualSource(stockQuantity: number, quantity: number): PartSource {
  return stockQuantity >= quantity ? 'stock' : 'buy';
}
