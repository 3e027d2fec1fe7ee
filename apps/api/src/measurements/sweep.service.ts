// Sweeps come in as text, are read by the engine, and are kept with what was known when they were taken.
import { parseSweep } from '@gusset/acoustics';
import {
  type ImportSweepInput,
  SWEEP_USES,
  type SweepReading,
  type SweepView,
} from '@gusset/contracts/measurement';
import type { Tx } from '@gusset/database';
import { isRefusal } from '@gusset/units';
import { record } from '../data/audit.ts';
import { once } from '../data/idempotency.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound, refusedByEngine } from '../errors.ts';
import { findJob } from '../jobs/job.queries.ts';
import { findPart } from '../records/kinds/part.queries.ts';
import {
  broughtInBefore,
  insertSweep,
  listSweepRows,
  type OwnedBy,
  putSweepAway,
  textHash,
} from './sweep.queries.ts';

const SUBJECT = 'measured sweep';

/** The kept sweep, and how its file was read. */
export type ImportedSweep = {
  readonly sweep: SweepView;
  readonly reading: Omit<SweepReading, 'columns'>;
};

export function listSweeps(
  { doors }: Deps,
  actor: Actor,
  of: OwnedBy,
  { archived }: { readonly archived: boolean },
): Promise<SweepView[]> {
  return doors.inShop(actor.shopId, (tx) => listSweepRows(tx, actor, of, archived));
}

/** REFUSED_BY_ENGINE names the line that can't be read; NOT_ACCEPTED what is missing beside the file. */
export async function importSweep(
  { doors, clock }: Deps,
  actor: Actor,
  of: OwnedBy,
  key: string,
  input: ImportSweepInput,
): Promise<ImportedSweep> {
  const read = parseSweep(input.text, SWEEP_USES[input.use].kind, input.units);
  if (isRefusal(read)) throw refusedByEngine([read.refusal]);
  checkConditions(input);
  const { columns, ...reading } = read;
  const textSha256 = textHash(input.text);
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, { of, ...input, text: textSha256 }, async () => {
      await checkOwner(tx, actor, of);
      await checkTrialDriver(tx, actor, input);
      const { use, conditions, place, direction, notes, fileName, takenOn } = input;
      const kept = { use, conditions, place, direction, notes, fileName, takenOn, takenBy: actor.name };
      const before = await broughtInBefore(tx, actor, of, { use, textSha256, place });
      if (before !== null) throw notAccepted('text', 'This very file is here already, for the same place.');
      const sweep = await insertSweep(tx, actor, of, { ...kept, columns, textSha256, at: clock.now() });
      await record(tx, actor, {
        act: `${SUBJECT}.imported`,
        subject: SUBJECT,
        subjectId: sweep.id,
        after: { ...kept, of, textSha256, rows: columns.frequenciesHz.length },
      });
      return { sweep, reading };
    }),
  );
}

export function archiveSweep(
  { doors, clock }: Deps,
  actor: Actor,
  { owner }: Pick<OwnedBy, 'owner'>,
  { sweepId, archived }: { readonly sweepId: string; readonly archived: boolean },
): Promise<{ readonly archived: boolean }> {
  return doors.inShop(actor.shopId, async (tx) => {
    const changed = await putSweepAway(tx, actor, { owner, id: sweepId }, archived ? clock.now() : null);
    if (changed === 0) throw notFound('sweep');
    const act = `${SUBJECT}.${archived ? 'archived' : 'restored'}`;
    await record(tx, actor, { act, subject: SUBJECT, subjectId: sweepId });
    return { archived };
  });
}

/** What the use needs beside the columns. */
function checkConditions({ use, conditions }: ImportSweepInput): void {
  if (use === 'added-mass' && conditions.addedMass === null)
    throw notAccepted('conditions.addedMass', 'Say how much mass was on the cone.');
  if (use === 'known-box' && conditions.knownBox === null)
    throw notAccepted('conditions.knownBox', 'Say how much air the box holds.');
  if ((use === 'in-car' || use === 'near-cone') && conditions.trial === null)
    throw notAccepted('conditions.trial', 'Say which trial box played.');
}

async function checkTrialDriver(tx: Tx, actor: Actor, { conditions }: ImportSweepInput): Promise<void> {
  if (conditions.trial === null) return;
  const part = await findPart(tx, actor, conditions.trial.driverId);
  if (part?.kind !== 'driver')
    throw notAccepted('conditions.trial.driverId', 'Choose a driver of the catalogue.');
}

async function checkOwner(tx: Tx, actor: Actor, { owner, id }: OwnedBy): Promise<void> {
  if (owner === 'job') {
    if ((await findJob(tx, actor, id)) === null) throw notFound('job');
    return;
  }
  if (owner === 'driver') {
    if ((await findPart(tx, actor, id))?.kind !== 'driver') throw notFound('driver');
    return;
  }
  await modelOrNotFound(tx, actor, id);
}

export async function modelOrNotFound(tx: Tx, actor: Actor, modelId: string): Promise<void> {
  const row = await tx.vehicleModel.findFirst({
    where: { shopId: actor.shopId, id: modelId },
    select: { id: true },
  });
  if (row === null) throw notFound('vehicle model');
}
