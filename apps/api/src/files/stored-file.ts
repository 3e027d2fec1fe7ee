// Rows that name a file in the store: same content, same row.
import type { Tx } from '@gusset/database';
import type { Actor } from '../deps.ts';
import type { ReadyPhoto } from './ready-photo.ts';

export async function storePhoto(
  tx: Tx,
  { shopId, userId }: Actor,
  { content, sha256, mime, widthPx, heightPx, name }: ReadyPhoto & { readonly sha256: string },
): Promise<string> {
  await tx.storedFile.createMany({
    data: [{ shopId, sha256, mime, bytes: content.byteLength, widthPx, heightPx, name, createdBy: userId }],
    skipDuplicates: true,
  });
  const { id } = await tx.storedFile.findUniqueOrThrow({
    where: { shopId_sha256: { shopId, sha256 } },
    select: { id: true },
  });
  return id;
}

export function findStoredFile(tx: Tx, { shopId }: Pick<Actor, 'shopId'>, fileId: string) {
  return tx.storedFile.findFirst({
    where: { shopId, id: fileId },
    select: { sha256: true, mime: true, name: true, photos: { select: { id: true }, take: 1 } },
  });
}
