import type { SecondSweep } from '@gusset/acoustics';
import type { DriverFromSweeps, FitDriverInput, SweepView } from '@gusset/contracts/measurement';
import { isRefusal } from '@gusset/units';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound, refusedByEngine } from '../errors.ts';
import { findSweeps } from './sweep.queries.ts';

/** Figures of a driver from its sweeps. Nothing is kept: taking them is a change of the catalogue's record. */
export async function fitDriver(
  { doors, compute }: Deps,
  actor: Actor,
  { driverId, freeAirId, secondId, bench }: FitDriverInput,
): Promise<DriverFromSweeps> {
  const of = { owner: 'driver', id: driverId } as const;
  const wanted = secondId === null ? [freeAirId] : [freeAirId, secondId];
  const sweeps = await doors.inShop(actor.shopId, (tx) => findSweeps(tx, actor, of, wanted));
  const freeAir = sweeps.find(({ id }) => id === freeAirId);
  if (freeAir === undefined) throw notFound('sweep');
  if (freeAir.use !== 'free-air') throw notAccepted('freeAirId', 'Choose a sweep taken in free air.');
  const second = secondId === null ? null : toSecond(sweeps.find(({ id }) => id === secondId));
  const answer = await compute.run('fit-driver', { freeAir: freeAir.columns, second, bench });
  if (isRefusal(answer)) throw refusedByEngine([answer.refusal]);
  return answer;
}

function toSecond(sweep: SweepView | undefined): SecondSweep {
  if (sweep === undefined) throw notFound('sweep');
  const { use, columns, conditions } = sweep;
  if (use === 'added-mass' && conditions.addedMass !== null)
    return { by: 'added-mass', columns, addedGrams: conditions.addedMass.grams };
  if (use === 'known-box' && conditions.knownBox !== null)
    return { by: 'known-box', columns, netLitres: conditions.knownBox.litres };
  throw notAccepted('secondId', 'Choose a sweep with added mass or in a known box.');
}
