// The one place where rows become surveys as the screens show them.
import type { MissingDimension, SectionFormKind } from '@gusset/contracts/cargo';
import type { SurveyExtras, TakenReading } from '@gusset/contracts/survey';
import { surveyForm } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { toShopDate } from '../data/dates.ts';
import { extrasOf, formKindOf, modelNameOf, readingsOf, type SurveyRow } from './survey.queries.ts';

export type SurveyPhotoView = {
  readonly id: string;
  readonly fileId: string;
  readonly measurementKey: string | null;
  readonly caption: string;
  readonly takenAt: string;
  readonly widthPx: number | null;
  readonly heightPx: number | null;
};

export type SurveyHead = {
  readonly id: string;
  readonly modelId: string;
  readonly modelName: string;
  readonly formKind: SectionFormKind;
  readonly formName: string;
  readonly spaceName: string;
  readonly seatState: string;
  readonly revision: number;
  readonly settledAt: string | null;
  readonly takenBy: string;
  readonly takenOn: string | null;
  readonly archived: boolean;
  readonly version: number;
  readonly changedAt: string;
  readonly takenCount: number;
  /** Required letters that nobody took yet. */
  readonly missing: readonly MissingDimension[];
  readonly photoCount: number;
};

export type SurveyView = SurveyHead & {
  readonly notes: string;
  readonly extras: SurveyExtras;
  readonly readings: readonly (TakenReading & { readonly version: number })[];
  readonly photos: readonly SurveyPhotoView[];
  /** All revisions of this space, the newest first. */
  readonly revisions: readonly {
    readonly id: string;
    readonly revision: number;
    readonly settledAt: string | null;
  }[];
};

export function toSurveyHead(row: SurveyRow): SurveyHead {
  const form = surveyForm(formKindOf(row), extrasOf(row).free);
  const taken = new Set(row.measurements.map(({ key }) => key));
  const missing = isRefusal(form)
    ? []
    : form.dimensions
        .filter(({ need, key }) => need === 'required' && !taken.has(key))
        .map(({ key, letter, label }) => ({ key, letter, label }));
  return {
    id: row.id,
    modelId: row.modelId,
    modelName: modelNameOf(row.model),
    formKind: formKindOf(row),
    formName: isRefusal(form) ? 'Free section' : form.name,
    spaceName: row.spaceName,
    seatState: row.seatState,
    revision: row.revision,
    settledAt: row.settledAt?.toISOString() ?? null,
    takenBy: row.takenBy,
    takenOn: toShopDate(row.takenOn),
    archived: row.archivedAt !== null,
    version: row.version,
    changedAt: row.updatedAt.toISOString(),
    takenCount: row.measurements.length,
    missing,
    photoCount: row.photos.length,
  };
}

export function toSurveyView(
  row: SurveyRow,
  revisions: readonly { readonly id: string; readonly revision: number; readonly settledAt: Date | null }[],
): SurveyView {
  return {
    ...toSurveyHead(row),
    notes: row.notes,
    extras: extrasOf(row),
    readings: readingsOf(row),
    photos: row.photos.map(({ id, measurementKey, caption, createdAt, file }) => ({
      id,
      fileId: file.id,
      measurementKey,
      caption,
      takenAt: createdAt.toISOString(),
      widthPx: file.widthPx,
      heightPx: file.heightPx,
    })),
    revisions: revisions.map(({ id, revision, settledAt }) => ({
      id,
      revision,
      settledAt: settledAt?.toISOString() ?? null,
    })),
  };
}
