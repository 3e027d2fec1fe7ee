import type { BoardFact, CuttingFacts, CuttingInput, CuttingResult } from '@gusset/contracts/cutting-sheet';
import { shopSettingsSchema } from '@gusset/contracts/shop';
import { type CuttingUpstream, cuttingSheet, enclosuresOf } from '@gusset/sheets';
import { findParts, type PartRow, toPartInput } from '../../records/kinds/part.queries.ts';
import { findShop } from '../../shops/shop.queries.ts';
import type { SheetBinding, SheetScope } from '../sheet-binding.ts';

/** Sheet 05: reads the boards that box, rack and hand name, and how the shop's saw is set; no prices. */
export const cuttingBinding: SheetBinding<CuttingInput, CuttingFacts, CuttingUpstream, CuttingResult> = {
  definition: cuttingSheet,
  async loadFacts(scope, input, upstream) {
    const ids = namedIds(input, upstream);
    const rows = ids.length === 0 ? [] : await findParts(scope.tx, scope.actor, ids);
    return { boards: rows.flatMap(boardOf), saw: await sawOf(scope) };
  },
  onIssued: async () => undefined,
};

function namedIds(input: CuttingInput, upstream: CuttingUpstream): string[] {
  const ids = new Set([
    ...enclosuresOf(upstream).flatMap(({ box }) =>
      (box?.box.panels ?? []).map(({ materialId }) => materialId),
    ),
    ...input.sheetChoices.flatMap(({ sheetIds }) => sheetIds),
    ...[...input.offcuts, ...input.handParts].flatMap(({ boardId }) => (boardId === null ? [] : [boardId])),
  ]);
  return [...ids].sort();
}

function boardOf(row: PartRow): readonly BoardFact[] {
  const part = toPartInput(row);
  if (part.kind !== 'sheet') return [];
  const name = [part.maker, part.name].filter((word) => word !== '').join(' ');
  return [{ id: row.id, name, figures: part.figures }];
}

async function sawOf({ tx, actor }: SheetScope): Promise<CuttingFacts['saw']> {
  const shop = await findShop(tx, actor.shopId);
  if (shop === null) throw new Error(`shop ${actor.shopId} is gone while one of its jobs is open`);
  const { sawKerfMm, sheetTrimMm, bladeMaxTiltDeg } = shopSettingsSchema.parse(shop.settings);
  return { kerfMm: sawKerfMm, trimMm: sheetTrimMm, bladeMaxTiltDeg };
}
