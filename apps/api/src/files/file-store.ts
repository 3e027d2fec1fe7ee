// Where uploaded and made files live: named by the SHA-256 of their content, in one folder (a shared volume where
// there are several replicas).
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, open, readFile, rename, stat } from 'node:fs/promises';
import path from 'node:path';

export interface FileStore {
  /** Keeps the bytes and answers their SHA-256. Safe to call twice with the same content. */
  put(content: Uint8Array): Promise<string>;
  /** The bytes, or null where there are none; a file whose content no longer matches its name counts as none. */
  get(sha256: string): Promise<Uint8Array | null>;
}

export function folderFileStore(folder: string): FileStore {
  const placeOf = (sha256: string) => path.join(folder, sha256.slice(0, 2), sha256);
  return {
    async put(content) {
      const sha256 = createHash('sha256').update(content).digest('hex');
      const place = placeOf(sha256);
      if (await exists(place)) return sha256;
      await mkdir(path.dirname(place), { recursive: true });
      const making = `${place}.${randomUUID()}`;
      const file = await open(making, 'wx');
      try {
        await file.writeFile(content);
        await file.sync(); // on disk before any row names it
      } finally {
        await file.close();
      }
      await rename(making, place);
      return sha256;
    },
    async get(sha256) {
      if (!/^[0-9a-f]{64}$/.test(sha256)) return null;
      const place = placeOf(sha256);
      if (!(await exists(place))) return null;
      const content = await readFile(place);
      return createHash('sha256').update(content).digest('hex') === sha256 ? content : null;
    },
  };
}

async function exists(place: string): Promise<boolean> {
  return stat(place).then(
    () => true,
    () => false,
  );
}
