// Databases on the run's own server: one that is migrated, and copies of it.
import pg from 'pg';

/** Migrated once for the whole run; nobody connects to it after that, so it can be copied. */
export const MIGRATED = 'gusset_migrated';

export async function onServer<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const connection = new pg.Client({ connectionString: url });
  await connection.connect();
  try {
    return await work(connection);
  } finally {
    await connection.end();
  }
}

export function withDatabase(url: string, database: string): string {
  const changed = new URL(url);
  changed.pathname = `/${database}`;
  return changed.toString();
}
