// One PostgreSQL for the whole run: the embedded one, or the server in TEST_POSTGRES_URL (CI repeats the tests on an
// older version). Each test file makes a database of its own in it.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { startEmbeddedPostgres } from '@gusset/database';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    readonly adminUrl: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const given = process.env.TEST_POSTGRES_URL;
  if (given !== undefined && given !== '') {
    project.provide('adminUrl', given);
    return async () => undefined;
  }
  const dataFolder = mkdtempSync(path.join(tmpdir(), 'gusset-test-'));
  const server = await startEmbeddedPostgres({ dataFolder, database: 'gusset_test' });
  project.provide('adminUrl', server.adminUrl);
  return async () => {
    await server.stop();
    rmSync(dataFolder, { recursive: true, force: true });
  };
}
