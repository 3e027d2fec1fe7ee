// A shop with as many jobs as a busy one opens in thirty years, and the bare route that answers the same rows: what the
// measurements of lists, search and memory have in common.
import { fastify } from 'fastify';
import type pg from 'pg';

export const LARGE_SHOP_JOBS = 10_000;
export const PUBLIC_URL = 'http://localhost:4300';

/** Asks a procedure as the signed-in person and answers its text; throws what was answered where that is an error. */
export function call(api: string, procedure: string, input: object, cookie: string): Promise<string> {
  return ask(`${api}/api/trpc/${procedure}?input=${encodeURIComponent(JSON.stringify(input))}`, cookie);
}

export async function ask(url: string, cookie: string): Promise<string> {
  const answer = await fetch(url, { headers: { cookie, origin: PUBLIC_URL } });
  const body = await answer.text();
  if (!answer.ok) throw new Error(`${answer.status}: ${body.slice(0, 300)}`);
  return body;
}

/** Signs up an owner and founds the shop; answers the cookies. */
export async function foundShop(api: string): Promise<string> {
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

/** Fills the only shop of the database: jobs of a thousand customers, parts, vehicles. Answers its id. */
export async function seedLargeShop(pool: pg.Pool): Promise<string> {
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
     FROM generate_series(1, ${LARGE_SHOP_JOBS}) n
     JOIN (SELECT id, customer_id, row_number() OVER (ORDER BY plate) AS row FROM vehicle WHERE shop_id = $1) v
       ON v.row = 1 + n % 1000`,
  ];
  for (const statement of statements) await pool.query(statement, [shopId]);
  await pool.query('ANALYZE');
  return shopId;
}

/** Fifty jobs with one SQL statement, without sign-in, walls or contracts. */
export function bareRoute(pool: pg.Pool, shopId: string) {
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
