import type {
  BoxFacts,
  BoxInput,
  BoxSheetResult,
  DriverFact,
  FinishFact,
  SheetFact,
} from '@gusset/contracts/box';
import { type ClearanceSettings, DEFAULT_CLEARANCES } from '@gusset/contracts/cargo';
import { shopSettingsSchema } from '@gusset/contracts/shop';
import { type BoxUpstream, boxSheet } from '@gusset/sheets';
import { z } from 'zod';
import { findParts, type PartRow, toPartInput } from '../../records/kinds/part.queries.ts';
import { findShop } from '../../shops/shop.queries.ts';
import { findSheet, issueKey, latestIssues } from '../sheet.queries.ts';
import type { FactScope, SheetBinding, SheetScope } from '../sheet-binding.ts';

/** Sheet 04: reads boards, finishes, the driver that the sound sheet names, clearances and payload. */
export const boxBinding: SheetBinding<BoxInput, BoxFacts, BoxUpstream, BoxSheetResult> = {
  definition: boxSheet,
  async loadFacts(scope, input) {
    const driverId = await driverIdOf(scope);
    const finishIds = [...new Set(Object.values(input.finishes))].filter((id) => id !== null).sort();
    const wanted = [input.carcassId, input.baffleId, driverId, ...finishIds].filter((id) => id !== null);
    const rows = wanted.length === 0 ? [] : await findParts(scope.tx, scope.actor, [...new Set(wanted)]);
    const parts = new Map(rows.map((row) => [row.id, row]));
    return {
      carcass: sheetOf(parts, input.carcassId),
      baffle: sheetOf(parts, input.baffleId),
      finishes: finishIds.map((id) => finishOf(parts, id)).filter((finish) => finish !== null),
      driver: driverOf(parts, driverId),
      clearances: await clearancesOf(scope),
      payloadKg: await payloadOf(scope),
    };
  },
  onIssued: async () => undefined,
};

const namesDriver = z.object({ driverId: z.string().nullable() });

/** As issued; while the sound sheet is a draft, as it stands there. */
async function driverIdOf({ tx, actor, job, enclosureId }: FactScope): Promise<string | null> {
  const ofJob = { shopId: actor.shopId, jobId: job.id };
  const issue = (await latestIssues(tx, ofJob)).get(issueKey('sound', enclosureId));
  const names = issue?.result ??
    (await findSheet(tx, { ...ofJob, kind: 'sound', enclosureId }))?.input ?? { driverId: null };
  return namesDriver.parse(names).driverId;
}

type Parts = ReadonlyMap<string, PartRow>;

/** Null where it is gone from the catalogue. */
function namedPart(parts: Parts, id: string | null) {
  const row = id === null ? undefined : parts.get(id);
  if (row === undefined) return null;
  const part = toPartInput(row);
  return { id: row.id, part, name: [part.maker, part.name].filter((word) => word !== '').join(' ') };
}

function sheetOf(parts: Parts, partId: string | null): SheetFact | null {
  const named = namedPart(parts, partId);
  if (named?.part.kind !== 'sheet') return null;
  return { id: named.id, name: named.name, figures: named.part.figures };
}

function finishOf(parts: Parts, partId: string | null): FinishFact | null {
  const named = namedPart(parts, partId);
  if (named?.part.kind !== 'finish') return null;
  return { id: named.id, name: named.name, figures: named.part.figures };
}

function driverOf(parts: Parts, partId: string | null): DriverFact | null {
  const named = namedPart(parts, partId);
  if (named?.part.kind !== 'driver') return null;
  return { id: named.id, name: named.name, figures: named.part.figures };
}

async function clearancesOf({ tx, actor }: SheetScope): Promise<ClearanceSettings> {
  const shop = await findShop(tx, actor.shopId);
  if (shop === null) return DEFAULT_CLEARANCES;
  const { sideMm, ...rest } = shopSettingsSchema.parse(shop.settings).clearances;
  return { ...DEFAULT_CLEARANCES, ...rest, sidesMm: sideMm };
}

async function payloadOf({ tx, actor, job }: SheetScope): Promise<number | null> {
  if (job.vehicle === null) return null;
  const model = await tx.vehicleModel.findFirst({
    where: { shopId: actor.shopId, id: job.vehicle.modelId },
    select: { payloadKg: true },
  });
  return model?.payloadKg ?? null;
}
