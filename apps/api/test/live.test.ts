// What one person changes reaches the screens of the others: through any API process, within their shop only.
import { randomUUID } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { buildApp } from '../src/app.ts';
import { buildDeps, type RunningDeps } from '../src/build-deps.ts';
import { startTestApi, type TestApi, type TestPerson } from './support/harness.ts';
import { type HeardLive, hearLive } from './support/live-stream.ts';
import { onServer } from './support/test-database.ts';

let api: TestApi;
let address: string;
/** Another API on the same database, with a pool and a LISTEN of its own. */
let other: { readonly running: RunningDeps; readonly app: Awaited<ReturnType<typeof buildApp>> };
let otherAddress: string;
let owner: TestPerson;
const listeners: HeardLive[] = [];

beforeAll(async () => {
  api = await startTestApi();
  address = await api.app.listen({ host: '127.0.0.1', port: 0 });
  const running = await buildDeps(api.deps.env, { superviseQueue: false, limitRate: false });
  const app = await buildApp(running.deps, { limitRate: false });
  otherAddress = await app.listen({ host: '127.0.0.1', port: 0 });
  other = { running, app };
});
beforeEach(async () => {
  owner = await api.owner();
});
afterEach(() => {
  for (const listener of listeners.splice(0)) listener.leave();
});
afterAll(async () => {
  await other.app.close();
  await other.running.close();
  await api.close();
});

async function hear(at: string, cookies: string): Promise<HeardLive> {
  const listener = await hearLive(at, cookies);
  listeners.push(listener);
  return listener;
}

const newCustomer = async (person: TestPerson) => {
  const input = { name: 'R. Okafor', phone: '', email: '', address: '', notes: '' };
  return (await person.api.customer.create.mutate({ key: randomUUID(), input })).id;
};
const isAbout = (id: string) => (news: unknown) =>
  typeof news === 'object' && news !== null && 'id' in news && news.id === id;

describe('a change', () => {
  it('is heard through another API process, without what it changed to', async () => {
    const screen = await hear(otherAddress, owner.cookies);
    expect(screen.status).toBe(200);
    expect(screen.headers['content-type']).toBe('text/event-stream');
    const id = await newCustomer(owner);
    expect(await screen.until(isAbout(id))).toEqual({ act: 'customer.made', noun: 'customer', id });
  });

  it('is heard when a sheet is saved and when it is issued', async () => {
    const job = await owner.api.job.open.mutate({
      key: randomUUID(),
      job: { title: 'Bass box', customerId: await newCustomer(owner) },
    });
    const colleague = await api.member(owner, 'technician');
    const screen = await hear(otherAddress, colleague.cookies);
    const opened = await owner.api.sheet.brief.read.query({ jobId: job.id });
    const saved = await owner.api.sheet.brief.save.mutate({
      jobId: job.id,
      version: opened.version,
      input: { ...opened.input, wish: 'Deep, for long trips', aim: 'deep' },
    });
    const about = (act: string) => (news: unknown) =>
      isAbout(job.id)(news) && JSON.stringify(news).includes(`"${act}"`);
    expect(await screen.until(about('sheet.saved'))).toMatchObject({ noun: 'sheet.brief' });
    await owner.api.sheet.brief.issue.mutate({ jobId: job.id, version: saved.version });
    expect(await screen.until(about('sheet.issued'))).toMatchObject({ noun: 'sheet.brief' });
  });

  it('is never heard in another shop', async () => {
    const stranger = await api.owner('Tern Street Audio');
    const screens = [await hear(address, stranger.cookies), await hear(otherAddress, stranger.cookies)];
    const own = await hear(otherAddress, owner.cookies);
    const id = await newCustomer(owner);
    await own.until(isAbout(id));
    const theirs = await newCustomer(stranger); // what they do hear comes after it on the same wire
    for (const screen of screens) {
      await screen.until(isAbout(theirs));
      expect(screen.heard.filter(isAbout(id))).toEqual([]);
    }
  });

  it('that was rolled back is not told', async () => {
    const screen = await hear(address, owner.cookies);
    const id = await newCustomer(owner);
    const refused = owner.api.customer.change.mutate({
      id,
      version: 99,
      input: { name: 'Other', phone: '', email: '', address: '', notes: '' },
    });
    await expect(refused).rejects.toThrow();
    const later = await newCustomer(owner);
    await screen.until(isAbout(later));
    expect(screen.heard.filter(isAbout(id))).toHaveLength(1); // that it was made
  });
});

describe('a stream', () => {
  it('is for those who are signed in, in a shop', async () => {
    expect((await hear(address, '')).status).toBe(401);
    const homeless = await api.signUp('Jonas Sato');
    expect((await hear(address, homeless.cookies)).status).toBe(403);
  });

  it('ends with the sign-out, wherever that was', async () => {
    const screen = await hear(otherAddress, owner.cookies);
    const answer = await api.app.inject({
      method: 'POST',
      url: '/api/auth/sign-out',
      headers: { cookie: owner.cookies, origin: api.deps.env.PUBLIC_URL },
      payload: {},
    });
    expect(answer.statusCode).toBe(200);
    await screen.ended;
    expect((await hear(otherAddress, owner.cookies)).status).toBe(401);
  });

  it('ends with the membership, and the others stay', async () => {
    const colleague = await api.member(owner, 'technician');
    const gone = await hear(otherAddress, colleague.cookies);
    const stays = await hear(otherAddress, owner.cookies);
    const members = await owner.api.people.members.query();
    const membershipId = members.find(({ name }) => name === colleague.name)?.membershipId ?? '';
    await owner.api.people.remove.mutate({ membershipId });
    await gone.ended;
    expect(gone.heard.filter(isAbout(membershipId))).toEqual([]);
    const id = await newCustomer(owner);
    await stays.until(isAbout(id));
  });

  it('is one of a dozen at most for one person', async () => {
    const screens: HeardLive[] = [];
    for (let count = 0; count < 12; count += 1) screens.push(await hear(address, owner.cookies));
    expect(screens.map(({ status }) => status)).toEqual(Array.from({ length: 12 }, () => 200));
    expect((await hear(address, owner.cookies)).status).toBe(429);
    screens[0]?.leave();
    await wait(200);
    expect((await hear(address, owner.cookies)).status).toBe(200);
  });

  it('says that something may have been missed when the database’s line was cut, and hears on', async () => {
    const screen = await hear(address, owner.cookies);
    await onServer(api.adminUrl, (client) =>
      client.query(
        `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
         WHERE application_name = 'gusset-live' AND datname = current_database()`,
      ),
    );
    await screen.until((news) => news === 'missed');
    const id = await newCustomer(owner);
    await screen.until(isAbout(id));
  });

  it('does not keep the program from ending', async () => {
    const running = await buildDeps(api.deps.env, { superviseQueue: false, limitRate: false });
    const app = await buildApp(running.deps, { limitRate: false });
    const screen = await hear(await app.listen({ host: '127.0.0.1', port: 0 }), owner.cookies);
    expect(screen.status).toBe(200);
    await app.close();
    await screen.ended;
    await running.close();
  });
});
