// Two API processes and a worker of its own on one PostgreSQL, as in the larger arrangement, but without containers:
// what one acknowledges the other knows, and no process is missed when it is killed.
import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { migrate } from '@gusset/database';
import { createTRPCClient, httpLink, TRPCClientError } from '@trpc/client';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { AppRouter } from '../src/trpc/app-router.ts';
import { PUBLIC_URL, type TestClient } from './support/harness.ts';
import { hearLive } from './support/live-stream.ts';
import { onServer } from './support/test-database.ts';

const SERVER = path.resolve(import.meta.dirname, '../src/server.ts');
const PASSWORD = 'lantern copper meadow violin';
const EMAIL = 'mira@quarry-road.example';
const READY_WITHIN_MS = 30_000;
const MAIL_WITHIN_MS = 15_000;

type Process = { readonly child: ChildProcess; readonly url: string };

const database = `t_${randomUUID().replaceAll('-', '')}`;
const filesDir = mkdtempSync(path.join(tmpdir(), 'gusset-cluster-'));
const mails: ParsedMail[] = [];
let mailServer: SMTPServer;
let first: Process;
let second: Process;
let worker: Process;
let cookies = '';

beforeAll(async () => {
  await onServer(inject('adminUrl'), (connection) => connection.query(`CREATE DATABASE ${database}`));
  const databaseUrl = new URL(inject('adminUrl'));
  databaseUrl.pathname = `/${database}`;
  await migrate(databaseUrl.toString());
  const mailPort = await freePort();
  mailServer = await catchMail(mailPort);
  const env = {
    DATABASE_URL: databaseUrl.toString(), // each pool steps down to the API's role
    DATABASE_POOL: '4',
    AUTH_SECRET: 'cluster-secret-cluster-secret-cluster',
    FILES_DIR: filesDir,
    PUBLIC_URL,
    SMTP_URL: `smtp://127.0.0.1:${mailPort}`,
    LOG_LEVEL: 'error',
  };
  [first, second, worker] = await Promise.all([
    startProcess(env, []),
    startProcess(env, []),
    startProcess(env, ['worker']),
  ]);
  const { cookie } = await post(first, '/api/auth/sign-up/email', {
    name: 'Mira Ilves',
    email: EMAIL,
    password: PASSWORD,
  });
  cookies = cookie;
  await clientOf(first, cookies).shop.found.mutate({
    name: 'Quarry Road Sound',
    ownerName: 'Mira Ilves',
    timeZone: 'Europe/Berlin',
    currency: 'EUR',
    locale: 'en-GB',
    lengthUnit: 'mm',
  });
});

afterAll(async () => {
  for (const { child } of [first, second, worker]) await kill(child, 'SIGTERM');
  await new Promise<void>((resolve) => mailServer.close(resolve));
  await onServer(inject('adminUrl'), (connection) =>
    connection.query(`DROP DATABASE ${database} WITH (FORCE)`),
  );
  rmSync(filesDir, { recursive: true, force: true });
});

describe('two API processes on one database', () => {
  it('show through the second what was made through the first', async () => {
    const job = await openJob(clientOf(first, cookies), 'Bass box behind the seat');
    const seen = await clientOf(second, cookies).job.byNumber.query({ number: job.number });
    expect(seen.job).toMatchObject({ id: job.id, title: 'Bass box behind the seat' });
  });

  it('tell the screens at the second what was changed at the first', async () => {
    const screen = await hearLive(second.url, cookies);
    const { id } = await openJob(clientOf(first, cookies), 'Told at once');
    const news = { act: 'job.opened', noun: 'job', id };
    expect(await screen.until((heard) => isDeepStrictEqual(heard, news))).toEqual(news);
    screen.leave();
  });

  it('hand out job numbers without a double or a gap', async () => {
    const customerId = await newCustomer(clientOf(first, cookies));
    const jobs = await Promise.all(
      Array.from({ length: 12 }, (_, i) =>
        clientOf(i % 2 === 0 ? first : second, cookies).job.open.mutate({
          key: randomUUID(),
          job: { title: `Job ${i}`, customerId },
        }),
      ),
    );
    const numbers = jobs.map(({ number }) => number).sort((a, b) => a - b);
    const from = numbers[0] ?? 0;
    expect(numbers).toEqual(numbers.map((_, i) => from + i));
  });

  it('make one job of a form that was sent to both', async () => {
    const customerId = await newCustomer(clientOf(first, cookies));
    const form = { key: randomUUID(), job: { title: 'Sent twice', customerId } };
    const [one, other] = await Promise.all([
      clientOf(first, cookies).job.open.mutate(form),
      clientOf(second, cookies).job.open.mutate(form),
    ]);
    expect(other.id).toBe(one.id);
  });

  it('refuse at the second the sign-in that was ended at the first', async () => {
    const { cookie } = await post(first, '/api/auth/sign-in/email', { email: EMAIL, password: PASSWORD });
    expect(await clientOf(second, cookie).shop.mine.query()).toHaveLength(1);
    await post(first, '/api/auth/sign-out', {}, cookie);
    const refused = await clientOf(second, cookie)
      .shop.mine.query()
      .catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(TRPCClientError);
    expect(refused).toMatchObject({ data: { shop: { code: 'SIGN_IN_FIRST' } } });
    expect(await clientOf(second, cookies).shop.mine.query()).toHaveLength(1);
  });
});

describe('the worker', () => {
  it('sends the mail that an API process asked for', async () => {
    await clientOf(first, cookies).people.invite.mutate({
      key: randomUUID(),
      name: 'Tomas Reyl',
      email: 'tomas@quarry-road.example',
      role: 'technician',
    });
    const mail = await mailTo('tomas@quarry-road.example');
    expect(mail.subject).toBe('Mira Ilves invites you to Quarry Road Sound');
    expect(mail.text).toContain(`${PUBLIC_URL}/invite/`);
  });

  it('sends after its return what was asked for while it was gone', async () => {
    await kill(worker.child, 'SIGKILL');
    await post(second, '/api/auth/request-password-reset', { email: EMAIL, redirectTo: '/reset-password' });
    await wait(1_500);
    expect(mails.some(isTo(EMAIL))).toBe(false);
    worker = await startProcess(envOf(worker), ['worker']);
    expect((await mailTo(EMAIL)).subject).toBe('Choose a new password for Gusset');
  });
});

describe('a killed API process', () => {
  it('loses nothing that it acknowledged, and a form sent again takes effect once', async () => {
    const customerId = await newCustomer(clientOf(first, cookies));
    const forms = Array.from({ length: 40 }, (_, i) => ({
      key: randomUUID(),
      job: { title: `Kept ${String(i).padStart(2, '0')}`, customerId },
    }));
    const sending = forms.map((form) => clientOf(first, cookies).job.open.mutate(form));
    await Promise.race(sending); // at least one is acknowledged, the others are on their way
    await kill(first.child, 'SIGKILL');
    const answers = await Promise.allSettled(sending);
    const acknowledged = answers.flatMap((answer) => (answer.status === 'fulfilled' ? [answer.value] : []));
    expect(acknowledged.length).toBeGreaterThan(0);

    const other = clientOf(second, cookies);
    for (const job of acknowledged) {
      expect((await other.job.byNumber.query({ number: job.number })).job.id).toBe(job.id);
    }
    const again = await Promise.all(forms.map((form) => other.job.open.mutate(form)));
    const stored = await other.job.list.query({ search: 'Kept', limit: 200 });
    expect(stored.total).toBe(forms.length);
    expect(new Set(again.map(({ id }) => id)).size).toBe(forms.length);
  });

  it('is not missed by the other, and joins again', async () => {
    expect((await fetch(`${second.url}/readyz`)).status).toBe(200);
    first = await startProcess(envOf(second), []);
    expect((await clientOf(first, cookies).job.list.query({ search: 'Kept', limit: 1 })).total).toBe(40);
  });
});

const environments = new WeakMap<ChildProcess, Record<string, string>>();

function envOf({ child }: Process): Record<string, string> {
  const env = environments.get(child);
  if (env === undefined) throw new Error('this process was not started here');
  return env;
}

async function startProcess(env: Record<string, string>, args: readonly string[]): Promise<Process> {
  const port = await freePort();
  const child = spawn(process.execPath, ['--disable-warning=ExperimentalWarning', SERVER, ...args], {
    env: { PATH: process.env.PATH ?? '', ...env, API_PORT: String(port) },
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  environments.set(child, env);
  const said: string[] = [];
  child.stdout?.on('data', (chunk: Buffer) => said.push(chunk.toString()));
  child.stderr?.on('data', (chunk: Buffer) => said.push(chunk.toString()));
  await new Promise<void>((resolve, reject) => {
    const late = setTimeout(() => reject(new Error(`not ready: ${said.join('')}`)), READY_WITHIN_MS);
    child.once('message', () => {
      clearTimeout(late);
      resolve();
    });
    child.once('exit', (code) => reject(new Error(`ended with ${code}: ${said.join('')}`)));
  });
  return { child, url: `http://127.0.0.1:${port}` };
}

async function kill(child: ChildProcess, signal: 'SIGKILL' | 'SIGTERM'): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  child.kill(signal);
  await ended;
}

function clientOf({ url }: Process, cookie: string): TestClient {
  return createTRPCClient<AppRouter>({
    links: [httpLink({ url: `${url}/api/trpc`, headers: { cookie, origin: PUBLIC_URL } })],
  });
}

async function post({ url }: Process, at: string, body: object, cookie = ''): Promise<{ cookie: string }> {
  const answer = await fetch(`${url}${at}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: PUBLIC_URL, cookie },
    body: JSON.stringify(body),
  });
  if (!answer.ok) throw new Error(`${at}: ${answer.status} ${await answer.text()}`);
  return {
    cookie: answer.headers
      .getSetCookie()
      .map((line) => line.split(';')[0])
      .join('; '),
  };
}

async function newCustomer(api: TestClient): Promise<string> {
  const input = { name: 'R. Okafor', phone: '', email: '', address: '', notes: '' };
  return (await api.customer.create.mutate({ key: randomUUID(), input })).id;
}

async function openJob(api: TestClient, title: string) {
  return api.job.open.mutate({ key: randomUUID(), job: { title, customerId: await newCustomer(api) } });
}

function catchMail(port: number): Promise<SMTPServer> {
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['AUTH', 'STARTTLS'],
    onData(stream, _session, done) {
      simpleParser(stream).then(
        (mail) => {
          mails.push(mail);
          done();
        },
        (error: unknown) => done(error instanceof Error ? error : new Error(String(error))),
      );
    },
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => resolve(server));
  });
}

function isTo(address: string): (mail: ParsedMail) => boolean {
  return ({ to }) => (Array.isArray(to) ? to : [to]).some((one) => one?.text.includes(address));
}

async function mailTo(address: string): Promise<ParsedMail> {
  const deadline = Date.now() + MAIL_WITHIN_MS;
  for (;;) {
    const mail = mails.find(isTo(address));
    if (mail !== undefined) return mail;
    if (Date.now() > deadline) throw new Error(`no mail to ${address} came`);
    await wait(100);
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      server.close(() => resolve(port));
    });
  });
}
