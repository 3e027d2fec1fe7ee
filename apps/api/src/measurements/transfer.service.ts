// The car's own transfer: worked out from sweeps in it, looked at, and kept with the model for every later job.
import type { CarSweeps } from '@gusset/acoustics';
import { deriveDriver } from '@gusset/acoustics';
import type { Enclosure } from '@gusset/contracts/acoustics';
import type {
  CarTransferView,
  KeepTransferInput,
  SweepView,
  TransferAnswer,
  TrialBox,
  WorkOutTransferInput,
} from '@gusset/contracts/measurement';
import type { Tx } from '@gusset/database';
import { canonicalJson } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { record } from '../data/audit.ts';
import { once } from '../data/idempotency.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound, refusedByEngine } from '../errors.ts';
import { findPart, toPartInput } from '../records/kinds/part.queries.ts';
import { findSweeps, newestSweep } from './sweep.queries.ts';
import { modelOrNotFound } from './sweep.service.ts';
import { insertTransfer, listTransferRows } from './transfer.queries.ts';

/** A well-glued trial box; the level near its resonance hangs on this by a tenth of a decibel. */
const TRIAL_LEAK_Q = 15;
/** The mouth of a trial box's port: its size moves no level while losses are left out. */
const TRIAL_PORT_MM = 100;

/** Which sweeps stood beside those in the car: the newest of each kind. */
export type WorkedTransfer = TransferAnswer & {
  readonly used: {
    readonly nearConeId: string | null;
    readonly noiseId: string | null;
    readonly calibrationId: string | null;
  };
};

export function listTransfers(
  { doors }: Deps,
  actor: Actor,
  { modelId }: { readonly modelId: string },
): Promise<CarTransferView[]> {
  return doors.inShop(actor.shopId, (tx) => listTransferRows(tx, actor, modelId));
}

/** Nothing is kept. NOT_FOUND for sweeps of another car; NOT_ACCEPTED where they played different boxes. */
export async function workOutTransfer(
  deps: Deps,
  actor: Actor,
  input: WorkOutTransferInput,
): Promise<WorkedTransfer> {
  const { sweeps, used } = await deps.doors.inShop(actor.shopId, (tx) => gathered(tx, actor, input));
  const answer = await deps.compute.run('car-transfer', { sweeps, setting: input.setting });
  if (isRefusal(answer)) throw refusedByEngine([answer.refusal]);
  return { ...answer, used };
}

/** Worked out once more on the server and kept as the next revision. */
export async function keepTransfer(
  deps: Deps,
  actor: Actor,
  key: string,
  input: KeepTransferInput,
): Promise<CarTransferView> {
  const { modelId, sweepIds, setting } = input;
  const { transfer } = await workOutTransfer(deps, actor, { modelId, sweepIds, setting });
  if (transfer === null) {
    throw notAccepted('sweepIds', 'Every one of these sweeps was rejected: there is nothing to keep.');
  }
  return deps.doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, input, async () => {
      await modelOrNotFound(tx, actor, modelId);
      const kept = await insertTransfer(tx, actor, { ...input, curve: transfer, at: deps.clock.now() });
      const { curve, ...rest } = kept;
      await record(tx, actor, {
        act: 'car transfer.kept',
        subject: 'vehicle model',
        subjectId: modelId,
        after: { ...rest, validLowHz: curve.validLowHz, validHighHz: curve.validHighHz, level: curve.level },
      });
      return kept;
    }),
  );
}

async function gathered(tx: Tx, actor: Actor, { modelId, sweepIds }: WorkOutTransferInput) {
  const of = { owner: 'vehicle-model', id: modelId } as const;
  await modelOrNotFound(tx, actor, modelId);
  const inCar = await findSweeps(tx, actor, of, sweepIds);
  if (inCar.length !== new Set(sweepIds).size) throw notFound('sweep');
  const trial = oneTrial(inCar);
  const [nearCone, noise, calibration] = [
    await newestSweep(tx, actor, of, 'near-cone'),
    await newestSweep(tx, actor, of, 'background-noise'),
    await newestSweep(tx, actor, of, 'microphone-calibration'),
  ];
  // Near the cone of another box says nothing about this one.
  const near = nearCone !== null && sameBox(nearCone.conditions.trial, trial) ? nearCone : null;
  const sweeps: CarSweeps = {
    inCar: inCar.map(({ id, columns }) => ({ id, columns })),
    nearCone: near?.columns ?? null,
    noise: noise?.columns ?? null,
    calibration: calibration?.columns ?? null,
    trial: await trialSystem(tx, actor, trial),
  };
  const used = {
    nearConeId: near?.id ?? null,
    noiseId: noise?.id ?? null,
    calibrationId: calibration?.id ?? null,
  };
  return { sweeps, used };
}

function oneTrial(sweeps: readonly SweepView[]): TrialBox {
  if (sweeps.some(({ use }) => use !== 'in-car'))
    throw notAccepted('sweepIds', 'Choose sweeps that were taken in the car.');
  const trial = sweeps[0]?.conditions.trial ?? null;
  if (trial === null) throw notAccepted('sweepIds', 'These sweeps do not say which trial box played.');
  if (sweeps.some(({ conditions }) => !sameBox(conditions.trial, trial))) {
    throw notAccepted(
      'sweepIds',
      'These sweeps were taken with different trial boxes; choose those of one box at one voltage.',
    );
  }
  return trial;
}

/** What was typed may differ, what it says may not. */
function sameBox(a: TrialBox | null, b: TrialBox): boolean {
  const says = (box: TrialBox) =>
    canonicalJson([box.driverId, box.net.litres, box.tuning?.hz ?? null, box.drive.volts]);
  return a !== null && says(a) === says(b);
}

async function trialSystem(tx: Tx, actor: Actor, trial: TrialBox): Promise<CarSweeps['trial']> {
  const row = await findPart(tx, actor, trial.driverId);
  const part = row === null ? null : toPartInput(row);
  if (part?.kind !== 'driver') throw notFound('driver');
  const sheet = deriveDriver(part.figures.dataSheet);
  if (isRefusal(sheet))
    throw refusedByEngine([{ ...sheet.refusal, field: `trial.driver.${sheet.refusal.field}` }]);
  return {
    source: { voltageVrms: trial.drive.volts },
    driver: sheet.driver,
    enclosure: trialEnclosure(trial),
  };
}

function trialEnclosure({ net, tuning }: TrialBox): Enclosure {
  const chamber = { netLitres: net.litres, fillFactor: 1, ql: TRIAL_LEAK_Q, qa: null };
  if (tuning === null) return { kind: 'closed', chamber };
  const end = { walls: 0, flareRadiusMm: 0 } as const;
  return {
    kind: 'vented',
    chamber,
    port: {
      mouth: { shape: 'round', diameterMm: TRIAL_PORT_MM },
      count: 1,
      outerEnd: { kind: 'flanged', ...end },
      innerEnd: { kind: 'free', ...end },
      sizing: { by: 'tuning', tuningHz: tuning.hz },
      qp: null,
    },
  };
}
