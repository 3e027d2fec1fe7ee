// The only place that knows how a car's transfer is stored. Revisions are added, never changed.
import {
  type CarTransferView,
  FIRING_DIRECTIONS,
  FIRING_WORDS,
  type KeepTransferInput,
  type TransferCurve,
  transferCurveSchema,
} from '@gusset/contracts/measurement';
import type { CabinCurve } from '@gusset/contracts/sound';
import type { Prisma, Tx } from '@gusset/database';
import { asRequiredJson } from '../data/json.ts';
import type { Actor } from '../deps.ts';

const MOST_LISTED = 50;

const view = {
  id: true,
  revision: true,
  place: true,
  direction: true,
  reason: true,
  curve: true,
  sweepIds: true,
  keptBy: true,
  keptAt: true,
} satisfies Prisma.CarTransferSelect;
type Row = Prisma.CarTransferGetPayload<{ select: typeof view }>;

export function transfersVisibleTo({ shopId }: Pick<Actor, 'shopId'>) {
  return { shopId } satisfies Prisma.CarTransferWhereInput;
}

function toView({ curve, direction, keptAt, ...row }: Row): CarTransferView {
  return {
    ...row,
    direction: FIRING_DIRECTIONS.find((each) => each === direction) ?? 'up',
    curve: transferCurveSchema.parse(curve),
    keptAt: keptAt.toISOString(),
  };
}

/** Newest revision first. */
export async function listTransferRows(tx: Tx, actor: Actor, modelId: string): Promise<CarTransferView[]> {
  const rows = await tx.carTransfer.findMany({
    where: { ...transfersVisibleTo(actor), modelId },
    select: view,
    orderBy: [{ revision: 'desc' }],
    take: MOST_LISTED,
  });
  return rows.map(toView);
}

/** The one that counts for every job of this model of vehicle; null = nobody has measured it. */
export async function latestTransfer(
  tx: Tx,
  actor: Pick<Actor, 'shopId'>,
  modelId: string,
): Promise<CarTransferView | null> {
  const row = await tx.carTransfer.findFirst({
    where: { ...transfersVisibleTo(actor), modelId },
    select: view,
    orderBy: { revision: 'desc' },
  });
  return row === null ? null : toView(row);
}

/** The same as a fact of sheet 03. */
export async function measuredCabin(
  tx: Tx,
  actor: Pick<Actor, 'shopId'>,
  modelId: string,
): Promise<CabinCurve | null> {
  const transfer = await latestTransfer(tx, actor, modelId);
  if (transfer === null) return null;
  const { revision, place, direction, curve, keptAt } = transfer;
  return {
    label: `${place}, ${FIRING_WORDS[direction]}, measurement ${revision} of ${keptAt.slice(0, 10)}`,
    points: curve.points.map(({ frequencyHz, gainDb }) => ({ frequencyHz, gainDb })),
  };
}

export async function insertTransfer(
  tx: Tx,
  actor: Actor,
  kept: KeepTransferInput & { readonly curve: TransferCurve; readonly at: Date },
): Promise<CarTransferView> {
  const { modelId, place, direction, reason, sweepIds, curve, at } = kept;
  const last = await latestTransfer(tx, actor, modelId);
  const row = await tx.carTransfer.create({
    data: {
      shopId: actor.shopId,
      modelId,
      revision: (last?.revision ?? 0) + 1,
      place,
      direction,
      reason,
      curve: asRequiredJson(curve),
      lowHz: curve.validLowHz,
      highHz: curve.validHighHz,
      sweepIds,
      keptBy: actor.name,
      keptAt: at,
    },
    select: view,
  });
  return toView(row);
}
