// When parts are expected and when they came. Lives beside the sheets: a late part changes plans, not drawings.
import type { PartsResult } from '@gusset/contracts/parts';
import type { Tx } from '@gusset/database';
import { addDays, toShopTime } from '@gusset/units';
import { record } from '../data/audit.ts';
import { fromShopDate, toShopDate } from '../data/dates.ts';
import { conflictError } from '../data/versioned.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound } from '../errors.ts';
import { forwardPlan } from '../planning/forward-plan.ts';
import type { SheetScope } from '../sheets/sheet-binding.ts';
import {
  changeDelivery,
  type DeliveryRow,
  findDeliveries,
  findDelivery,
  leadDaysOf,
} from './delivery.queries.ts';

export type DeliveryView = {
  readonly id: string;
  readonly lineKey: string;
  readonly description: string;
  readonly expectedOn: string | null;
  readonly receivedAt: string | null;
  readonly returnDueOn: string | null;
  readonly version: number;
};

export function deliveriesOf({ doors }: Deps, actor: Actor, jobId: string): Promise<DeliveryView[]> {
  return doors.inShop(actor.shopId, async (tx) =>
    (await findDeliveries(tx, actor, jobId)).map(toDeliveryView),
  );
}

/** After the parts sheet is issued: a delivery for each line that has to come from somewhere, dated by lead days. */
export async function proposeDeliveries(
  { tx, actor, job, deps }: SheetScope,
  result: PartsResult,
): Promise<void> {
  const shop = await tx.shop.findUniqueOrThrow({ where: { id: actor.shopId }, select: { timeZone: true } });
  const today = toShopTime(deps.clock.now().toISOString(), shop.timeZone).date;
  const coming = result.lines.filter((line) => line.source !== 'stock');
  const leadDays = await leadDaysOf(
    tx,
    actor,
    coming.flatMap(({ partId }) => (partId === null ? [] : [partId])),
  );
  const known = new Map((await findDeliveries(tx, actor, job.id)).map((row) => [row.lineKey, row]));
  for (const line of coming) {
    const days = line.partId === null ? undefined : leadDays.get(line.partId);
    const expectedOn = line.source === 'buy' && days !== undefined ? addDays(today, days) : null;
    const row = known.get(line.key);
    known.delete(line.key);
    if (row !== undefined) {
      await changeDelivery(tx, actor, row, {
        description: line.description,
        returnDueOn: fromShopDate(line.returnDueOn),
      });
      continue;
    }
    await tx.partDelivery.create({
      data: {
        shopId: actor.shopId,
        jobId: job.id,
        lineKey: line.key,
        description: line.description,
        expectedOn: fromShopDate(expectedOn),
        returnDueOn: fromShopDate(line.returnDueOn),
      },
      select: { id: true },
    });
  }
  await dropUnneeded(tx, actor, [...known.values()]);
}

/** Lines that the job no longer needs and that never came; what came stays on record. */
async function dropUnneeded(tx: Tx, { shopId }: Actor, rows: readonly DeliveryRow[]): Promise<void> {
  const ids = rows.filter((row) => row.receivedAt === null).map((row) => row.id);
  await tx.partDelivery.deleteMany({ where: { shopId, id: { in: ids } } });
}

export type SetDeliveryInput = {
  readonly jobId: string;
  readonly lineKey: string;
  readonly version: number;
  readonly expectedOn: string | null;
  readonly received: boolean;
};

/** A new date, or the part in hand. CHANGED_MEANWHILE with both values when someone else was first. */
export function setDelivery(deps: Deps, actor: Actor, input: SetDeliveryInput): Promise<DeliveryView> {
  return deps.doors.inShop(actor.shopId, async (tx) => {
    const before = await findDelivery(tx, actor, input.jobId, input.lineKey);
    if (before === null) throw notFound('delivery');
    const receivedAt = input.received ? (before.receivedAt ?? deps.clock.now()) : null;
    const data = { expectedOn: fromShopDate(input.expectedOn), receivedAt };
    if (!(await changeDelivery(tx, actor, { id: before.id, version: input.version }, data))) {
      throw await conflictError(tx, actor, {
        subject: 'delivery',
        subjectId: before.id,
        currentVersion: before.version,
        yours: { expectedOn: input.expectedOn, received: input.received },
        theirs: { expectedOn: toShopDate(before.expectedOn), received: before.receivedAt !== null },
      });
    }
    await record(tx, actor, {
      act: input.received && before.receivedAt === null ? 'delivery.received' : 'delivery.changed',
      subject: 'delivery',
      subjectId: before.id,
      before: toDeliveryView(before),
      after: { ...input },
    });
    await forwardPlan(
      deps,
      tx,
      actor,
      `${before.description}: ${input.received ? 'has come' : 'another date'}`,
    );
    const after = await findDelivery(tx, actor, input.jobId, input.lineKey);
    if (after === null) throw notFound('delivery');
    return toDeliveryView(after);
  });
}

function toDeliveryView(row: DeliveryRow): DeliveryView {
  return {
    id: row.id,
    lineKey: row.lineKey,
    description: row.description,
    expectedOn: toShopDate(row.expectedOn),
    receivedAt: row.receivedAt?.toISOString() ?? null,
    returnDueOn: toShopDate(row.returnDueOn),
    version: row.version,
  };
}
