// A photo on its way to the API: a form, because bytes do not travel in JSON.

import type { ShopErrorData } from '@gusset/contracts/errors';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import type { ShownError } from '../../shared/data/shop-error.ts';
import type { PhotoAct } from './survey-acts.ts';

const PHOTOS_PATH = '/api/files/photos';

export type SurveyAnswer = ApiOutputs['survey']['read'];

/** Carries what is to be shown, as a tRPC error does for other calls. */
export class UploadError extends Error {
  readonly shown: ShownError;

  constructor(shown: ShownError) {
    super(shown.message);
    this.name = 'UploadError';
    this.shown = shown;
  }
}

export async function uploadPhoto(act: PhotoAct): Promise<SurveyAnswer> {
  const form = new FormData();
  form.append('key', act.id);
  form.append('surveyId', act.surveyId);
  form.append('measurementKey', act.measurementKey ?? '');
  form.append('photo', act.photo, act.name);
  const answer = await fetch(PHOTOS_PATH, { method: 'POST', body: form });
  if (answer.ok) {
    // The API's own answer to this very route; its type is the router's.
    return (await answer.json()) as SurveyAnswer;
  }
  throw new UploadError(await shownFrom(answer));
}

async function shownFrom(answer: Response): Promise<ShownError> {
  const body: unknown = await answer.json().catch(() => null);
  if (!isShopError(body)) {
    return {
      code: answer.status < 500 ? 'FILE_REFUSED' : 'NO_ANSWER',
      message: 'The photo was not taken in.',
      fields: [],
      conflict: null,
      referenceId: null,
    };
  }
  const { requestId, ...rest } = body;
  return { ...rest, referenceId: requestId === '' ? null : requestId };
}

function isShopError(body: unknown): body is ShopErrorData {
  return typeof body === 'object' && body !== null && 'code' in body && 'fields' in body;
}

export const photoPath = (fileId: string, size: 'full' | 'thumb'): string =>
  `/api/files/${fileId}?size=${size}`;
