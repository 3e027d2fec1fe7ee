import { randomUUID } from 'node:crypto';
import type pg from 'pg';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { verifyAudit } from '../src/audit/verify-audit.ts';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';
import { onServer } from './support/test-database.ts';

let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
});
beforeEach(async () => {
  owner = await api.owner();
});
afterAll(() => api.close());

const customer = (name: string) => ({ name, phone: '', email: '', address: '', notes: '' });

async function someHistory(): Promise<string> {
  const made = await owner.api.customer.create.mutate({ key: randomUUID(), input: customer('Before') });
  await owner.api.customer.change.mutate({ id: made.id, version: 1, input: customer('After') });
  await owner.api.customer.archive.mutate({ id: made.id, archived: true });
  return made.id;
}

const verify = () =>
  onServer(api.adminUrl, (client) =>
    verifyAudit(async <Row extends object>(sql: string, values: readonly unknown[]) => {
      const { rows } = await client.query<Row & pg.QueryResultRow>(sql, [...values]);
      return rows;
    }),
  );

const chainOf = async (person: TestPerson) => (await verify()).find(({ shopId }) => shopId === person.shopId);

/** As nobody but the database's administrator can: the triggers that forbid it are off for this one statement. */
const tamper = (sql: string, values: readonly unknown[]) =>
  onServer(api.adminUrl, async (client) => {
    await client.query("SET session_replication_role = 'replica'");
    await client.query(sql, [...values]);
  });

describe('the record of what happened', () => {
  it('says who did what, with the values before and after, newest first', async () => {
    const id = await someHistory();
    const { rows } = await owner.api.audit.list.query({ subject: 'customer', subjectId: id });
    expect(rows.map(({ act }) => act)).toEqual(['customer.archived', 'customer.changed', 'customer.made']);
    expect(rows[1]).toMatchObject({
      actorName: 'Mira Ilves',
      before: { name: 'Before' },
      after: { name: 'After' },
    });
  });

  it('is read page by page and searched', async () => {
    await someHistory();
    const first = await owner.api.audit.list.query({ limit: 2 });
    expect(first.rows).toHaveLength(2);
    const rest = await owner.api.audit.list.query({ limit: 50, beforeSeq: first.nextBeforeSeq });
    expect(rest.rows.map(({ act }) => act)).toEqual(['customer.made', 'shop.founded']);
    expect(rest.nextBeforeSeq).toBeNull();
    const found = await owner.api.audit.list.query({ search: 'founded' });
    expect(found.rows.map(({ act }) => act)).toEqual(['shop.founded']);
  });

  it('is for owners', async () => {
    const estimator = await api.member(owner, 'estimator');
    expect((await shopErrorOf(estimator.api.audit.list.query({}))).code).toBe('NOT_ALLOWED');
  });
});

describe('the chain', () => {
  it('holds after ordinary work', async () => {
    await someHistory();
    expect(await chainOf(owner)).toMatchObject({ entries: 4, broken: null });
  });

  it('names the first entry whose text was altered, even by the administrator', async () => {
    await someHistory();
    await tamper(`UPDATE audit_entry SET after = '{"name":"Other"}' WHERE shop_id = $1 AND seq = 3`, [
      owner.shopId,
    ]);
    expect((await chainOf(owner))?.broken).toEqual({ seq: 3, why: 'its text was altered' });
  });

  it('names an entry that was taken out, in the middle and at the end', async () => {
    await someHistory();
    await tamper('DELETE FROM audit_entry WHERE shop_id = $1 AND seq = 4', [owner.shopId]);
    expect((await chainOf(owner))?.broken).toEqual({ seq: 4, why: 'the entry is missing' });
    await tamper('DELETE FROM audit_entry WHERE shop_id = $1 AND seq = 2', [owner.shopId]);
    expect((await chainOf(owner))?.broken).toEqual({ seq: 2, why: 'the entry is missing' });
  });

  it('is not altered by the program’s own role', async () => {
    await someHistory();
    const altering = api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.auditEntry.updateMany({ where: { shopId: owner.shopId }, data: { act: 'nothing' } }),
    );
    await expect(altering).rejects.toThrow(/permission denied|denied access/);
  });
});
