import {
  type CabinCurve,
  type DriverFact,
  type SoundFacts,
  type SoundInput,
  type SoundResult,
  toSoundInput,
} from '@gusset/contracts/sound';
import { type SoundUpstream, soundSheet } from '@gusset/sheets';
import { measuredCabin } from '../../measurements/transfer.queries.ts';
import { findPart, toPartInput } from '../../records/kinds/part.queries.ts';
import type { SheetBinding, SheetScope } from '../sheet-binding.ts';

/** Sheet 03: reads the drivers of all its designs, and of the vehicle its length inside and what was measured in it. */
export const soundBinding: SheetBinding<SoundInput, SoundFacts, SoundUpstream, SoundResult> = {
  definition: soundSheet,
  async loadFacts(scope, kept) {
    const { driverId, variants } = toSoundInput(kept);
    const others = new Set(variants.map(({ design }) => design.driverId).filter((id) => id !== null));
    if (driverId !== null) others.delete(driverId);
    const otherDrivers: DriverFact[] = [];
    for (const id of [...others].sort()) {
      const other = await driverOf(scope, id);
      if (other !== null) otherDrivers.push(other);
    }
    return {
      driver: driverId === null ? null : await driverOf(scope, driverId),
      otherDrivers,
      longestCabinM: await cabinOf(scope),
      cabinCurve: await measuredCabinOf(scope),
    };
  },
  onIssued: async () => undefined,
};

async function driverOf({ tx, actor }: SheetScope, driverId: string): Promise<DriverFact | null> {
  const row = await findPart(tx, actor, driverId);
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

/** The car's own transfer, where someone has measured one of its model. */
async function measuredCabinOf({ tx, actor, job }: SheetScope): Promise<CabinCurve | null> {
  return job.vehicle === null ? null : await measuredCabin(tx, actor, job.vehicle.modelId);
}
