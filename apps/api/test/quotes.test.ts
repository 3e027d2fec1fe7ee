import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { QUOTE_COOKIE } from '../src/quotes/quote-link.ts';
import { PUBLIC_URL, shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';
import { pricedJob } from './support/priced-job.ts';
import { onServer } from './support/test-database.ts';

const NOON = Date.parse('2026-11-24T12:00:00Z');
const DAY_MS = 86_400_000;
let now = NOON;
let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi({ clock: { now: () => new Date(now) } });
  owner = await api.owner();
});
beforeEach(() => {
  now = NOON;
});
afterAll(() => api.close());

async function sentQuote(person = owner) {
  const job = await pricedJob(api, person);
  const made = await person.api.quote.make.mutate({ key: randomUUID(), jobId: job.id });
  const { link } = await person.api.quote.send.mutate({ key: randomUUID(), quoteId: made.id, to: null });
  const token = String(link).slice(`${PUBLIC_URL}/q/`.length);
  const customer = api.client(`${QUOTE_COOKIE}=${token}`);
  return { job, made, token, customer };
}

async function readOpen(customer: Awaited<ReturnType<typeof sentQuote>>['customer']) {
  const page = await customer.customerQuote.read.query();
  if (page.state === 'ended') throw new Error('the link has ended');
  return page;
}

const auditOf = (subjectId: string) =>
  api.deps.doors.inShop(owner.shopId, (tx) =>
    tx.auditEntry.findMany({ where: { shopId: owner.shopId, subjectId }, select: { act: true } }),
  );
const mailsOf = (subjectId: string) =>
  api.deps.doors.inShop(owner.shopId, (tx) =>
    tx.mailMessage.findMany({
      where: { shopId: owner.shopId, subjectId },
      select: { toAddress: true, subject: true, text: true },
    }),
  );
const actsOf = async (subjectId: string, act: string) =>
  (await auditOf(subjectId)).filter((entry) => entry.act === act).length;

describe('a quote', () => {
  it('is numbered within its job, and the same key makes one', async () => {
    const job = await pricedJob(api, owner);
    const key = randomUUID();
    const sends = Array.from({ length: 20 }, () => owner.api.quote.make.mutate({ key, jobId: job.id }));
    expect(new Set((await Promise.all(sends)).map(({ id }) => id)).size).toBe(1);
    const second = await owner.api.quote.make.mutate({ key: randomUUID(), jobId: job.id });
    expect(second).toMatchObject({ version: 2, number: `${job.number}/2`, standing: 'draft' });
  });

  it('holds the total of the price sheet, and no cost anywhere', async () => {
    const { made, customer } = await sentQuote();
    const page = await readOpen(customer);
    // 2 h x 75.00 + 4 % supplies + a fee of 50.00 = 206.00; 20 % tax
    expect(made.totalMinor).toBe(24_720);
    expect(page.snapshot).toMatchObject({ subtotalMinor: 20_600, totalMinor: 24_720, depositMinor: 9_888 });
    const lines = page.snapshot.sections.flatMap((section) => section.lines);
    expect(lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0)).toBe(20_600);
    expect(JSON.stringify(page)).not.toMatch(/cost|margin/i);
  });

  it('stays as it was when prices, the customer and the price sheet change', async () => {
    const { job, customer } = await sentQuote();
    const before = await readOpen(customer);
    const shop = (await owner.api.shop.current.query()).shop;
    await api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.shop.update({
        where: { id: owner.shopId },
        data: { name: 'Renamed', settings: { ...shop.settings, labourRateMinor: 9_900 } },
        select: { id: true },
      }),
    );
    const sheet = await owner.api.sheet.price.read.query({ jobId: job.id });
    expect(sheet.changes.map(({ label }) => label)).toContain('Hourly rate');
    await owner.api.sheet.price.issue.mutate({ jobId: job.id, version: sheet.version });
    const after = await readOpen(customer);
    await api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.shop.update({
        where: { id: owner.shopId },
        data: { name: shop.name, settings: { ...shop.settings } },
        select: { id: true },
      }),
    );
    expect(after.snapshot).toEqual(before.snapshot);
    expect(after.snapshotSha256).toBe(before.snapshotSha256);
  });

  it('is not made while the customer would not read what it is for', async () => {
    const job = await pricedJob(api, owner, { scope: '' });
    const refused = await shopErrorOf(owner.api.quote.make.mutate({ key: randomUUID(), jobId: job.id }));
    expect(refused).toMatchObject({ code: 'NOT_ACCEPTED', fields: [{ path: 'scope' }] });
  });

  it('says what changed from the version before', async () => {
    const { job, made } = await sentQuote();
    expect(await owner.api.quote.changes.query({ quoteId: made.id })).toBeNull();
    const sheet = await owner.api.sheet.price.read.query({ jobId: job.id });
    const saved = await owner.api.sheet.price.save.mutate({
      jobId: job.id,
      version: sheet.version,
      input: { ...sheet.input, extraLines: [] },
    });
    await owner.api.sheet.price.issue.mutate({ jobId: job.id, version: saved.version });
    const next = await owner.api.quote.make.mutate({ key: randomUUID(), jobId: job.id });
    const changes = await owner.api.quote.changes.query({ quoteId: next.id });
    expect(changes).toMatchObject({ removed: [{ description: 'Delivery' }], grandDifferenceMinor: -6_000 });
    expect(JSON.stringify(changes)).not.toMatch(/cost|margin/i);
  });
});

describe('sending', () => {
  it('mails once and notes it once for one key, however often it is sent', async () => {
    const job = await pricedJob(api, owner);
    const made = await owner.api.quote.make.mutate({ key: randomUUID(), jobId: job.id });
    const send = { key: randomUUID(), quoteId: made.id, to: 'customer@example.com' };
    const sent = await Promise.all(Array.from({ length: 20 }, () => owner.api.quote.send.mutate(send)));
    expect(new Set(sent.map(({ quote }) => quote.sentAt)).size).toBe(1);
    expect(await mailsOf(made.id)).toHaveLength(1);
    expect(await actsOf(made.id, 'quote.sent')).toBe(1);
    expect((await owner.api.job.byNumber.query({ number: job.number })).job.standing).toBe('quoted');
  });

  it('gives the same link for the same key, and keeps no more than its hash', async () => {
    const job = await pricedJob(api, owner);
    const made = await owner.api.quote.make.mutate({ key: randomUUID(), jobId: job.id });
    const send = { key: randomUUID(), quoteId: made.id, to: null };
    const first = await owner.api.quote.send.mutate(send);
    expect((await owner.api.quote.send.mutate(send)).link).toBe(first.link);
    const token = String(first.link).slice(`${PUBLIC_URL}/q/`.length);
    expect(token).toMatch(/^gqt_[\w-]{43}$/);
    const stored = await onServer(api.adminUrl, (client) =>
      client.query(
        `SELECT (SELECT count(*)::int FROM access_token WHERE token_hash = $1) AS hashes,
                (SELECT count(*)::int FROM access_token t WHERE t::text LIKE '%' || $2 || '%') +
                (SELECT count(*)::int FROM idempotency_key k WHERE k::text LIKE '%' || $2 || '%') +
                (SELECT count(*)::int FROM audit_entry a WHERE a::text LIKE '%' || $2 || '%') AS plain`,
        [createHash('sha256').update(token).digest('hex'), token],
      ),
    );
    expect(stored.rows[0]).toEqual({ hashes: 1, plain: 0 });
  });

  it('of a newer version closes the older, which says so and takes no approval', async () => {
    const { job, customer } = await sentQuote();
    const page = await readOpen(customer);
    const next = await owner.api.quote.make.mutate({ key: randomUUID(), jobId: job.id });
    await owner.api.quote.send.mutate({ key: randomUUID(), quoteId: next.id, to: null });
    expect((await readOpen(customer)).state).toBe('superseded');
    const refused = await shopErrorOf(
      customer.customerQuote.approve.mutate({ name: 'R. Okafor', snapshotSha256: page.snapshotSha256 }),
    );
    expect(refused.code).toBe('QUOTE_CLOSED');
  });
});

describe('the customer', () => {
  it('changes nothing by reading', async () => {
    const { made, customer } = await sentQuote();
    const acts = await auditOf(made.id);
    await readOpen(customer);
    await customer.customerQuote.known.query({ token: 'gqt_x' });
    const [quote] = await owner.api.quote.list.query({ jobId: (await rowOf(made.id)).jobId });
    expect(quote).toMatchObject({ standing: 'sent', firstSeenAt: null });
    expect(await auditOf(made.id)).toEqual(acts);
    await customer.customerQuote.seen.mutate();
    await customer.customerQuote.seen.mutate();
    expect(await actsOf(made.id, 'quote.seen')).toBe(1);
  });

  it('approves exactly once under fifty parallel posts', async () => {
    const { job, made, customer } = await sentQuote();
    const { snapshotSha256 } = await readOpen(customer);
    const answers = await Promise.all(
      Array.from({ length: 50 }, (_, i) =>
        customer.customerQuote.approve.mutate({ name: `R. Okafor ${i}`, snapshotSha256 }),
      ),
    );
    const names = new Set(answers.map((page) => (page.state === 'ended' ? '' : page.approvedByName)));
    expect(names.size).toBe(1);
    expect(await actsOf(made.id, 'quote.approved')).toBe(1);
    expect(await mailsOf(made.id)).toEqual([
      expect.objectContaining({ toAddress: owner.email, subject: `Quote ${made.number} is approved` }),
    ]);
    const row = await rowOf(made.id);
    expect(row).toMatchObject({ approvedFrom: '127.0.0.1', approvedByName: [...names][0] });
    const opened = await owner.api.job.byNumber.query({ number: job.number });
    expect(opened.job).toMatchObject({ standing: 'approved', totalMinor: made.totalMinor });
  });

  it('cannot approve another picture than the one behind the link', async () => {
    const { customer, made } = await sentQuote();
    const snapshotSha256 = 'a'.repeat(64);
    const refused = await shopErrorOf(
      customer.customerQuote.approve.mutate({ name: 'R. Okafor', snapshotSha256 }),
    );
    expect(refused.code).toBe('QUOTE_CLOSED');
    expect((await rowOf(made.id)).approvedAt).toBeNull();
  });

  it('cannot approve after the last valid day, and can on it', async () => {
    const late = await sentQuote();
    const last = await sentQuote();
    const { snapshotSha256 } = await readOpen(late.customer);
    const ofLast = await readOpen(last.customer);
    now = NOON + 21 * DAY_MS;
    const approved = await last.customer.customerQuote.approve.mutate({
      name: 'R. Okafor',
      snapshotSha256: ofLast.snapshotSha256,
    });
    expect(approved.state).toBe('approved');
    now = NOON + 22 * DAY_MS;
    expect((await readOpen(late.customer)).state).toBe('expired');
    const refused = await shopErrorOf(
      late.customer.customerQuote.approve.mutate({ name: 'R. Okafor', snapshotSha256 }),
    );
    expect(refused.code).toBe('QUOTE_EXPIRED');
  });

  it('turns it down, which closes it', async () => {
    const { job, customer, made } = await sentQuote();
    const { snapshotSha256 } = await readOpen(customer);
    await customer.customerQuote.decline.mutate({ snapshotSha256 });
    const again = await customer.customerQuote.decline.mutate({ snapshotSha256 });
    expect(again.state).toBe('declined');
    expect(await actsOf(made.id, 'quote.declined')).toBe(1);
    const refused = await shopErrorOf(
      customer.customerQuote.approve.mutate({ name: 'R. Okafor', snapshotSha256 }),
    );
    expect(refused.code).toBe('QUOTE_CLOSED');
    expect((await owner.api.job.byNumber.query({ number: job.number })).job.standing).toBe('declined');
  });

  it('asks, is answered, and both read it', async () => {
    const { customer, made } = await sentQuote();
    const ask = { key: randomUUID(), name: 'R. Okafor', text: 'Is carpet possible in grey?' };
    await Promise.all(Array.from({ length: 5 }, () => customer.customerQuote.ask.mutate(ask)));
    const answered = await owner.api.quote.answer.mutate({
      key: randomUUID(),
      quoteId: made.id,
      text: 'Yes, same price.',
    });
    const page = await readOpen(customer);
    expect(page.messages.map(({ side, text }) => [side, text])).toEqual([
      ['customer', 'Is carpet possible in grey?'],
      ['shop', 'Yes, same price.'],
    ]);
    expect(answered.messages).toHaveLength(2);
  });

  it('gets the paper of this quote', async () => {
    const { token, made } = await sentQuote();
    const answer = await api.app.inject({
      url: '/api/papers/quote',
      headers: { cookie: `${QUOTE_COOKIE}=${token}` },
    });
    expect(answer.headers['content-type']).toBe('application/pdf');
    expect(answer.headers['cache-control']).toBe('no-store');
    expect(answer.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    expect((await api.app.inject({ url: '/api/papers/quote' })).statusCode).toBe(404);
    expect((await api.app.inject({ url: `/api/papers/quote/${made.id}` })).statusCode).toBe(401);
  });
});

describe('a link', () => {
  it('that was taken back tells no more than whom to ask', async () => {
    const { customer, made, token } = await sentQuote();
    const { snapshotSha256 } = await readOpen(customer);
    const after = await owner.api.quote.withdrawLink.mutate({ quoteId: made.id });
    expect(after.standing).toBe('ended');
    expect(await customer.customerQuote.read.query()).toEqual({
      state: 'ended',
      shopName: 'Quarry Road Sound',
      phone: '',
      email: '',
    });
    const refused = await shopErrorOf(
      customer.customerQuote.approve.mutate({ name: 'R. Okafor', snapshotSha256 }),
    );
    expect(refused.code).toBe('LINK_ENDED');
    const paper = await api.app.inject({
      url: '/api/papers/quote',
      headers: { cookie: `${QUOTE_COOKIE}=${token}` },
    });
    expect(paper.statusCode).toBe(404);
  });

  it('that nobody made is not there, and who goes on guessing has to wait', async () => {
    const { customer } = await sentQuote();
    const guess = (address: string) =>
      api.app.inject({
        url: '/api/trpc/customerQuote.read',
        remoteAddress: address,
        headers: { cookie: `${QUOTE_COOKIE}=gqt_${randomBytes(32).toString('base64url')}` },
      });
    const codes: number[] = [];
    for (let i = 0; i < 65; i += 1) codes.push((await guess('203.0.113.7')).statusCode);
    expect(codes.slice(0, 60)).toEqual(Array.from({ length: 60 }, () => 404));
    expect(codes.slice(60)).toEqual(Array.from({ length: 5 }, () => 429));
    expect((await guess('203.0.113.8')).statusCode).toBe(404);
    expect((await readOpen(customer)).state).toBe('open');
    now += 11 * 60_000;
    expect((await guess('203.0.113.7')).statusCode).toBe(404);
  });

  it('opens nothing without the cookie', async () => {
    expect((await shopErrorOf(api.client('').customerQuote.read.query())).code).toBe('LINK_ENDED');
  });
});

describe('who may', () => {
  it('not a technician: no price, no quotes, no paper', async () => {
    const { job, made } = await sentQuote();
    const technician = await api.member(owner, 'technician');
    const at = { jobId: job.id };
    expect((await shopErrorOf(technician.api.sheet.price.read.query(at))).code).toBe('NOT_ALLOWED');
    expect((await shopErrorOf(technician.api.quote.list.query(at))).code).toBe('NOT_ALLOWED');
    const paper = await api.app.inject({
      url: `/api/papers/quote/${made.id}`,
      headers: { cookie: technician.cookies },
    });
    expect(paper.statusCode).toBe(403);
    const opened = await technician.api.job.byNumber.query({ number: job.number });
    expect(opened.job.totalMinor).toBeNull();
    expect(opened.sheets.some(({ kind }) => kind === 'price')).toBe(false);
  });

  it('not another shop, by any way in', async () => {
    const { job, made } = await sentQuote();
    const other = await api.owner('Harbour Lane Audio');
    const at = { quoteId: made.id };
    const key = randomUUID();
    const { quote } = other.api;
    const tries: readonly Promise<unknown>[] = [
      quote.list.query({ jobId: job.id }),
      quote.make.mutate({ key, jobId: job.id }),
      quote.read.query(at),
      quote.changes.query(at),
      quote.send.mutate({ key, ...at, to: null }),
      quote.withdrawLink.mutate(at),
      quote.answer.mutate({ key, ...at, text: 'Hello' }),
    ];
    const refusals = await Promise.all(tries.map(shopErrorOf));
    expect(refusals.map(({ code }) => code)).toEqual(tries.map(() => 'NOT_FOUND'));
    const paper = await api.app.inject({
      url: `/api/papers/quote/${made.id}`,
      headers: { cookie: other.cookies },
    });
    expect(paper.statusCode).toBe(404);
    expect(await mailsOf(made.id)).toEqual([]);
  });
});

function rowOf(id: string) {
  return api.deps.doors.inShop(owner.shopId, (tx) =>
    tx.quote.findUniqueOrThrow({ where: { shopId_id: { shopId: owner.shopId, id } } }),
  );
}
