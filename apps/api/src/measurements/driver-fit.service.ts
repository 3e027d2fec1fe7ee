import type { SecondSweep } from '@gusset/acoustics';
import type { DriverDataSheet } from '@gusset/contracts/acoustics';
import type { DriverFromSweeps, FitDriverInput, SweepView } from '@gusset/contracts/measurement';
import { partInputSchemas } from '@gusset/contracts/records';
import { isRefusal } from '@gusset/units';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound, refusedByEngine } from '../errors.ts';
import { type PartView, partKind } from '../records/kinds/part.queries.ts';
import { changeRecord, readRecord } from '../records/record.service.ts';
import { findSweeps } from './sweep.queries.ts';

const driverKind = partKind('driver', partInputSchemas.driver);

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

/**
 * The measured figures into the catalogue, over the version that was seen; the ones before stay in the record of what
 * happened. Worked out once more here, so that only figures of the sweeps go in.
 */
export async function takeDriverFigures(
  deps: Deps,
  actor: Actor,
  { version, ...fit }: FitDriverInput & { readonly version: number },
): Promise<PartView<'driver'>> {
  const { figures } = await fitDriver(deps, actor, fit);
  const {
    id,
    archived,
    supplierName,
    version: _seen,
    ...input
  } = await readRecord(deps, actor, driverKind, fit.driverId);
  const dataSheet = withMeasured(input.figures.dataSheet, figures);
  const changed = partInputSchemas.driver.parse({ ...input, figures: { ...input.figures, dataSheet } });
  return changeRecord(deps, actor, driverKind, { id, version }, changed);
}

/** What was measured, and nothing that contradicts it: figures that follow from the measured ones are left to follow. */
function withMeasured(stated: DriverDataSheet, measured: DriverFromSweeps['figures']): DriverDataSheet {
  const { vasLitres, sdCm2, ...motor } = measured;
  return {
    ...stated,
    ...motor,
    vasLitres: vasLitres ?? stated.vasLitres,
    sdCm2: sdCm2 ?? stated.sdCm2,
    qts: null,
    mmsGrams: null,
    cmsMmPerN: null,
    rmsNsPerM: null,
    blTm: null,
  };
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
