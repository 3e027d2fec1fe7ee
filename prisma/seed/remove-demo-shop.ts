// Takes the demo shop out of a database and nothing else. Done as the owner of the tables, because the API's own role
// may not remove what was issued, quoted or written in the record.
import pg from 'pg';
import { DEMO_EMAILS } from './demo-staff.ts';

/** Mark that only the demo's founding carries in the record. */
const DEMO_FOUNDING = { act: 'shop.founded', requestId: 'demo' };

export type Removed = { readonly shops: number; readonly rows: number; readonly people: number };

/** All or nothing. Refuses, in a sentence, where a person of the demo belongs to another shop too. */
export async function removeDemoShop(adminUrl: string): Promise<Removed> {
  const client = new pg.Client({ connectionString: adminUrl });
  await client.connect();
  try {
    await client.query('BEGIN');
    const removed = await removeAll(client);
    await client.query('COMMIT');
    return removed;
  } catch (error) {
    await client.query('ROLLBACK');
    throw error;
  } finally {
    await client.end();
  }
}

/** From which issue an enclosure was begun: the one link that goes in a circle, so it is taken off first. */
const BEGUN_FROM = 'job_enclosure_shop_id_copied_from_id_fkey';

async function removeAll(client: pg.Client): Promise<Removed> {
  const userIds = await demoUserIds(client);
  const shopIds = await demoShopIds(client, userIds);
  const tables = await shopTables(client);
  // The record is only ever added to; that guard is put back before anybody else can write.
  await client.query('ALTER TABLE audit_entry DISABLE TRIGGER only_added_to');
  let rows = 0;
  for (const shopId of shopIds) {
    await speakFor(client, 'app.shop_id', shopId);
    await client.query('UPDATE job_enclosure SET copied_from_id = NULL WHERE shop_id = $1', [shopId]);
    for (const table of tables) {
      const sql = `DELETE FROM ${client.escapeIdentifier(table)} WHERE shop_id = $1`;
      rows += (await client.query(sql, [shopId])).rowCount ?? 0;
    }
    rows += (await client.query('DELETE FROM shop WHERE id = $1', [shopId])).rowCount ?? 0;
    await speakFor(client, 'app.shop_id', '');
  }
  await client.query('ALTER TABLE audit_entry ENABLE TRIGGER only_added_to');
  return { shops: shopIds.length, rows, people: await removePeople(client, userIds) };
}

/** Also an owner that is no superuser is held by row-level security, so each step says for whom it speaks. */
async function speakFor(client: pg.Client, setting: 'app.shop_id' | 'app.user_id', value: string) {
  await client.query('SELECT set_config($1, $2, true)', [setting, value]);
}

async function demoUserIds(client: pg.Client): Promise<string[]> {
  const { rows } = await client.query<{ id: string }>(
    'SELECT id FROM "user" WHERE email = ANY($1) ORDER BY id',
    [DEMO_EMAILS],
  );
  return rows.map(({ id }) => id);
}

async function demoShopIds(client: pg.Client, userIds: readonly string[]): Promise<string[]> {
  const shopIds = new Set<string>();
  for (const userId of userIds) {
    await speakFor(client, 'app.user_id', userId);
    const { rows } = await client.query<{ shop_id: string }>(
      'SELECT shop_id FROM membership WHERE user_id = $1 ORDER BY shop_id',
      [userId],
    );
    for (const { shop_id } of rows) shopIds.add(shop_id);
  }
  const demo: string[] = [];
  for (const shopId of shopIds) {
    await speakFor(client, 'app.shop_id', shopId);
    const { rowCount } = await client.query(
      'SELECT 1 FROM audit_entry WHERE shop_id = $1 AND act = $2 AND request_id = $3',
      [shopId, DEMO_FOUNDING.act, DEMO_FOUNDING.requestId],
    );
    if (rowCount !== 0) demo.push(shopId);
  }
  return demo;
}

/** The tables that a shop owns, those that point at others first. */
async function shopTables(client: pg.Client): Promise<string[]> {
  const { rows: owned } = await client.query<{ name: string }>(
    "SELECT table_name AS name FROM information_schema.columns WHERE table_schema = 'public' AND column_name = 'shop_id' ORDER BY 1",
  );
  const { rows: links } = await client.query<{ source: string; target: string }>(
    "SELECT c.relname AS source, f.relname AS target FROM pg_constraint k JOIN pg_class c ON c.oid = k.conrelid JOIN pg_class f ON f.oid = k.confrelid WHERE k.contype = 'f' AND c.oid <> f.oid AND k.conname <> $1",
    [BEGUN_FROM],
  );
  const left = new Set(owned.map(({ name }) => name));
  const ordered: string[] = [];
  while (left.size > 0) {
    const free = [...left].filter(
      (table) => !links.some(({ source, target }) => target === table && left.has(source)),
    );
    if (free.length === 0) throw new Error(`these tables point at each other: ${[...left].join(', ')}`);
    for (const table of free) {
      left.delete(table);
      ordered.push(table);
    }
  }
  return ordered;
}

async function removePeople(client: pg.Client, userIds: readonly string[]): Promise<number> {
  for (const userId of userIds) {
    await speakFor(client, 'app.user_id', userId);
    const { rowCount } = await client.query('SELECT 1 FROM membership WHERE user_id = $1', [userId]);
    if (rowCount === 0) continue;
    const { rows } = await client.query<{ email: string }>('SELECT email FROM "user" WHERE id = $1', [
      userId,
    ]);
    throw new Error(
      `${rows[0]?.email ?? userId} belongs to another shop besides the demo. Take them off that shop first, or keep the demo as it is. Nothing was changed.`,
    );
  }
  return (await client.query('DELETE FROM "user" WHERE id = ANY($1)', [userIds])).rowCount ?? 0;
}
