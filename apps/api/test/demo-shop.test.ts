// The demo shop is made through the API on an empty database, and taken out again without touching a neighbour.
import { randomUUID } from 'node:crypto';
import { STANDINGS } from '@gusset/contracts/job';
import { SHEET_KINDS } from '@gusset/contracts/sheet';
import { DEMO_EMAILS, DEMO_PASSWORD, type DemoShop, removeDemoShop, seedDemoShop } from '@gusset/seed';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startTestApi, type TestApi, type TestClient, type TestPerson } from './support/harness.ts';
import { onServer } from './support/test-database.ts';

const FIRST_START_MS = 300_000; // on a machine that runs other tests at the same time

let api: TestApi;
let neighbour: TestPerson;
let demo: DemoShop;

beforeAll(async () => {
  api = await startTestApi();
  neighbour = await api.owner('Harbour Lane Audio');
  const input = { name: 'R. Okafor', phone: '', email: '', address: '', notes: '' };
  await neighbour.api.customer.create.mutate({ key: randomUUID(), input });
  demo = await seedDemoShop(api.deps);
}, FIRST_START_MS);
afterAll(() => api.close());

async function signIn(email: string): Promise<TestClient> {
  const answer = await api.app.inject({
    method: 'POST',
    url: '/api/auth/sign-in/email',
    headers: { origin: api.deps.env.PUBLIC_URL },
    payload: { email, password: DEMO_PASSWORD },
  });
  expect(answer.statusCode).toBe(200);
  const header = answer.headers['set-cookie'] ?? [];
  const lines = Array.isArray(header) ? header : [header];
  return api.client(lines.map((line) => line.split(';')[0]).join('; '));
}

/** Rows of every table that a shop owns, but those of one shop. */
async function rowsOutside(shopId: string): Promise<Record<string, number>> {
  return onServer(api.adminUrl, async (connection) => {
    const tables = await connection.query<{ name: string }>(
      "SELECT table_name AS name FROM information_schema.columns WHERE table_schema = 'public' AND column_name = 'shop_id' ORDER BY 1",
    );
    const counts: Record<string, number> = {};
    for (const { name } of tables.rows) {
      const { rows } = await connection.query<{ count: string }>(
        `SELECT count(*) AS count FROM ${connection.escapeIdentifier(name)} WHERE shop_id <> $1`,
        [shopId],
      );
      counts[name] = Number(rows[0]?.count);
    }
    return counts;
  });
}

describe('the demo shop', () => {
  it('has a sign-in for each role', async () => {
    const roles = await Promise.all(
      DEMO_EMAILS.map(async (email) => (await (await signIn(email)).shop.current.query()).me.role),
    );
    expect([...roles].sort()).toEqual(['estimator', 'office', 'owner', 'technician']);
  });

  it('has twelve numbered jobs, each with a customer and a vehicle', async () => {
    const owner = await signIn(demo.email);
    const { rows, total } = await owner.job.list.query({ descending: false });
    expect(total).toBe(12);
    expect(rows.map(({ number }) => number)).toEqual(Array.from({ length: 12 }, (_, i) => 2401 + i));
    expect(rows.every(({ vehicle }) => vehicle !== null && vehicle.plate !== '')).toBe(true);
  });

  it('has a job at every standing, and the money of those that are priced', async () => {
    const owner = await signIn(demo.email);
    const { rows } = await owner.job.list.query({});
    expect(new Set(rows.map(({ standing }) => standing))).toEqual(new Set(STANDINGS));
    for (const { standing, totalMinor } of rows) {
      expect(totalMinor === null).toBe(standing === 'enquiry' || standing === 'surveyed');
    }
  });

  it('has each sheet issued as far as the job has come, with nothing left behind', async () => {
    const owner = await signIn(demo.email);
    const issued = await Promise.all(
      Array.from({ length: 12 }, async (_, i) => {
        const { job, sheets } = await owner.job.byNumber.query({ number: 2401 + i });
        return { standing: job.standing, kinds: sheets.filter(({ mark }) => mark === 'issued').length };
      }),
    );
    for (const { standing, kinds } of issued) {
      if (['approved', 'in-bay', 'handed-over'].includes(standing)) expect(kinds).toBe(SHEET_KINDS.length);
      if (standing === 'enquiry') expect(kinds).toBe(0);
    }
  });

  it('is at work today, with a part that is late, a loan that goes back and leave to come', async () => {
    const owner = await signIn(demo.email);
    const { plan, loans } = await owner.plan.current.query();
    expect(plan.tasks.filter(({ state }) => state === 'running').length).toBeGreaterThan(0);
    expect(plan.findings.map(({ code }) => code)).toContain('part-overdue');
    expect(loans.length).toBeGreaterThan(0);
    const today = new Date().toISOString().slice(0, 10);
    expect((await owner.leave.list.query({ endsFrom: today })).length).toBeGreaterThan(0);
  });

  it('has quotes approved, turned down, asked about and not yet answered', async () => {
    const owner = await signIn(demo.email);
    const { rows } = await owner.job.list.query({ limit: 200 });
    const quotes = (await Promise.all(rows.map(({ id }) => owner.quote.list.query({ jobId: id })))).flat();
    const standings = quotes.map(({ standing }) => standing);
    expect(standings).toEqual(expect.arrayContaining(['approved', 'declined', 'seen']));
    const unanswered = quotes.filter(({ messages }) => messages.at(-1)?.side === 'customer');
    expect(unanswered.length).toBeGreaterThan(0);
  });

  it('lets no mail out', async () => {
    const waiting = await onServer(api.adminUrl, (connection) =>
      connection.query("SELECT 1 FROM pgboss.job WHERE name LIKE 'send%'"),
    );
    expect(waiting.rowCount).toBe(0);
  });

  it('shows one space that was measured anew after a job was drawn from it', async () => {
    const owner = await signIn(demo.email);
    const { rows } = await owner.job.list.query({ search: 'pram' });
    const { sheets } = await owner.job.byNumber.query({ number: rows[0]?.number ?? 0 });
    expect(sheets.find(({ kind }) => kind === 'survey')?.changes.length).toBeGreaterThan(0);
  });
});

describe('taking it out', () => {
  it('is refused while somebody of the demo belongs to another shop', async () => {
    const daniel = await signIn(DEMO_EMAILS[1] ?? '');
    const founded = await daniel.shop.found.mutate({
      name: 'Daniel’s own',
      ownerName: 'Daniel Osei',
      timeZone: 'Europe/Berlin',
      currency: 'EUR',
      locale: 'en-GB',
      lengthUnit: 'mm',
    });
    const before = await rowsOutside(founded.shopId);
    await expect(removeDemoShop(api.adminUrl)).rejects.toThrow(
      /daniel@.*belongs to another shop.*Nothing was changed/,
    );
    expect(await rowsOutside(founded.shopId)).toEqual(before);
    await onServer(api.adminUrl, (connection) =>
      connection.query('DELETE FROM membership WHERE shop_id = $1', [founded.shopId]),
    );
  });

  it('removes its rows and its people, and leaves the neighbour and the guard of the record', async () => {
    const before = await rowsOutside(demo.shopId);
    const removed = await removeDemoShop(api.adminUrl);
    expect(removed).toMatchObject({ shops: 1, people: DEMO_EMAILS.length });
    expect(await rowsOutside(randomUUID())).toEqual(before);
    expect((await neighbour.api.customer.list.query({})).total).toBe(1);
    const rewriting = onServer(api.adminUrl, (connection) =>
      connection.query("UPDATE audit_entry SET act = 'x'"),
    );
    await expect(rewriting).rejects.toThrow(/only added to/);
  });

  it('finds nothing the second time', async () => {
    expect(await removeDemoShop(api.adminUrl)).toEqual({ shops: 0, rows: 0, people: 0 });
  });

  it(
    'makes room for a new one',
    async () => {
      const again = await seedDemoShop(api.deps);
      expect(again.shopId).not.toBe(demo.shopId);
      expect((await (await signIn(again.email)).job.list.query({})).total).toBe(12);
    },
    FIRST_START_MS,
  );
});
