// The front door: one process that listens, serves the pages and hands /api on.

import { readFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import next from 'next';
import { createApiOrigins } from './front-door/api-origins.ts';
import { type FrontDoorEnv, readFrontDoorEnv } from './front-door/env.ts';
import { buildFrontDoor } from './front-door/front-door.ts';
import { localCertificate, trustInstructions } from './front-door/local-certificate.ts';

const APP_DIR = resolve(dirname(fileURLToPath(import.meta.url)), '..');
/** Running answers get this long to end; live updates are then cut and the browser reconnects. */
const CLOSE_WITHIN_MS = 10_000;

type Tls = {
  readonly cert: string;
  readonly key: string;
  readonly trusted: boolean;
  readonly advice: string | null;
};

const chooseTls = async (env: FrontDoorEnv): Promise<Tls | null> => {
  if (env.tlsFiles) {
    const [cert, key] = await Promise.all([
      readFile(env.tlsFiles.certFile, 'utf8'),
      readFile(env.tlsFiles.keyFile, 'utf8'),
    ]);
    return { cert, key, trusted: true, advice: null };
  }
  if (!env.localCertificate) return null;
  const local = await localCertificate(env.dataDir, new Date());
  return { cert: local.cert, key: local.key, trusted: false, advice: trustInstructions(local) };
};

const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

const env = readFrontDoorEnv(process.env);
// Server components reach the API directly, without going round through the door.
process.env.API_ORIGINS = env.apiOrigins.join(',');
const tls = await chooseTls(env);

const pages = next({ dev: false, dir: APP_DIR, hostname: env.host, port: env.port });
await pages.prepare();
const handlePage = pages.getRequestHandler();

const door = await buildFrontDoor({
  origins: createApiOrigins(env.apiOrigins, Date.now),
  servePage: (request, response) => handlePage(request, response),
  tls,
  trustedTls: tls?.trusted ?? false,
  trustProxy: env.trustProxy,
  staticFolder: resolve(APP_DIR, '.next/static'),
  logger: { level: 'warn' },
});

const address = await door.listen({ port: env.port, host: env.host });
if (tls?.advice) say(tls.advice);
say(`Gusset listens on ${address}`);

let closing = false;
const close = async (): Promise<void> => {
  if (closing) return;
  closing = true;
  const cut = setTimeout(() => door.server.closeAllConnections(), CLOSE_WITHIN_MS);
  await door.close();
  clearTimeout(cut);
  await pages.close();
  process.exit(0);
};
process.once('SIGTERM', close);
process.once('SIGINT', close);
