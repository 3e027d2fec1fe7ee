import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { FastifyInstance } from 'fastify';
import { afterEach, describe, expect, it } from 'vitest';
import { createApiOrigins } from './api-origins.ts';
import { buildFrontDoor } from './front-door.ts';

const running: Server[] = [];
const doors: FastifyInstance[] = [];

afterEach(async () => {
  await Promise.all(doors.splice(0).map((door) => door.close()));
  await Promise.all(running.splice(0).map((server) => new Promise((done) => server.close(done))));
});

type Seen = { readonly url: string; readonly body: string; readonly headers: IncomingMessage['headers'] };

/** An API stand-in on loopback that remembers what reached it and answers with its own name. */
const startApi = async (name: string): Promise<{ origin: string; seen: Seen[] }> => {
  const seen: Seen[] = [];
  const server = createServer(async (request, response) => {
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk as Buffer);
    seen.push({
      url: request.url ?? '',
      body: Buffer.concat(chunks).toString(),
      headers: request.headers,
    });
    response.setHeader('content-type', 'application/json');
    response.end(JSON.stringify({ name }));
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  running.push(server);
  return { origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, seen };
};

/** A port nobody listens on: taken, then given back. */
const deadOrigin = async (): Promise<string> => {
  const server = createServer();
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  await new Promise((done) => server.close(done));
  return `http://127.0.0.1:${port}`;
};

const openDoor = async (
  apiOrigins: readonly string[],
): Promise<{ base: string; pageRequests: IncomingMessage[] }> => {
  const pageRequests: IncomingMessage[] = [];
  const door = await buildFrontDoor({
    origins: createApiOrigins(apiOrigins, Date.now),
    servePage: async (request, response) => {
      pageRequests.push(request);
      response.end('page');
    },
    tls: null,
    trustedTls: false,
    trustProxy: false,
    staticFolder: 'no-build-here',
    logger: false,
  });
  doors.push(door);
  return { base: await door.listen({ port: 0, host: '127.0.0.1' }), pageRequests };
};

const postJson = (url: string, body: unknown): Promise<Response> =>
  fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

describe('the front door', () => {
  it('answers /livez itself', async () => {
    const { base } = await openDoor([await deadOrigin()]);
    const answer = await fetch(`${base}/livez`);
    expect(answer.status).toBe(200);
    expect(await answer.json()).toEqual({ live: true });
  });

  it('hands /api on with its path, query, body and the address it came from', async () => {
    const api = await startApi('one');
    const { base } = await openDoor([api.origin]);
    const answer = await postJson(`${base}/api/trpc/jobs.open?batch=1`, { widthMm: 438.15 });
    expect(await answer.json()).toEqual({ name: 'one' });
    expect(api.seen).toHaveLength(1);
    expect(api.seen[0]?.url).toBe('/api/trpc/jobs.open?batch=1');
    expect(api.seen[0]?.body).toBe('{"widthMm":438.15}');
    expect(api.seen[0]?.headers['x-forwarded-for']).toBe('127.0.0.1');
    expect(api.seen[0]?.headers['x-forwarded-proto']).toBe('http');
    expect(api.seen[0]?.headers['x-forwarded-host']).toBe(new URL(base).host);
  });

  it('streams bodies that are not JSON through unchanged', async () => {
    const api = await startApi('one');
    const { base } = await openDoor([api.origin]);
    await fetch(`${base}/api/files`, {
      method: 'POST',
      headers: { 'content-type': 'image/jpeg' },
      body: 'x'.repeat(100_000),
    });
    expect(api.seen[0]?.body).toHaveLength(100_000);
  });

  it('takes the API processes in turn', async () => {
    const [one, two] = [await startApi('one'), await startApi('two')];
    const { base } = await openDoor([one.origin, two.origin]);
    for (let asked = 0; asked < 4; asked += 1) await fetch(`${base}/api/jobs`);
    expect([one.seen.length, two.seen.length]).toEqual([2, 2]);
  });

  it('tries a refused question and a refused change on the next process, once each', async () => {
    const live = await startApi('live');
    const { base } = await openDoor([await deadOrigin(), live.origin]);
    const asked = await fetch(`${base}/api/jobs`);
    expect(asked.status).toBe(200);
    expect(live.seen).toHaveLength(1);

    const { base: second } = await openDoor([await deadOrigin(), live.origin]);
    const changed = await postJson(`${second}/api/jobs`, { jobNumber: 2417 });
    expect(changed.status).toBe(200);
    expect(live.seen).toHaveLength(2);
    expect(live.seen[1]?.body).toBe('{"jobNumber":2417}');
  });

  it('says in plain words that the server rests when no process answers', async () => {
    const { base } = await openDoor([await deadOrigin()]);
    const answer = await postJson(`${base}/api/jobs`, {});
    expect(answer.status).toBe(503);
    expect(answer.headers.get('retry-after')).toBe('2');
    expect(await answer.json()).toMatchObject({ code: 'SERVICE_RESTING' });
  });

  it('gives each page its own nonce, and Next the same policy the browser gets', async () => {
    const { base, pageRequests } = await openDoor([await deadOrigin()]);
    const first = await fetch(base, { headers: { 'x-nonce': 'sent-by-a-client' } });
    const second = await fetch(base);
    const policies = [first, second].map((answer) => answer.headers.get('content-security-policy') ?? '');
    expect(policies[0]).not.toBe(policies[1]);
    expect(pageRequests.map((request) => request.headers['content-security-policy'])).toEqual(policies);
    expect(pageRequests[0]?.headers['x-nonce']).not.toBe('sent-by-a-client');
    expect(policies[0]).toContain(`'nonce-${pageRequests[0]?.headers['x-nonce']}'`);
  });

  it('allows no inline script and no framing', async () => {
    const { base } = await openDoor([await deadOrigin()]);
    const { headers } = await fetch(base);
    const scripts = headers
      .get('content-security-policy')
      ?.split('; ')
      .find((directive) => directive.startsWith('script-src '));
    expect(scripts).toBeDefined();
    expect(scripts).not.toContain('unsafe-inline');
    expect(scripts).not.toContain("'unsafe-eval'");
    expect(headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('strict-transport-security')).toBeNull();
  });
});
