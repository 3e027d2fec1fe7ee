import { record } from '../data/audit.ts';
import { once } from '../data/idempotency.ts';
import { conflictError } from '../data/versioned.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound } from '../errors.ts';
import type { ListAsk, RecordKind, RecordRow } from './record-kind.ts';

export function listRecords<Input, Row extends RecordRow, View>(
  { doors }: Deps,
  actor: Actor,
  kind: RecordKind<Input, Row, View>,
  ask: ListAsk,
): Promise<{ rows: View[]; total: number }> {
  return doors.inShop(actor.shopId, async (tx) => {
    const { rows, total } = await kind.list(tx, actor, ask);
    return { rows: rows.map((row) => kind.toView(row, actor)), total };
  });
}

export function readRecord<Input, Row extends RecordRow, View>(
  { doors }: Deps,
  actor: Actor,
  kind: RecordKind<Input, Row, View>,
  id: string,
): Promise<View> {
  return doors.inShop(actor.shopId, async (tx) =>
    kind.toView(await rowOrNotFound(kind, kind.find(tx, actor, id)), actor),
  );
}

export function createRecord<Input, Row extends RecordRow, View>(
  { doors }: Deps,
  actor: Actor,
  kind: RecordKind<Input, Row, View>,
  key: string,
  input: Input,
): Promise<View> {
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, { subject: kind.subject, input }, async () => {
      const { id } = await kind.insert(tx, actor, input);
      await record(tx, actor, {
        act: `${kind.subject}.made`,
        subject: kind.subject,
        subjectId: id,
        after: input,
      });
      return kind.toView(await rowOrNotFound(kind, kind.find(tx, actor, id)), actor);
    }),
  );
}

/** CHANGED_MEANWHILE with both values when someone else saved first. */
export function changeRecord<Input extends object, Row extends RecordRow, View>(
  { doors }: Deps,
  actor: Actor,
  kind: RecordKind<Input, Row, View>,
  at: { readonly id: string; readonly version: number },
  input: Input,
): Promise<View> {
  return doors.inShop(actor.shopId, async (tx) => {
    const before = await rowOrNotFound(kind, kind.find(tx, actor, at.id));
    if ((await kind.change(tx, actor, at, input)) === 0) {
      throw await conflictError(tx, actor, {
        subject: kind.subject,
        subjectId: at.id,
        currentVersion: before.version,
        yours: Object.fromEntries(Object.entries(input)),
        theirs: Object.fromEntries(Object.entries(kind.toInput(before))),
      });
    }
    await record(tx, actor, {
      act: `${kind.subject}.changed`,
      subject: kind.subject,
      subjectId: at.id,
      before: kind.toInput(before),
      after: input,
    });
    return kind.toView(await rowOrNotFound(kind, kind.find(tx, actor, at.id)), actor);
  });
}

/** Archive instead of delete: gone from the lists, still there for the jobs that name it. */
export function archiveRecord<Input, Row extends RecordRow, View>(
  { doors, clock }: Deps,
  actor: Actor,
  kind: RecordKind<Input, Row, View>,
  { id, archived }: { readonly id: string; readonly archived: boolean },
): Promise<View> {
  return doors.inShop(actor.shopId, async (tx) => {
    await rowOrNotFound(kind, kind.find(tx, actor, id));
    await kind.putAway(tx, actor, id, archived ? clock.now() : null);
    const act = `${kind.subject}.${archived ? 'archived' : 'restored'}`;
    await record(tx, actor, { act, subject: kind.subject, subjectId: id });
    return kind.toView(await rowOrNotFound(kind, kind.find(tx, actor, id)), actor);
  });
}

async function rowOrNotFound<Row>(
  kind: { readonly subject: string },
  looking: Promise<Row | null>,
): Promise<Row> {
  const row = await looking;
  if (row === null) throw notFound(kind.subject);
  return row;
}
