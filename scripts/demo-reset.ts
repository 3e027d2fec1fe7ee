// npm run demo:reset: the demo shop as on the first day. Removes its rows and its people, makes both again, and leaves
// every other shop of the database alone. Works on the built-in database while the program is stopped, or with
// DATABASE_URL (and DATABASE_ADMIN_URL where the owner of the tables is another role).
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { buildDeps } from '@gusset/api/build-deps';
import { readEnv } from '@gusset/api/env';
import { migrate, startEmbeddedPostgres } from '@gusset/database';
import { removeDemoShop, seedDemoShop } from '@gusset/seed';
import { say, stopWith } from './start/say.ts';
import { authSecret, readSettings, type StartSettings } from './start/settings.ts';

type Database = { readonly adminUrl: string; readonly apiUrl: string; stop(): Promise<void> };

try {
  const settings = readSettings(process.env);
  const database = await openDatabase(settings);
  try {
    await reset(database, settings);
  } finally {
    await database.stop();
  }
} catch (error) {
  stopWith(error);
}

/** The built-in server refuses a folder that a running program holds, with a sentence that names it. */
async function openDatabase({ databaseUrl, databaseAdminUrl, dataFolder }: StartSettings): Promise<Database> {
  if (databaseUrl === null) return startEmbeddedPostgres({ dataFolder, say });
  return { adminUrl: databaseAdminUrl ?? databaseUrl, apiUrl: databaseUrl, stop: async () => undefined };
}

async function reset(database: Database, settings: StartSettings): Promise<void> {
  await migrate(database.adminUrl, say);
  const { shops, rows } = await removeDemoShop(database.adminUrl);
  say(shops === 0 ? 'There was no demo shop' : `Removed the demo shop (${rows} rows)`);
  say('Setting up the demo shop');
  const env = readEnv({
    DATABASE_URL: database.apiUrl,
    PUBLIC_URL: settings.publicUrl,
    AUTH_SECRET: authSecret(settings.dataFolder, process.env.AUTH_SECRET),
    FILES_DIR: path.join(settings.dataFolder, 'files'),
    LOG_LEVEL: 'error',
  });
  const { deps, close } = await buildDeps(env, { superviseQueue: false, limitRate: false });
  try {
    const { email, password } = await seedDemoShop(deps);
    // `npm start` shows these while the demo shop stands.
    const note = path.join(settings.dataFolder, 'demo-sign-in.json');
    writeFileSync(note, JSON.stringify({ email, password }), { mode: 0o600 });
    say(`Demo sign-in: ${email}  ${password}`);
  } finally {
    await close();
  }
}
