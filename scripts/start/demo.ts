// On the very first start of a database the demo shop is made, so that every screen has something true to show.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { buildDeps } from '@gusset/api/build-deps';
import { readEnv } from '@gusset/api/env';
import { seedDemoShop } from '@gusset/seed';
import pg from 'pg';

export type DemoSignIn = { readonly email: string; readonly password: string };

/** Answers the demo sign-in while the demo shop stands; null in a database that never had one. */
export async function seedDemoIfFirst(
  apiEnv: Readonly<Record<string, string>>,
  adminUrl: string,
  dataFolder: string,
  say: (line: string) => void,
): Promise<DemoSignIn | null> {
  const note = path.join(dataFolder, 'demo-sign-in.json');
  if (!(await isEmpty(adminUrl))) return existsSync(note) ? JSON.parse(readFileSync(note, 'utf8')) : null;
  say('Setting up the demo shop');
  const { deps, close } = await buildDeps(readEnv({ ...apiEnv, LOG_LEVEL: 'error' }), {
    superviseQueue: false,
    limitRate: false,
  });
  try {
    const { email, password } = await seedDemoShop(deps);
    writeFileSync(note, JSON.stringify({ email, password }), { mode: 0o600 });
    return { email, password };
  } finally {
    await close();
  }
}

async function isEmpty(adminUrl: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: adminUrl });
  await client.connect();
  try {
    const { rows } = await client.query<{ count: string }>('SELECT count(*) AS count FROM "user"');
    return rows[0]?.count === '0';
  } finally {
    await client.end();
  }
}
