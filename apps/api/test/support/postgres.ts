// One PostgreSQL for the whole run: the embedded one, or another version whose folder TEST_POSTGRES_FOLDER names (the
// test command repeats the tests on an older one). Each test file makes a database of its own in it, as a copy of one
// that is migrated here once.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { migrate, startEmbeddedPostgres } from '@gusset/database';
import type { TestProject } from 'vitest/node';
import { MIGRATED, onServer, withDatabase } from './test-database.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    readonly adminUrl: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const dataFolder = mkdtempSync(path.join(tmpdir(), 'gusset-test-'));
  const binariesFolder = process.env.TEST_POSTGRES_FOLDER;
  const server = await startEmbeddedPostgres({
    dataFolder,
    database: 'gusset_test',
    ...(binariesFolder === undefined ? {} : { binariesFolder }),
  });
  await onServer(server.adminUrl, (client) => client.query(`CREATE DATABASE ${MIGRATED}`));
  await migrate(withDatabase(server.adminUrl, MIGRATED));
  project.provide('adminUrl', server.adminUrl);
  return async () => {
    await server.stop();
    rmSync(dataFolder, { recursive: true, force: true });
  };
}
