import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync } from 'node:zlib';
import fastify, { type FastifyInstance } from 'fastify';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { compressStatic } from './compress-static.ts';
import { compressedFiles, serveCompressed } from './static-files.ts';

const SCRIPT = `export const words = ${JSON.stringify('one and the same '.repeat(200))};`;
const ADDRESS = '/_next/static/chunks/a.js';

let folder = '';
let door: FastifyInstance;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'gusset-static-'));
  mkdirSync(join(folder, 'chunks'));
  writeFileSync(join(folder, 'chunks/a.js'), SCRIPT);
  writeFileSync(join(folder, 'chunks/small.js'), 'export {};');
  writeFileSync(join(folder, 'chunks/face.woff2'), SCRIPT);
  door = fastify();
});

afterEach(async () => {
  await door.close();
  rmSync(folder, { recursive: true, force: true });
});

const ask = (url: string, acceptEncoding: string) =>
  door.inject({ url, headers: { 'accept-encoding': acceptEncoding } });

const open = async () => {
  await compressStatic(folder);
  serveCompressed(door, compressedFiles(folder));
  door.get('/*', async () => 'from Next');
};

describe('compressStatic', () => {
  it('compresses scripts and styles that are worth it, nothing else', async () => {
    expect(await compressStatic(folder)).toBe(1);
    expect([...compressedFiles(folder).keys()]).toEqual([ADDRESS]);
  });
});

describe('serveCompressed', () => {
  it('sends the file as it was built, smaller, kept for a year, with the standing headers', async () => {
    await open();
    const answer = await ask(ADDRESS, 'gzip, deflate, br, zstd');
    expect(answer.statusCode).toBe(200);
    expect(answer.headers).toMatchObject({
      'content-encoding': 'br',
      'content-type': 'application/javascript; charset=UTF-8',
      'cache-control': 'public, max-age=31536000, immutable',
      vary: 'accept-encoding',
      'x-content-type-options': 'nosniff',
    });
    expect(answer.rawPayload.length).toBeLessThan(SCRIPT.length / 10);
    expect(Number(answer.headers['content-length'])).toBe(answer.rawPayload.length);
    expect(brotliDecompressSync(answer.rawPayload).toString()).toBe(SCRIPT);
  });

  it.each(['gzip, deflate', '', 'br;q=0', 'br; q=0.0'])(
    'leaves a browser that takes "%s" to Next',
    async (taken) => {
      await open();
      expect((await ask(ADDRESS, taken)).body).toBe('from Next');
    },
  );

  it('takes Brotli with any weight above nothing', async () => {
    await open();
    expect((await ask(ADDRESS, 'gzip;q=1.0, br;q=0.8')).headers['content-encoding']).toBe('br');
  });

  it.each(['/_next/static/chunks/small.js', '/_next/static/../a.js', `${ADDRESS}.br`])(
    'leaves %s to Next',
    async (url) => {
      await open();
      expect((await ask(url, 'br')).headers['content-encoding']).toBeUndefined();
    },
  );

  it('has nothing to send where nothing was built', () => {
    expect(compressedFiles(join(folder, 'nowhere')).size).toBe(0);
  });
});
