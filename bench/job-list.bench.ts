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
import { fastify } from 'fastify';
import pg from 'pg';

const JOBS = 10_000;
const WARM_UP = 40;
const CALLS = 200;
const LIST_LIMIT_MS = 100;
const SEARCH_LIMIT_MS = 150;
const PUBLIC_URL = 'http://localhost:4300';

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
  const shopId = await seed(pool);
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

async function measure(once: () => Promise<void>): Promise<Times> {
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

async function call(api: string, procedure: string, input: object, cookie: string): Promise<void> {
  await ask(`${api}/api/trpc/${procedure}?input=${encodeURIComponent(JSON.stringify(input))}`, cookie);
}

async function ask(url: string, cookie: string): Promise<void> {
  const answer = await fetch(url, { headers: { cookie, origin: PUBLIC_URL } });
  const body = await answer.text();
  if (!answer.ok) throw new Error(`${answer.status}: ${body.slice(0, 300)}`);
}

async function foundShop(api: string): Promise<string> {
  const headers = { origin: PUBLIC_URL, 'content-type': 'application/json' };
  const signUp = await fetch(`${api}/api/auth/sign-up/email`, {
    method: 'POST',
    headers,
    body: JSON.stringify({
      name: 'Mira Ilves',
      email: 'mira@example.com',
      password: 'lantern copper meadow violin',
    }),
  });
  const cookie = signUp.headers
    .getSetCookie()
    .map((line) => line.split(';')[0])
    .join('; ');
  const founded = await fetch(`${api}/api/trpc/shop.found`, {
    method: 'POST',
    headers: { ...headers, cookie },
    body: JSON.stringify({
      name: 'Quarry Road Sound',
      ownerName: 'Mira Ilves',
      timeZone: 'Europe/Berlin',
      currency: 'EUR',
      locale: 'en-GB',
      lengthUnit: 'mm',
    }),
  });
  if (!founded.ok) throw new Error(`no shop: ${await founded.text()}`);
  return cookie;
}

/** As many jobs as a busy shop opens in thirty years, for a thousand customers. */
async function seed(pool: pg.Pool): Promise<string> {
  const { rows } = await pool.query<{ id: string }>('SELECT id FROM shop');
  const shopId = rows[0]?.id;
  if (shopId === undefined) throw new Error('no shop was founded');
  const statements = [
    `INSERT INTO vehicle_model (shop_id, id, make, model, body, updated_at)
     SELECT $1, gen_random_uuid(), (ARRAY['Halden','Merle','Orrin','Tern'])[1 + n % 4], 'Brisk ' || n, 'hatch', now()
     FROM generate_series(1, 120) n`,
    `INSERT INTO customer (shop_id, id, name, phone, updated_at)
     SELECT $1, gen_random_uuid(), 'Sample Person ' || n, '555 ' || n, now() FROM generate_series(1, 1000) n`,
    `INSERT INTO vehicle (shop_id, id, customer_id, model_id, plate, year, updated_at)
     SELECT $1, gen_random_uuid(), c.id, m.id, 'QR ' || (4000 + c.row), 2021, now()
     FROM (SELECT id, row_number() OVER (ORDER BY name) AS row FROM customer WHERE shop_id = $1) c
     JOIN (SELECT id, row_number() OVER (ORDER BY model) AS row FROM vehicle_model WHERE shop_id = $1) m
       ON m.row = 1 + c.row % 120`,
    `INSERT INTO part (shop_id, id, kind, maker, name, code, figures, updated_at)
     SELECT $1, gen_random_uuid(), 'supply', 'Medlar', 'Wood glue ' || n, 'MG-' || n, '{}', now()
     FROM generate_series(1, 800) n`,
    `INSERT INTO job (shop_id, id, number, title, customer_id, vehicle_id, standing, promised_on, updated_at)
     SELECT $1, gen_random_uuid(), 2400 + n, (ARRAY['Bass box behind the seat','Door panels','Boot floor'])[1 + n % 3]
              || ' ' || n,
            v.customer_id, v.id,
            (ARRAY['enquiry','surveyed','priced','quoted','approved','in-bay','handed-over','declined'])[1 + n % 8],
            date '2026-01-01' + n % 400, now() - n * interval '1 minute'
     FROM generate_series(1, ${JOBS}) n
     JOIN (SELECT id, customer_id, row_number() OVER (ORDER BY plate) AS row FROM vehicle WHERE shop_id = $1) v
       ON v.row = 1 + n % 1000`,
  ];
  for (const statement of statements) await pool.query(statement, [shopId]);
  await pool.query('ANALYZE');
  return shopId;
}

function bareRoute(pool: pg.Pool, shopId: string) {
  const bare = fastify();
  bare.get('/jobs', async () => {
    const { rows } = await pool.query(
      `SELECT j.id, j.number, j.title, j.standing, j.wished_on, j.promised_on, j.forecast_on, j.total_minor,
              j.updated_at, j.archived_at, j.version, c.id AS customer_id, c.name AS customer, v.id AS vehicle_id,
              v.plate, v.year, m.id AS model_id, m.make, m.model, m.body, m.powertrain
       FROM job j
       JOIN customer c ON c.shop_id = j.shop_id AND c.id = j.customer_id
       LEFT JOIN vehicle v ON v.shop_id = j.shop_id AND v.id = j.vehicle_id
       LEFT JOIN vehicle_model m ON m.shop_id = v.shop_id AND m.id = v.model_id
       WHERE j.shop_id = $1 AND j.archived_at IS NULL AND j.standing = ANY($2)
       ORDER BY j.promised_on DESC NULLS LAST, j.id DESC LIMIT 50`,
      [shopId, ['approved', 'in-bay']],
    );
    const total = await pool.query(
      `SELECT count(*)::int AS total FROM job WHERE shop_id = $1 AND archived_at IS NULL AND standing = ANY($2)`,
      [shopId, ['approved', 'in-bay']],
    );
    return { rows, total: total.rows[0]?.total };
  });
  return bare;
}
