// The only place that knows how measured sweeps are stored.
import { createHash } from 'node:crypto';
import {
  FIRING_DIRECTIONS,
  SWEEP_USES,
  type SweepColumns,
  type SweepOwner,
  type SweepUse,
  type SweepView,
  sweepColumnsSchema,
  sweepConditionsSchema,
  sweepUseSchema,
} from '@gusset/contracts/measurement';
import type { Prisma, Tx } from '@gusset/database';
import { fromShopDate, toShopDate } from '../data/dates.ts';
import { asRequiredJson } from '../data/json.ts';
import type { Actor } from '../deps.ts';

/** A list longer than this is a shelf nobody looks through; the newest are shown. */
const MOST_LISTED = 60;

export function sweepsVisibleTo({ shopId }: Pick<Actor, 'shopId'>) {
  return { shopId } satisfies Prisma.MeasuredSweepWhereInput;
}

const view = {
  id: true,
  use: true,
  columns: true,
  conditions: true,
  place: true,
  direction: true,
  notes: true,
  fileName: true,
  takenOn: true,
  takenBy: true,
  createdAt: true,
  archivedAt: true,
} satisfies Prisma.MeasuredSweepSelect;
type Row = Prisma.MeasuredSweepGetPayload<{ select: typeof view }>;

/** What a sweep belongs to. */
export type OwnedBy = { readonly owner: SweepOwner; readonly id: string };

const COLUMN = { driver: 'partId', job: 'jobId', 'vehicle-model': 'modelId' } as const;

function ofOwner({ owner, id }: OwnedBy): Prisma.MeasuredSweepWhereInput {
  return { [COLUMN[owner]]: id };
}

function toView(row: Row): SweepView {
  const use = sweepUseSchema.parse(row.use);
  return {
    id: row.id,
    use,
    kind: SWEEP_USES[use].kind,
    columns: sweepColumnsSchema.parse(row.columns),
    conditions: sweepConditionsSchema.parse(row.conditions),
    place: row.place,
    direction: FIRING_DIRECTIONS.find((direction) => direction === row.direction) ?? null,
    notes: row.notes,
    fileName: row.fileName,
    takenOn: toShopDate(row.takenOn),
    takenBy: row.takenBy,
    importedAt: row.createdAt.toISOString(),
    archived: row.archivedAt !== null,
  };
}

/** Newest first. */
export async function listSweepRows(
  tx: Tx,
  actor: Actor,
  of: OwnedBy,
  archived: boolean,
): Promise<SweepView[]> {
  const rows = await tx.measuredSweep.findMany({
    where: { ...sweepsVisibleTo(actor), ...ofOwner(of), archivedAt: archived ? { not: null } : null },
    select: view,
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take: MOST_LISTED,
  });
  return rows.map(toView);
}

/** Of this owner and still in use, in the order of `ids`; what is not there is left out. */
export async function findSweeps(
  tx: Tx,
  actor: Actor,
  of: OwnedBy,
  ids: readonly string[],
): Promise<SweepView[]> {
  const rows = await tx.measuredSweep.findMany({
    where: { ...sweepsVisibleTo(actor), ...ofOwner(of), id: { in: [...ids] }, archivedAt: null },
    select: view,
    take: MOST_LISTED,
  });
  const byId = new Map(rows.map((row) => [row.id, row]));
  return ids.flatMap((id) => {
    const row = byId.get(id);
    return row === undefined ? [] : [toView(row)];
  });
}

/** The last one taken for a use, not put away. */
export async function newestSweep(
  tx: Tx,
  actor: Actor,
  of: OwnedBy,
  use: SweepUse,
): Promise<SweepView | null> {
  const row = await tx.measuredSweep.findFirst({
    where: { ...sweepsVisibleTo(actor), ...ofOwner(of), use, archivedAt: null },
    select: view,
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  });
  return row === null ? null : toView(row);
}

export type NewSweep = Pick<
  SweepView,
  'use' | 'conditions' | 'place' | 'direction' | 'notes' | 'fileName' | 'takenOn' | 'takenBy'
> & { readonly columns: SweepColumns; readonly textSha256: string; readonly at: Date };

export function textHash(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** When the very same text was already brought in for this use and place; null = it was not. */
export async function broughtInBefore(
  tx: Tx,
  actor: Actor,
  of: OwnedBy,
  { use, textSha256, place }: Pick<NewSweep, 'use' | 'textSha256' | 'place'>,
): Promise<Date | null> {
  const row = await tx.measuredSweep.findFirst({
    where: { ...sweepsVisibleTo(actor), ...ofOwner(of), use, textSha256, place, archivedAt: null },
    select: { createdAt: true },
  });
  return row?.createdAt ?? null;
}

export async function insertSweep(tx: Tx, actor: Actor, of: OwnedBy, sweep: NewSweep): Promise<SweepView> {
  const { at, columns, conditions, takenOn, ...rest } = sweep;
  const row = await tx.measuredSweep.create({
    data: {
      shopId: actor.shopId,
      [COLUMN[of.owner]]: of.id,
      kind: SWEEP_USES[sweep.use].kind,
      ...rest,
      columns: asRequiredJson(columns),
      conditions: asRequiredJson(conditions),
      takenOn: fromShopDate(takenOn),
      createdAt: at,
    },
    select: view,
  });
  return toView(row);
}

/** How many rows it changed: 0 = no such sweep of this owner kind. */
export async function putSweepAway(
  tx: Tx,
  actor: Actor,
  { owner, id }: OwnedBy,
  archivedAt: Date | null,
): Promise<number> {
  const { count } = await tx.measuredSweep.updateMany({
    where: { ...sweepsVisibleTo(actor), id, [COLUMN[owner]]: { not: null } },
    data: { archivedAt },
  });
  return count;
}
