import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { defineConfig } from '@playwright/test';

const port = Number(process.env.E2E_PORT ?? 4391);
const baseURL = `http://localhost:${port}`;
// One folder for the run: the workers read it again from the environment.
process.env.E2E_DATA ??= mkdtempSync(path.join(tmpdir(), 'gusset-e2e-'));
const executablePath = process.env.TEST_BROWSER ?? '/usr/bin/chromium';

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  outputDir: '../test-results/e2e',
  timeout: 120_000,
  expect: { timeout: 10_000 },
  workers: 1,
  fullyParallel: false,
  retries: 0,
  forbidOnly: true,
  reporter: [['line'], ['json']],
  use: {
    baseURL,
    trace: 'retain-on-failure',
    actionTimeout: 15_000,
    launchOptions: {
      executablePath,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  webServer: {
    command: 'node scripts/start.ts',
    cwd: path.resolve(import.meta.dirname, '..'),
    // Against a running `npm run dev`: E2E_REUSE=1 E2E_PORT=4300 E2E_LIVE=/sign-in
    url: `${baseURL}${process.env.E2E_LIVE ?? '/livez'}`,
    timeout: 300_000,
    reuseExistingServer: process.env.E2E_REUSE === '1',
    gracefulShutdown: { signal: 'SIGTERM', timeout: 20_000 },
    stdout: 'pipe',
    env: { PORT: String(port), GUSSET_DATA_DIR: process.env.E2E_DATA },
  },
});
