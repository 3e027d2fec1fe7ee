// Brings a database up to the newest schema. Two processes starting at once migrate once (advisory lock), and a
// database that is newer than this program is refused.
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import pg from 'pg';
import { PgBoss } from 'pg-boss';
import { NO_FILTER, withSchemaEngine } from './schema-engine.ts';

const MIGRATION_LOCK_KEY = 7_301_944_182; // any fixed number of our own
export const MIGRATIONS_FOLDER = path.resolve(import.meta.dirname, '../../../prisma/migrations');

/** Applies what is missing and answers the names of the migrations that were applied. */
export async function migrate(
  adminUrl: string,
  say: (line: string) => void = () => undefined,
): Promise<string[]> {
  const lock = new pg.Client({ connectionString: adminUrl });
  await lock.connect();
  try {
    await lock.query('SELECT pg_advisory_lock($1)', [MIGRATION_LOCK_KEY]);
    const list = await migrationList();
    await refuseNewerDatabase(
      lock,
      list.migrationDirectories.map((directory) => directory.path),
    );
    const { appliedMigrationNames } = await withSchemaEngine(adminUrl, null, (engine) =>
      engine.applyMigrations({ migrationsList: list, filters: NO_FILTER }),
    );
    if (appliedMigrationNames.length > 0) say(`Applied ${appliedMigrationNames.length} database migrations`);
    await prepareQueue(adminUrl, lock);
    return appliedMigrationNames;
  } finally {
    await lock.end(); // ends the session and with it the advisory lock
  }
}

export async function migrationList() {
  const entries = await readdir(MIGRATIONS_FOLDER, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const migrationDirectories = await Promise.all(
    names.sort().map(async (name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: {
          tag: 'ok' as const,
          value: await readFile(path.join(MIGRATIONS_FOLDER, name, 'migration.sql'), 'utf8'),
        },
      },
    })),
  );
  return {
    baseDir: MIGRATIONS_FOLDER,
    lockfile: { path: 'migration_lock.toml', content: 'provider = "postgresql"\n' },
    shadowDbInitScript: '',
    migrationDirectories,
  };
}

async function refuseNewerDatabase(client: pg.Client, known: readonly string[]): Promise<void> {
  const table = await client.query("SELECT to_regclass('public._prisma_migrations') AS name");
  if (table.rows[0]?.name === null) return;
  const applied = await client.query<{ migration_name: string }>(
    'SELECT migration_name FROM _prisma_migrations WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL',
  );
  const unknown = applied.rows.map((row) => row.migration_name).filter((name) => !known.includes(name));
  if (unknown.length > 0) {
    throw new Error(
      `This database was made by a newer Gusset (it has "${unknown[0]}"). Start that version, or restore a backup. Nothing was changed.`,
    );
  }
}

/** The job queue's own tables live in their schema; the API's role may use them and nothing more. */
async function prepareQueue(adminUrl: string, client: pg.Client): Promise<void> {
  const boss = new PgBoss({ connectionString: adminUrl, supervise: false, schedule: false, max: 2 });
  boss.on('error', () => undefined); // start() rejects with the same error
  await boss.start();
  await boss.stop({ graceful: false });
  await client.query(`
    GRANT SELECT ON _prisma_migrations TO gusset_api;
    GRANT USAGE, CREATE ON SCHEMA pgboss TO gusset_api;
    GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA pgboss TO gusset_api;
    GRANT USAGE, SELECT ON ALL SEQUENCES IN SCHEMA pgboss TO gusset_api;
    GRANT EXECUTE ON ALL FUNCTIONS IN SCHEMA pgboss TO gusset_api;`);
}
