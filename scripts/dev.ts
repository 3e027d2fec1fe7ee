// npm run dev: the program for those who change it. Pages are compiled as they are opened, the API starts again when
// its sources change. Data in a folder of its own, with the demo shop.

import { spawn } from 'node:child_process';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { migrate, startEmbeddedPostgres } from '@gusset/database';
import { seedDemoIfFirst } from './start/demo.ts';
import { requireFreePort } from './start/ports.ts';
import { ROOT } from './start/process.ts';
import { say, stopWith } from './start/say.ts';
import { authSecret } from './start/settings.ts';

const PORT = Number(process.env.PORT ?? 4300);
const API_PORT = PORT + 10;
const dataFolder = process.env.GUSSET_DATA_DIR ?? path.join(tmpdir(), 'gusset-dev');

try {
  await requireFreePort('127.0.0.1', PORT);
  const database = await startEmbeddedPostgres({ dataFolder, say });
  await migrate(database.adminUrl, say);
  const apiEnv = {
    API_PORT: String(API_PORT),
    PUBLIC_URL: `http://localhost:${PORT}`,
    DATABASE_URL: database.apiUrl,
    AUTH_SECRET: authSecret(dataFolder, process.env.AUTH_SECRET),
    FILES_DIR: path.join(dataFolder, 'files'),
    WITH_WORKER: '1',
    LOG_LEVEL: process.env.LOG_LEVEL ?? 'info',
    SMTP_URL: process.env.SMTP_URL ?? '',
  };
  const demo = await seedDemoIfFirst(apiEnv, database.adminUrl, dataFolder, say);
  const children = [
    spawn(process.execPath, ['--watch', '--watch-preserve-output', 'apps/api/src/server.ts'], {
      cwd: ROOT,
      stdio: 'inherit',
      env: { ...process.env, ...apiEnv },
    }),
    spawn(process.execPath, [path.join(ROOT, 'node_modules/next/dist/bin/next'), 'dev', '-p', String(PORT)], {
      cwd: path.join(ROOT, 'apps/web'),
      stdio: 'inherit',
      env: {
        ...process.env,
        GUSSET_DEV_API: `http://127.0.0.1:${API_PORT}`,
        API_ORIGINS: `http://127.0.0.1:${API_PORT}`,
        NEXT_TELEMETRY_DISABLED: '1',
      },
    }),
  ];
  say(`Pages: http://localhost:${PORT}${demo === null ? '' : `   ${demo.email}  ${demo.password}`}`);
  const stop = async () => {
    for (const child of children) child.kill('SIGTERM');
    await database.stop();
    process.exit(0);
  };
  process.once('SIGINT', () => void stop());
  process.once('SIGTERM', () => void stop());
} catch (error) {
  stopWith(error);
}
