// The only place that knows how surveys, their readings and photos are stored. Revisions of one space are rows that
// share model, form and name.
import { measuringMethodSchema, sectionFormKindSchema } from '@gusset/contracts/cargo';
import {
  NO_EXTRAS,
  type Reading,
  type SurveyExtras,
  type SurveySnapshot,
  surveyExtrasSchema,
  type TakenReading,
} from '@gusset/contracts/survey';
import type { Prisma, Tx } from '@gusset/database';
import { toShopDate } from '../data/dates.ts';
import { asRequiredJson } from '../data/json.ts';
import type { Actor } from '../deps.ts';

type InShop = Pick<Actor, 'shopId'>;

/** Every query starts from here, though row-level security stands behind it. */
export function surveysVisibleTo({ shopId }: InShop) {
  return { shopId } satisfies Prisma.SurveyWhereInput;
}

const readingView = {
  key: true,
  value: true,
  typed: true,
  plusMinus: true,
  method: true,
  takenBy: true,
  takenAt: true,
  version: true,
} satisfies Prisma.MeasurementSelect;

export const surveyRowView = {
  id: true,
  modelId: true,
  formKind: true,
  spaceName: true,
  seatState: true,
  revision: true,
  settledAt: true,
  takenBy: true,
  takenOn: true,
  notes: true,
  extras: true,
  version: true,
  archivedAt: true,
  createdAt: true,
  updatedAt: true,
  model: { select: { make: true, model: true, yearFrom: true, yearTo: true } },
  measurements: { select: readingView, orderBy: [{ key: 'asc' }] },
  photos: {
    select: {
      id: true,
      measurementKey: true,
      caption: true,
      createdAt: true,
      file: { select: { id: true, widthPx: true, heightPx: true } },
    },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  },
} satisfies Prisma.SurveySelect;
export type SurveyRow = Prisma.SurveyGetPayload<{ select: typeof surveyRowView }>;

/** Which space a revision belongs to. */
export type SpaceOf = { readonly modelId: string; readonly formKind: string; readonly spaceName: string };

const LIST_LIMIT = 200;

export function findSurvey(tx: Tx, actor: InShop, surveyId: string): Promise<SurveyRow | null> {
  return tx.survey.findFirst({ where: { ...surveysVisibleTo(actor), id: surveyId }, select: surveyRowView });
}

/** Newest revision first within a space. */
export function surveysOfModel(
  tx: Tx,
  actor: InShop,
  modelId: string,
  archived: boolean,
): Promise<SurveyRow[]> {
  return tx.survey.findMany({
    where: { ...surveysVisibleTo(actor), modelId, archivedAt: archived ? { not: null } : null },
    select: surveyRowView,
    orderBy: [{ formKind: 'asc' }, { spaceName: 'asc' }, { revision: 'desc' }, { id: 'asc' }],
    take: LIST_LIMIT,
  });
}

export function revisionsOf(tx: Tx, actor: InShop, { modelId, formKind, spaceName }: SpaceOf) {
  return tx.survey.findMany({
    where: { ...surveysVisibleTo(actor), modelId, formKind, spaceName },
    select: { id: true, revision: true, settledAt: true, archivedAt: true },
    orderBy: [{ revision: 'desc' }, { id: 'asc' }],
    take: LIST_LIMIT,
  });
}

/** A settled revision of the same space, later than this one. */
export async function newerSettled(tx: Tx, actor: InShop, row: SpaceOf & { readonly revision: number }) {
  const { modelId, formKind, spaceName, revision } = row;
  return tx.survey.findFirst({
    where: {
      ...surveysVisibleTo(actor),
      modelId,
      formKind,
      spaceName,
      revision: { gt: revision },
      settledAt: { not: null },
      archivedAt: null,
    },
    select: surveyRowView,
    orderBy: [{ revision: 'desc' }],
  });
}

/** Only one person at a time opens a space or its next revision. */
export async function lockModel(tx: Tx, { shopId }: InShop, modelId: string): Promise<boolean> {
  const rows = await tx.$queryRaw<{ id: string }[]>`
    SELECT id FROM vehicle_model WHERE shop_id = ${shopId}::uuid AND id = ${modelId}::uuid FOR UPDATE`;
  return rows.length === 1;
}

/** Locks one revision, so that it is not settled while a reading comes in. */
export async function lockSurvey(tx: Tx, { shopId }: InShop, surveyId: string): Promise<void> {
  await tx.$queryRaw`
    SELECT id FROM survey WHERE shop_id = ${shopId}::uuid AND id = ${surveyId}::uuid FOR UPDATE`;
}

/** The next revision with everything of the one before; versions come along, so that what was seen still counts. */
export async function copyAsNextRevision(tx: Tx, { shopId }: InShop, row: SurveyRow): Promise<string> {
  const { modelId, formKind, spaceName, seatState, takenBy, takenOn, notes, version } = row;
  const { id } = await tx.survey.create({
    data: {
      shopId,
      modelId,
      formKind,
      spaceName,
      seatState,
      takenBy,
      takenOn,
      notes,
      version,
      extras: asRequiredJson(row.extras),
      revision: row.revision + 1,
    },
    select: { id: true },
  });
  await tx.measurement.createMany({
    data: row.measurements.map((reading) => ({ shopId, surveyId: id, ...reading })),
  });
  await tx.surveyPhoto.createMany({
    data: row.photos.map(({ measurementKey, caption, createdAt, file }) => ({
      shopId,
      surveyId: id,
      measurementKey,
      caption,
      createdAt,
      fileId: file.id,
    })),
  });
  return id;
}

export type ReadingWrite = {
  readonly surveyId: string;
  readonly version: number;
  readonly reading: Reading;
  readonly takenBy: string;
  readonly takenAt: Date;
};

/** Writes over the version that was seen; false when it has moved on. Version 0 = there was none. */
export async function writeReading(tx: Tx, { shopId }: InShop, write: ReadingWrite): Promise<boolean> {
  const { surveyId, version, reading, takenBy, takenAt } = write;
  if (version === 0) {
    const { count } = await tx.measurement.createMany({
      data: [{ shopId, surveyId, ...reading, takenBy, takenAt }],
      skipDuplicates: true,
    });
    return count === 1;
  }
  const { key, ...values } = reading;
  const { count } = await tx.measurement.updateMany({
    where: { shopId, surveyId, key, version },
    data: { ...values, takenBy, takenAt, version: { increment: 1 } },
  });
  return count === 1;
}

export async function removeReading(
  tx: Tx,
  { shopId }: InShop,
  at: { readonly surveyId: string; readonly key: string; readonly version: number },
): Promise<boolean> {
  const { count } = await tx.measurement.deleteMany({ where: { shopId, ...at } });
  return count === 1;
}

/** Columns changed over the version that was seen; false when it has moved on. */
export async function changeSurvey(
  tx: Tx,
  actor: InShop,
  at: { readonly surveyId: string; readonly version: number },
  data: Prisma.SurveyUpdateManyMutationInput,
): Promise<boolean> {
  const { count } = await tx.survey.updateMany({
    where: { ...surveysVisibleTo(actor), id: at.surveyId, version: at.version },
    data: { ...data, version: { increment: 1 } },
  });
  return count === 1;
}

/** Stored by `surveyExtrasSchema`; a row made before it was complete counts as having none. */
export function extrasOf(row: Pick<SurveyRow, 'extras'>): SurveyExtras {
  return surveyExtrasSchema.safeParse(row.extras).data ?? NO_EXTRAS;
}

/** Method is written by its schema only. */
export function readingsOf(
  row: Pick<SurveyRow, 'measurements'>,
): (TakenReading & { readonly version: number })[] {
  return row.measurements.map((reading) => ({
    ...reading,
    method: measuringMethodSchema.parse(reading.method),
    takenAt: reading.takenAt.toISOString(),
  }));
}

export function formKindOf(row: Pick<SurveyRow, 'formKind'>) {
  return sectionFormKindSchema.parse(row.formKind);
}

/** `Halden Brisk, 2021 to 2024`. */
export function modelNameOf({ make, model, yearFrom, yearTo }: SurveyRow['model']): string {
  const name = `${make} ${model}`;
  if (yearFrom === null && yearTo === null) return name;
  if (yearFrom === yearTo) return `${name}, ${yearFrom}`;
  if (yearTo === null) return `${name}, from ${yearFrom}`;
  return yearFrom === null ? `${name}, up to ${yearTo}` : `${name}, ${yearFrom} to ${yearTo}`;
}

/** A revision as sheet 02 reads it and keeps it with its issue. */
export function toSnapshot(row: SurveyRow): SurveySnapshot {
  return {
    surveyId: row.id,
    revision: row.revision,
    modelName: modelNameOf(row.model),
    formKind: formKindOf(row),
    spaceName: row.spaceName,
    seatState: row.seatState,
    takenBy: row.takenBy,
    takenOn: toShopDate(row.takenOn),
    readings: readingsOf(row).map(({ version: _, ...reading }) => reading),
    extras: extrasOf(row),
  };
}
