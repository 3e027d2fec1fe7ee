import type { PartFact, PartsFacts, PartsInput, PartsResult } from '@gusset/contracts/parts';
import type { Tx } from '@gusset/database';
import { enclosuresOf, type PartsUpstream, partsSheet, SUPPLY_USES } from '@gusset/sheets';
import { proposeDeliveries } from '../../deliveries/delivery.service.ts';
import type { Actor } from '../../deps.ts';
import { findParts, findPartsByUse, type PartRow, toPartInput } from '../../records/kinds/part.queries.ts';
import type { SheetBinding } from '../sheet-binding.ts';

/** Sheet 07: reads the parts that the design or a person names, and the shop's usual supplies; no prices. */
export const partsBinding: SheetBinding<PartsInput, PartsFacts, PartsUpstream, PartsResult> = {
  definition: partsSheet,
  async loadFacts({ tx, actor }, input, upstream) {
    const usual = await usualParts(tx, actor);
    const ids = new Set([...namedIds(input, upstream), ...usual.map(({ partId }) => partId)]);
    const rows = await findParts(tx, actor, [...ids].sort());
    return { parts: rows.map(toPartFact), usual };
  },
  onIssued: (scope, { result }) => proposeDeliveries(scope, result),
};

function namedIds(input: PartsInput, upstream: PartsUpstream): string[] {
  return [
    ...(upstream.cutting?.sheetsUsed ?? []).map(({ partId }) => partId),
    ...enclosuresOf(upstream).flatMap(({ sound, box }) => [
      ...(sound === null ? [] : [sound.driverId]),
      ...(box?.finishTotals ?? []).map(({ partId }) => partId),
      ...(box?.terminalPartId ? [box.terminalPartId] : []),
    ]),
    ...[...input.handLines, ...input.overrides].flatMap(({ partId }) => (partId === null ? [] : [partId])),
  ];
}

/** The first part by name for each use: what the shop reaches for when nobody says otherwise. */
async function usualParts(tx: Tx, actor: Actor): Promise<PartsFacts['usual']> {
  const rows = await findPartsByUse(tx, actor, SUPPLY_USES);
  const usual = new Map<string, string>();
  for (const row of rows) {
    const use = useOf(row);
    if (use !== null && !usual.has(use)) usual.set(use, row.id);
  }
  return [...usual].map(([use, partId]) => ({ use, partId })).sort((a, b) => (a.use < b.use ? -1 : 1));
}

function useOf(row: PartRow): string | null {
  const part = toPartInput(row);
  return part.kind === 'hardware' || part.kind === 'supply' ? part.figures.use : null;
}

function toPartFact(row: PartRow): PartFact {
  const part = toPartInput(row);
  return {
    id: row.id,
    kind: part.kind,
    name: [part.maker, part.name].filter((word) => word !== '').join(' '),
    unit: part.unit,
    stockQuantity: part.stockQuantity,
    supplierId: part.supplierId,
    supplierName: row.supplier?.name ?? null,
    use: useOf(row),
    finish: part.kind === 'finish' ? part.figures : null,
  };
}
