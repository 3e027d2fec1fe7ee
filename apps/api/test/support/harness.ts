// A running API on a database of its own, with people who can call it. Used by every API test.
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Role } from '@gusset/contracts/access';
import { createTRPCClient, httpLink, TRPCClientError } from '@trpc/client';
import type { FastifyInstance } from 'fastify';
import { inject } from 'vitest';
import { buildApp } from '../../src/app.ts';
import { buildDeps } from '../../src/build-deps.ts';
import type { Clock, Deps } from '../../src/deps.ts';
import { readEnv } from '../../src/env.ts';
import type { AppRouter } from '../../src/trpc/app-router.ts';
import { MIGRATED, onServer, withDatabase } from './test-database.ts';

export const PUBLIC_URL = 'http://localhost:4300';
const PASSWORD = 'lantern copper meadow violin';

export type TestApi = {
  readonly app: FastifyInstance;
  readonly deps: Deps;
  readonly adminUrl: string;
  /** A tRPC client that carries these cookies. */
  client(cookies: string): TestClient;
  /** Signs up a new person and answers their cookies. */
  signUp(name: string): Promise<{ cookies: string; email: string; userId: string }>;
  /** A person who has founded a shop. */
  owner(shopName?: string): Promise<TestPerson>;
  /** Another member of the owner's shop. */
  member(owner: TestPerson, role: Role): Promise<TestPerson>;
  close(): Promise<void>;
};
export type TestClient = ReturnType<typeof createTRPCClient<AppRouter>>;
export type TestPerson = {
  readonly name: string;
  readonly email: string;
  readonly userId: string;
  readonly shopId: string;
  readonly cookies: string;
  readonly api: TestClient;
};

export async function startTestApi(
  options: { readonly clock?: Clock; readonly env?: Record<string, string> } = {},
): Promise<TestApi> {
  const database = `t_${randomUUID().replaceAll('-', '')}`;
  const serverUrl = inject('adminUrl');
  await onServer(serverUrl, (client) => client.query(`CREATE DATABASE ${database} TEMPLATE ${MIGRATED}`));
  const adminUrl = withDatabase(serverUrl, database);
  const filesDir = mkdtempSync(path.join(tmpdir(), 'gusset-files-'));
  const env = readEnv({
    DATABASE_URL: adminUrl, // the pool itself steps down to the API's role
    DATABASE_POOL: '4',
    AUTH_SECRET: 'test-secret-test-secret-test-secret',
    FILES_DIR: filesDir,
    PUBLIC_URL,
    LOG_LEVEL: process.env.TEST_LOG ?? 'silent',
    ...options.env,
  });
  const running = await buildDeps(env, {
    superviseQueue: false,
    limitRate: false,
    ...(options.clock ? { clock: options.clock } : {}),
  });
  const app = await buildApp(running.deps, { limitRate: false });
  await app.ready();

  const client = (cookies: string): TestClient =>
    createTRPCClient<AppRouter>({
      links: [
        httpLink({
          url: `${PUBLIC_URL}/api/trpc`,
          fetch: async (url, init) => {
            const target = new URL(String(url));
            const answer = await app.inject({
              method: init?.method === 'POST' ? 'POST' : 'GET',
              url: `${target.pathname}${target.search}`,
              headers: { cookie: cookies, origin: PUBLIC_URL, 'content-type': 'application/json' },
              ...(typeof init?.body === 'string' ? { payload: init.body } : {}),
            });
            return new Response(answer.body, { status: answer.statusCode });
          },
        }),
      ],
    });

  const signUp = async (name: string) => {
    const email = `${randomUUID()}@example.com`;
    const answer = await app.inject({
      method: 'POST',
      url: '/api/auth/sign-up/email',
      headers: { origin: PUBLIC_URL },
      payload: { name, email, password: PASSWORD },
    });
    if (answer.statusCode !== 200) throw new Error(`sign-up failed: ${answer.body}`);
    return { cookies: cookiesOf(answer.headers['set-cookie']), email, userId: String(answer.json().user.id) };
  };

  const owner = async (shopName = 'Quarry Road Sound'): Promise<TestPerson> => {
    const person = await signUp('Mira Ilves');
    const { shopId } = await client(person.cookies).shop.found.mutate({
      name: shopName,
      ownerName: 'Mira Ilves',
      timeZone: 'Europe/Berlin',
      currency: 'EUR',
      locale: 'en-GB',
      lengthUnit: 'mm',
    });
    return { ...person, name: 'Mira Ilves', shopId, api: client(person.cookies) };
  };

  const member = async (of: TestPerson, role: Role): Promise<TestPerson> => {
    const name = `${role} person`;
    const person = await signUp(name);
    await running.deps.doors.inShop(of.shopId, (tx) =>
      tx.membership.create({ data: { shopId: of.shopId, userId: person.userId, role } }),
    );
    return { ...person, name, shopId: of.shopId, api: client(person.cookies) };
  };

  return {
    app,
    deps: running.deps,
    adminUrl,
    client,
    signUp,
    owner,
    member,
    async close() {
      await app.close();
      await running.close();
      rmSync(filesDir, { recursive: true, force: true });
      await onServer(serverUrl, (connection) => connection.query(`DROP DATABASE ${database} WITH (FORCE)`));
    },
  };
}

/** The shop error that a call ended with; fails where it succeeded. */
export async function shopErrorOf(call: Promise<unknown>) {
  try {
    await call;
  } catch (error) {
    if (error instanceof TRPCClientError && error.data?.shop !== undefined)
      return error.data.shop as ShopErrorShape;
    throw error;
  }
  throw new Error('the call was expected to be refused, but it was answered');
}
type ShopErrorShape = import('@gusset/contracts/errors').ShopErrorData;

function cookiesOf(header: string | string[] | undefined): string {
  const lines = header === undefined ? [] : Array.isArray(header) ? header : [header];
  return lines.map((line) => line.split(';')[0]).join('; ');
}
