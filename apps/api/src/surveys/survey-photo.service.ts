// Photos of a survey: a stored file shown beside the dimension it proves.
import type { PhotoPlace } from '@gusset/contracts/survey';
import { record } from '../data/audit.ts';
import { once } from '../data/idempotency.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound } from '../errors.ts';
import type { ReadyPhoto } from '../files/ready-photo.ts';
import { storePhoto } from '../files/stored-file.ts';
import { openRevision, viewSurvey } from './survey-scope.ts';
import type { SurveyView } from './survey-view.ts';

/** Attaches a photo that was made ready; the same key takes effect once. */
export async function attachPhoto(
  { doors, files }: Deps,
  actor: Actor,
  key: string,
  place: PhotoPlace,
  photo: ReadyPhoto,
): Promise<SurveyView> {
  const sha256 = await files.put(photo.content);
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, { ...place, sha256 }, async () => {
      const row = await openRevision(tx, actor, place.surveyId);
      const fileId = await storePhoto(tx, actor, { ...photo, sha256 });
      const { measurementKey, caption } = place;
      const { id } = await tx.surveyPhoto.create({
        data: { shopId: actor.shopId, surveyId: row.id, measurementKey, caption, fileId },
        select: { id: true },
      });
      await record(tx, actor, {
        act: 'survey.photographed',
        subject: 'survey',
        subjectId: row.id,
        after: { photoId: id, measurementKey, sha256 },
      });
      return viewSurvey(tx, actor, row.id);
    }),
  );
}

/** Takes the photo off this revision; earlier revisions keep theirs. */
export function dropPhoto({ doors }: Deps, actor: Actor, photoId: string): Promise<SurveyView> {
  return doors.inShop(actor.shopId, async (tx) => {
    const photo = await tx.surveyPhoto.findFirst({
      where: { shopId: actor.shopId, id: photoId },
      select: { surveyId: true, fileId: true, measurementKey: true },
    });
    if (photo === null) throw notFound('photo');
    const row = await openRevision(tx, actor, photo.surveyId);
    // A settled revision keeps its photos: on the next one its copy goes.
    const own = await tx.surveyPhoto.findFirst({
      where: {
        shopId: actor.shopId,
        surveyId: row.id,
        fileId: photo.fileId,
        measurementKey: photo.measurementKey,
        ...(row.id === photo.surveyId ? { id: photoId } : {}),
      },
      select: { id: true },
    });
    if (own !== null) {
      await tx.surveyPhoto.deleteMany({ where: { shopId: actor.shopId, id: own.id } });
      await record(tx, actor, {
        act: 'survey.photo-removed',
        subject: 'survey',
        subjectId: row.id,
        before: { photoId: own.id, fileId: photo.fileId },
      });
    }
    return viewSurvey(tx, actor, row.id);
  });
}
