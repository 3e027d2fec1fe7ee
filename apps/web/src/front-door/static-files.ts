// The scripts and styles that the build has compressed (compress-static.ts), for browsers that take Brotli: over HTTPS
// and on localhost all do. Every other request for a file goes on to Next, which compresses it with gzip as it sends.

import { createReadStream, existsSync, readdirSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { COMPRESSED_SUFFIX } from './compress-static.ts';
import { STANDING_HEADERS } from './security-headers.ts';

const ADDRESS = '/_next/static/';
/** The build names a file after its contents. */
const KEPT = 'public, max-age=31536000, immutable';
const TYPES: Readonly<Record<string, string>> = {
  js: 'application/javascript; charset=UTF-8',
  css: 'text/css; charset=UTF-8',
};

type CompressedFile = { readonly file: string; readonly type: string; readonly bytes: number };

/** What lies compressed under the folder, by its address without the suffix. Empty where nothing was built. */
export function compressedFiles(folder: string): ReadonlyMap<string, CompressedFile> {
  if (!existsSync(folder)) return new Map();
  const found = new Map<string, CompressedFile>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.endsWith(COMPRESSED_SUFFIX)) continue;
    const file = join(entry.parentPath, entry.name);
    const plain = relative(folder, file).slice(0, -COMPRESSED_SUFFIX.length).split(sep).join('/');
    const type = TYPES[plain.slice(plain.lastIndexOf('.') + 1)];
    if (type !== undefined) found.set(ADDRESS + plain, { file, type, bytes: statSync(file).size });
  }
  return found;
}

const takesBrotli = (accepted: string | undefined): boolean =>
  (accepted ?? '').split(',').some((coding) => /^\s*br\s*(?:;\s*q=(?!0(?:\.0*)?\s*$).*)?$/u.test(coding));

/** Answers for the files of the map, before anything else sees the request. */
export function serveCompressed(door: FastifyInstance, files: ReadonlyMap<string, CompressedFile>): void {
  door.addHook('onRequest', async (request, reply) => {
    if (request.method !== 'GET') return;
    const found = files.get(request.url);
    if (found === undefined || !takesBrotli(request.headers['accept-encoding'])) return;
    return reply
      .headers(STANDING_HEADERS)
      .header('cache-control', KEPT)
      .header('content-encoding', 'br')
      .header('content-length', found.bytes)
      .header('vary', 'accept-encoding')
      .type(found.type)
      .send(createReadStream(found.file));
  });
}
