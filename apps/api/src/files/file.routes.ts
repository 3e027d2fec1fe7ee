// Files in and out over plain HTTP: a photo comes as a form, a file goes as bytes. Same people, same permissions, same
// own-origin rule as everywhere.
import { may, type Permission } from '@gusset/contracts/access';
import { idempotencyKeySchema, idSchema } from '@gusset/contracts/common';
import { SHOP_ERRORS } from '@gusset/contracts/errors';
import { photoPlaceSchema } from '@gusset/contracts/survey';
import { TRPCError } from '@trpc/server';
import { getHTTPStatusCodeFromError } from '@trpc/server/http';
import type { FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { toShopError } from '../data/database-errors.ts';
import type { Actor, Deps } from '../deps.ts';
import { errorData, notFound, ShopError } from '../errors.ts';
import { attachPhoto } from '../surveys/survey-photo.service.ts';
import { createContext } from '../trpc/context.ts';
import { MAX_PHOTO_BYTES, readyPhoto, thumbnailOf } from './ready-photo.ts';
import { findStoredFile } from './stored-file.ts';

const formSchema = photoPlaceSchema.extend({ key: idempotencyKeySchema });
const fileAtSchema = z.object({ fileId: idSchema });
const sizeSchema = z.object({ size: z.enum(['full', 'thumb']).default('full') });

export const fileRoutes: FastifyPluginAsync<{ readonly deps: Deps }> = async (app, { deps }) => {
  app.post('/api/files/photos', (request, reply) =>
    answering(deps, request, reply, async () => {
      const actor = await actorWith(deps, request, 'survey.edit');
      const part = await request.file({ limits: { fileSize: MAX_PHOTO_BYTES, files: 1 } });
      if (part === undefined) throw refusedUpload('No photo came along.');
      const upload = await part.toBuffer();
      const { key, ...place } = formSchema.parse(fieldsOf(part.fields));
      const photo = await readyPhoto(upload, part.filename);
      return reply.code(201).send(await attachPhoto(deps, actor, key, place, photo));
    }),
  );

  app.get('/api/files/:fileId', (request, reply) =>
    answering(deps, request, reply, async () => {
      const actor = await actorWith(deps, request, 'vehicle.read');
      const { fileId } = fileAtSchema.parse(request.params);
      const { size } = sizeSchema.parse(request.query);
      const row = await deps.doors.inShop(actor.shopId, (tx) => findStoredFile(tx, actor, fileId));
      // Only what a survey shows goes out here; other files have doors of their own.
      const content = row === null || row.photos.length === 0 ? null : await deps.files.get(row.sha256);
      if (row === null || content === null) throw notFound('file');
      const isThumbnail = size === 'thumb';
      const name = encodeURIComponent(row.name);
      return reply
        .header('content-type', isThumbnail ? 'image/jpeg' : row.mime)
        .header('x-content-type-options', 'nosniff')
        .header('content-disposition', `inline; filename="photo.jpg"; filename*=UTF-8''${name}`)
        .header('cache-control', 'no-store')
        .send(Buffer.from(isThumbnail ? await thumbnailOf(content) : content));
    }),
  );
};

/** Text fields of the form; an empty `measurementKey` means the whole space. */
function fieldsOf(fields: Readonly<Record<string, unknown>>): Record<string, string | null> {
  const texts: Record<string, string | null> = {};
  for (const [name, part] of Object.entries(fields)) {
    if (typeof part !== 'object' || part === null || !('type' in part) || part.type !== 'field') continue;
    const text = 'value' in part && typeof part.value === 'string' ? part.value : '';
    texts[name] = name === 'measurementKey' && text === '' ? null : text;
  }
  return texts;
}

export async function actorWith(deps: Deps, request: FastifyRequest, permission: Permission): Promise<Actor> {
  const context = await createContext(deps, {
    headers: request.headers,
    cookies: request.cookies,
    requestId: request.id,
    address: request.ip,
    setCookie: () => undefined,
  });
  const actor = await context.actor();
  if (context.signedIn === null) throw new ShopError('SIGN_IN_FIRST', 'Sign in first.');
  if (actor === null || !may(actor.role, permission)) {
    throw new ShopError('NOT_ALLOWED', 'Your role in this shop does not allow that.');
  }
  return actor;
}

/** Errors that a person can meet leave as they do from tRPC: `ShopErrorData` with its status. */
export async function answering(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  work: () => Promise<unknown>,
): Promise<unknown> {
  try {
    return await work();
  } catch (error) {
    const known = asKnown(error);
    if (known === null) throw error;
    const data = errorData(known, request.id);
    if (data.code === 'UNEXPECTED') deps.log.error({ requestId: request.id, err: error }, 'request failed');
    return reply.code(getHTTPStatusCodeFromError(known)).send(data);
  }
}

function asKnown(error: unknown): TRPCError | null {
  const shopError = error instanceof ShopError ? error : (toShopError(error) ?? uploadError(error));
  if (shopError !== null) {
    return new TRPCError({ code: SHOP_ERRORS[shopError.code], message: shopError.message, cause: shopError });
  }
  return error instanceof z.ZodError ? new TRPCError({ code: 'BAD_REQUEST', cause: error }) : null;
}

/** The form reader's own limits, in words. */
function uploadError(error: unknown): ShopError | null {
  if (!(error instanceof Error) || !('code' in error)) return null;
  if (error.code === 'FST_REQ_FILE_TOO_LARGE') return refusedUpload('The photo is larger than 25 MB.');
  const isFormFault =
    typeof error.code === 'string' &&
    /^FST_(INVALID_MULTIPART|FILES_LIMIT|PARTS_LIMIT|FIELDS_LIMIT|PROTO_VIOLATION)/.test(error.code);
  return isFormFault ? refusedUpload('The photo did not come as a form with one file.') : null;
}

function refusedUpload(message: string): ShopError {
  return new ShopError('FILE_REFUSED', message, { fields: [{ path: 'photo', message }] });
}
