// What the database itself promises about shops, read from its catalogue: a table that a migration forgets fails here.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startTestApi, type TestApi } from './support/harness.ts';
import { onServer } from './support/test-database.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

const query = async <Row extends object>(sql: string): Promise<Row[]> =>
  onServer(api.adminUrl, async (client) => (await client.query<Row & Record<string, unknown>>(sql)).rows);

/** Belong to no shop: sign-in, the shop itself (with policies of its own), the list of migrations. */
const OF_NO_SHOP = ['_prisma_migrations', 'account', 'rate_limit', 'session', 'shop', 'user', 'verification'];

type ShopTable = {
  readonly name: string;
  readonly enabled: boolean;
  readonly forced: boolean;
  readonly notnull: boolean;
  readonly firstkey: string | null;
};

const TABLES = `
  SELECT c.relname AS name, c.relrowsecurity AS enabled, c.relforcerowsecurity AS forced,
         a.attnotnull AS notnull,
         (SELECT k.attname FROM pg_index i JOIN pg_attribute k
            ON k.attrelid = c.oid AND k.attnum = i.indkey[0]
          WHERE i.indrelid = c.oid AND i.indisprimary) AS firstkey
  FROM pg_class c
  JOIN pg_namespace n ON n.oid = c.relnamespace AND n.nspname = 'public'
  LEFT JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'shop_id' AND NOT a.attisdropped
  WHERE c.relkind IN ('r', 'p') AND (a.attname IS NOT NULL) = `;

describe('every table', () => {
  it('belongs to a shop, or is one of the few that belong to none', async () => {
    const others = await query<{ name: string }>(`${TABLES} false`);
    expect(others.map(({ name }) => name).toSorted()).toEqual(OF_NO_SHOP);
  });

  it('of a shop is behind row security that its owner cannot step around', async () => {
    const tables = await query<ShopTable>(`${TABLES} true`);
    expect(tables.length).toBeGreaterThan(20);
    for (const table of tables) {
      expect(table).toMatchObject({ enabled: true, forced: true, notnull: true, firstkey: 'shop_id' });
    }
  });

  it('of a shop checks what is read and what is written', async () => {
    const policies = await query<{
      name: string;
      policy: string;
      reads: string | null;
      writes: string | null;
    }>(`
      SELECT tablename AS name, policyname AS policy, qual AS reads, with_check AS writes
      FROM pg_policies WHERE schemaname = 'public' AND cmd = 'ALL'`);
    const tables = await query<ShopTable>(`${TABLES} true`);
    for (const { name } of tables) {
      const own = policies.find((policy) => policy.name === name && policy.policy === 'own_shop');
      expect(own).toMatchObject({
        reads: '(shop_id = gusset_shop())',
        writes: '(shop_id = gusset_shop())',
      });
    }
  });

  it('of a shop refers to other tables of the same shop only', async () => {
    const keys = await query<{ name: string; columns: string[]; target: string }>(`
      SELECT c.conname AS name, t.relname AS target,
             ARRAY(SELECT a.attname::text FROM unnest(c.conkey) k JOIN pg_attribute a
                   ON a.attrelid = c.conrelid AND a.attnum = k) AS columns
      FROM pg_constraint c
      JOIN pg_class t ON t.oid = c.confrelid
      JOIN pg_attribute s ON s.attrelid = c.conrelid AND s.attname = 'shop_id'
      WHERE c.contype = 'f'`);
    expect(keys.length).toBeGreaterThan(10);
    const crossing = keys.filter(({ columns, target }) => target !== 'user' && !columns.includes('shop_id'));
    expect(crossing).toEqual([]);
  });
});

describe('the program’s role', () => {
  it('owns nothing, bypasses nothing and makes nothing', async () => {
    const [role] = await query(`
      SELECT rolsuper, rolbypassrls, rolcreaterole, rolcreatedb,
             (SELECT count(*)::int FROM pg_class WHERE relowner = r.oid
               AND relnamespace = 'public'::regnamespace) AS owned,
             has_schema_privilege(r.rolname, 'public', 'CREATE') AS creates
      FROM pg_roles r WHERE rolname = 'gusset_api'`);
    expect(role).toEqual({
      rolsuper: false,
      rolbypassrls: false,
      rolcreaterole: false,
      rolcreatedb: false,
      owned: 0,
      creates: false,
    });
  });

  it('is the one that the program works as', async () => {
    const rows = await api.deps.doors.signIn.$queryRaw<{ role: string }[]>`SELECT current_user::text AS role`;
    expect(rows).toEqual([{ role: 'gusset_api' }]);
  });

  it('sees no row of any shop before it says for which shop it speaks', async () => {
    await api.owner();
    const tables = await query<ShopTable>(`${TABLES} true`);
    for (const { name } of tables) {
      const rows = await api.deps.doors.signIn.$queryRawUnsafe<{ count: number }[]>(
        `SELECT count(*)::int AS count FROM "${name}"`,
      );
      expect([name, rows[0]?.count]).toEqual([name, 0]);
    }
  });

  it('cannot write a row into another shop', async () => {
    const mine = await api.owner();
    const theirs = await api.owner('Harbour Lane Audio');
    const writing = api.deps.doors.inShop(mine.shopId, (tx) =>
      tx.customer.create({ data: { shopId: theirs.shopId, name: 'Smuggled' } }),
    );
    await expect(writing).rejects.toThrow(/row-level security|P2039/);
  });
});
