import type { SoundFacts, SoundInput, SoundResult } from '@gusset/contracts/sound';
import { type SoundUpstream, soundSheet } from '@gusset/sheets';
import { findPart, toPartInput } from '../../records/kinds/part.queries.ts';
import type { SheetBinding, SheetScope } from '../sheet-binding.ts';

/** Sheet 03: reads the driver and the length of the vehicle's cabin. */
export const soundBinding: SheetBinding<SoundInput, SoundFacts, SoundUpstream, SoundResult> = {
  definition: soundSheet,
  async loadFacts(scope, input) {
    return { driver: await driverOf(scope, input.driverId), longestCabinM: await cabinOf(scope) };
  },
  onIssued: async () => undefined,
};

async function driverOf({ tx, actor }: SheetScope, driverId: string | null): Promise<SoundFacts['driver']> {
  const row = driverId === null ? null : await findPart(tx, actor, driverId);
  if (row === null) return null;
  const part = toPartInput(row);
  if (part.kind !== 'driver') return null;
  return {
    id: row.id,
    name: [part.maker, part.name].filter((word) => word !== '').join(' '),
    figures: part.figures,
  };
}

async function cabinOf({ tx, actor, job }: SheetScope): Promise<number | null> {
  if (job.vehicle === null) return null;
  const model = await tx.vehicleModel.findFirst({
    where: { shopId: actor.shopId, id: job.vehicle.modelId },
    select: { longestCabinM: true },
  });
  return model?.longestCabinM ?? null;
}
