// npm start: the whole program on one machine. Database, migrations, demo shop on the first start, API with its
// worker, front door; one line with the address; Ctrl-C stops everything in order.
import path from 'node:path';
import { migrate, startEmbeddedPostgres } from '@gusset/database';
import { seedDemoIfFirst } from './start/demo.ts';
import { freePort, requireFreePort } from './start/ports.ts';
import { API_HEAP, type Part, startPart } from './start/process.ts';
import { say, stopWith } from './start/say.ts';
import { authSecret, readSettings, type StartSettings } from './start/settings.ts';
import { ensureWebBuild } from './start/web-build.ts';

type Stoppable = { stop(): Promise<void> };
const running: Stoppable[] = [];
let stopping = false;

async function stopAll(): Promise<void> {
  if (stopping) return;
  stopping = true;
  for (const part of running.reverse()) await part.stop();
}

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    if (stopping) return;
    say('\nStopping');
    stopAll().then(
      () => process.exit(0),
      (error: unknown) => stopWith(error),
    );
  });
}

try {
  await start(readSettings(process.env));
} catch (error) {
  await stopAll();
  stopWith(error);
}

async function start(settings: StartSettings): Promise<void> {
  await requireFreePort(settings.host, settings.port);
  ensureWebBuild();
  const database = await openDatabase(settings);
  await migrate(database.adminUrl, say);
  const apiPort = await freePort();
  const apiEnv = {
    API_PORT: String(apiPort),
    PUBLIC_URL: settings.publicUrl,
    DATABASE_URL: database.apiUrl,
    AUTH_SECRET: authSecret(settings.dataFolder, process.env.AUTH_SECRET),
    FILES_DIR: path.join(settings.dataFolder, 'files'),
    WITH_WORKER: '1',
    LOG_LEVEL: process.env.LOG_LEVEL ?? 'warn',
    NODE_ENV: 'production',
  };
  const demo = settings.demo
    ? await seedDemoIfFirst(apiEnv, database.adminUrl, settings.dataFolder, say)
    : null;
  const api = await keep(
    startPart({
      name: 'API',
      script: 'apps/api/src/server.ts',
      nodeArgs: API_HEAP,
      env: apiEnv,
      onLine: passOn,
    }),
  );
  const web = await keep(
    startPart({
      name: 'front door',
      script: 'apps/web/src/server.ts',
      readyText: 'Gusset listens on',
      onLine: (line) => {
        if (!line.includes('Gusset listens on')) passOn(line);
      },
      env: {
        PORT: String(settings.port),
        HOST: settings.host,
        API_ORIGINS: `http://127.0.0.1:${apiPort}`,
        GUSSET_DATA_DIR: settings.dataFolder,
        NODE_ENV: 'production',
        NEXT_TELEMETRY_DISABLED: '1',
      },
    }),
  );
  const signIn = demo === null ? '' : `   demo sign-in: ${demo.email}  ${demo.password}`;
  say(`Gusset is ready: ${settings.publicUrl}${signIn}`);
  for (const part of [api, web]) {
    part.ended.then(() => {
      if (stopping) return;
      say(`The ${part.name} ended unexpectedly; stopping.`);
      stopAll().then(
        () => process.exit(1),
        (error: unknown) => stopWith(error),
      );
    });
  }
}

async function openDatabase({ databaseUrl, databaseAdminUrl, dataFolder }: StartSettings) {
  if (databaseUrl !== null) return { adminUrl: databaseAdminUrl ?? databaseUrl, apiUrl: databaseUrl };
  const embedded = await startEmbeddedPostgres({ dataFolder, say });
  running.push(embedded);
  return embedded;
}

async function keep(starting: Promise<Part>): Promise<Part> {
  const part = await starting;
  running.push(part);
  return part;
}

function passOn(line: string): void {
  process.stderr.write(`${line}\n`);
}
