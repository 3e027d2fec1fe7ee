// The rack: what is in it, what is put in by hand, what is thrown away.
import type { NewOffcut, RackedOffcut } from '@gusset/contracts/offcuts';
import { record } from '../data/audit.ts';
import { nextNumber } from '../data/counter.ts';
import { once } from '../data/idempotency.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound, ShopError } from '../errors.ts';
import { findParts, toPartInput } from '../records/kinds/part.queries.ts';
import { findOffcuts, findRacked, type OffcutRow, putOffcut, throwAway } from './offcut.queries.ts';

export function rackedOffcuts(
  { doors }: Deps,
  actor: Actor,
  partIds: readonly string[],
): Promise<RackedOffcut[]> {
  return doors.inShop(actor.shopId, async (tx) => (await findRacked(tx, actor, partIds)).map(toRacked));
}

/** NOT_ACCEPTED where the part is no board. */
export function rackOffcut(
  { doors }: Deps,
  actor: Actor,
  { key, offcut }: { readonly key: string; readonly offcut: NewOffcut },
): Promise<RackedOffcut> {
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, offcut, async () => {
      const [row] = await findParts(tx, actor, [offcut.partId]);
      if (row === undefined) throw notFound('board');
      const part = toPartInput(row);
      if (part.kind !== 'sheet')
        throw notAccepted('offcut.partId', 'Choose the board that it is a piece of.');
      const { measuredThicknessMm, nominalThicknessMm } = part.figures;
      const put = await putOffcut(tx, actor, {
        ...offcut,
        number: await nextNumber(tx, actor.shopId, 'offcut'),
        thicknessMm: measuredThicknessMm ?? nominalThicknessMm,
      });
      await record(tx, actor, { act: 'offcut.racked', subject: 'offcut', subjectId: put.id, after: offcut });
      return toRacked(put);
    }),
  );
}

export function throwOffcutAway(
  { doors, clock }: Deps,
  actor: Actor,
  at: { readonly id: string; readonly version: number },
): Promise<{ readonly id: string }> {
  return doors.inShop(actor.shopId, async (tx) => {
    const [row] = await findOffcuts(tx, actor, [at.id]);
    if (row === undefined) throw notFound('offcut');
    if ((await throwAway(tx, actor, { ...at, at: clock.now() })) === 0) {
      throw new ShopError('NOT_ACCEPTED', `Offcut ${row.number} is no longer in the rack as it was shown.`);
    }
    await record(tx, actor, { act: 'offcut.thrown-away', subject: 'offcut', subjectId: at.id });
    return { id: at.id };
  });
}

export function toRacked(row: OffcutRow): RackedOffcut {
  return {
    id: row.id,
    number: row.number,
    partId: row.partId,
    boardName: [row.part.maker, row.part.name].filter((word) => word !== '').join(' '),
    lengthMm: row.lengthMm,
    widthMm: row.widthMm,
    thicknessMm: row.thicknessMm,
    place: row.place,
    fromJobNumber: row.cutIn?.job.number ?? null,
    version: row.version,
  };
}
