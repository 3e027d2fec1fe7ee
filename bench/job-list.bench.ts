// The list of jobs and the search box with 10,000 jobs in the shop, over HTTP, signed in, through row security.
// Beside it, in the same run: the same fifty rows from a bare Fastify route with one SQL statement and no walls.
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buildApp } from '@gusset/api/app';
import { buildDeps } from '@gusset/api/build-deps';
import { readEnv } from '@gusset/api/env';
import { migrate, startEmbeddedPostgres } from '@gusset/database';
import pg from 'pg';
import { ask, bareRoute, call, foundShop, PUBLIC_URL, seedLargeShop } from './large-shop.ts';

const WARM_UP = 40;
const CALLS = 200;
const LIST_LIMIT_MS = 100;
const SEARCH_LIMIT_MS = 150;

const folder = mkdtempSync(path.join(tmpdir(), 'gusset-bench-'));
const server = await startEmbeddedPostgres({
  dataFolder: folder,
  database: 'gusset_bench',
});
try {
  await migrate(server.adminUrl);
  const env = readEnv({
    DATABASE_URL: server.apiUrl,
    AUTH_SECRET: randomUUID() + randomUUID(),
    FILES_DIR: path.join(folder, 'files'),
    PUBLIC_URL,
    LOG_LEVEL: 'silent',
  });
  const { deps, close } = await buildDeps(env, { superviseQueue: false, limitRate: false });
  const app = await buildApp(deps, { limitRate: false });
  const api = await app.listen({ host: '127.0.0.1', port: 0 });
  const pool = new pg.Pool({ connectionString: server.adminUrl, max: 10 });
  const cookie = await foundShop(api);
  const shopId = await seedLargeShop(pool);
  const bare = bareRoute(pool, shopId);
  const bareAddress = await bare.listen({ host: '127.0.0.1', port: 0 });

  const listInput = { limit: 50, sort: 'promised', descending: true, standing: ['approved', 'in-bay'] };
  const list = await measure(() => call(api, 'job.list', listInput, cookie));
  const plain = await measure(() => ask(`${bareAddress}/jobs`, ''));
  const deep = await measure(() => call(api, 'job.list', { ...listInput, offset: 2_000 }, cookie));
  const filtered = await measure(() => call(api, 'job.list', { ...listInput, search: 'Person 77' }, cookie));
  print('job.list, 50 of 2,500 by promise', list, LIST_LIMIT_MS);
  print('the same rows, bare route', plain, null);
  print('job.list, from row 2,000 on', deep, LIST_LIMIT_MS);
  print('job.list, searched', filtered, LIST_LIMIT_MS);
  process.stdout.write(`ratio to the bare route: ${(list.median / plain.median).toFixed(2)} (median)\n`);

  const texts = ['7', '2417', 'person 77', 'bass box', 'qr 4711', 'hlden brsk', 'zzzzzz', 'door'];
  let next = 0;
  const search = await measure(() => {
    next += 1;
    return call(api, 'search.everything', { text: texts[next % texts.length] ?? '' }, cookie);
  });
  print('search.everything', search, SEARCH_LIMIT_MS);

  await bare.close();
  await app.close();
  await close();
  await pool.end();
} finally {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
}

type Times = { readonly median: number; readonly p95: number };

async function measure(once: () => Promise<unknown>): Promise<Times> {
  for (let count = 0; count < WARM_UP; count += 1) await once();
  const times: number[] = [];
  for (let count = 0; count < CALLS; count += 1) {
    const started = performance.now();
    await once();
    times.push(performance.now() - started);
  }
  const sorted = times.toSorted((a, b) => a - b);
  return { median: sorted[CALLS / 2] ?? 0, p95: sorted[Math.floor(CALLS * 0.95)] ?? 0 };
}

function print(what: string, { median, p95 }: Times, limitMs: number | null): void {
  const verdict = limitMs === null ? '' : p95 <= limitMs ? `within ${limitMs} ms` : `OVER ${limitMs} ms`;
  process.stdout.write(
    `${what.padEnd(34)} median ${median.toFixed(1)} ms, p95 ${p95.toFixed(1)} ms  ${verdict}\n`,
  );
  if (verdict.startsWith('OVER')) process.exitCode = 1;
}
