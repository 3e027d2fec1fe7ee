// npm test: format and lint, types, unit, API on two PostgreSQL versions, browser end to end. Fails on any failure.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from './start/process.ts';
import { say, stopWith } from './start/say.ts';
import { browserPath } from './test/browser.ts';
import { countPlaywright, countVitest, type Outcome, runStep } from './test/runner.ts';
import { secondPostgresFolder } from './test/second-postgres.ts';

const REPORTS = path.join(ROOT, 'test-results');
const BIN = 'node_modules';

try {
  const browser = await browserPath();
  const secondPostgres = secondPostgresFolder();
  mkdirSync(REPORTS, { recursive: true });
  const outcomes: Outcome[] = [];
  outcomes.push(
    await runStep({
      name: 'format and lint',
      script: `${BIN}/@biomejs/biome/bin/biome`,
      args: ['check', '--error-on-warnings', '.'],
    }),
  );
  outcomes.push(
    await runStep({
      name: 'types',
      script: `${BIN}/turbo/bin/turbo`,
      args: ['run', 'types', '--output-logs=errors-only', '--concurrency=2'],
    }),
  );
  outcomes.push(
    await runStep({
      name: 'types of the scripts',
      script: `${BIN}/typescript/bin/tsc`,
      args: ['-p', 'scripts/tsconfig.json'],
    }),
  );
  outcomes.push(await vitest('unit', ['--project', 'unit']));
  outcomes.push(await vitest('api on the embedded PostgreSQL', ['--project', 'api']));
  if (secondPostgres === null) {
    say('\nTEST_SECOND_POSTGRES=none: the API tests ran on the embedded PostgreSQL only.');
  } else {
    const name = `api on PostgreSQL ${path.basename(secondPostgres)}`;
    outcomes.push(await vitest(name, ['--project', 'api'], { TEST_POSTGRES_FOLDER: secondPostgres }));
  }
  outcomes.push(await endToEnd(browser));
  closingLines(outcomes);
  if (outcomes.some((outcome) => !outcome.ok)) process.exit(1);
} catch (error) {
  stopWith(error);
}

function vitest(
  name: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<Outcome> {
  const file = path.join(REPORTS, `${name.replaceAll(' ', '-')}.json`);
  return runStep({
    name,
    script: `${BIN}/vitest/vitest.mjs`,
    args: ['run', ...args, '--reporter=default', '--reporter=json', `--outputFile.json=${file}`],
    env,
    report: { file, count: countVitest },
  });
}

function endToEnd(browser: string): Promise<Outcome> {
  const file = path.join(REPORTS, 'browser.json');
  return runStep({
    name: 'browser end to end',
    script: `${BIN}/@playwright/test/cli.js`,
    args: ['test', '-c', 'e2e/playwright.config.ts'],
    env: { TEST_BROWSER: browser, PLAYWRIGHT_JSON_OUTPUT_FILE: file },
    report: { file, count: countPlaywright },
  });
}

function closingLines(outcomes: readonly Outcome[]): void {
  say('\n── closing lines');
  for (const { name, ok, counts, seconds } of outcomes) {
    say(counts === null ? `${name}: ${ok ? 'passed' : 'failed'} (${seconds} s)` : `${name} (${seconds} s)`);
    if (counts !== null) say(`${counts.passed} passed, ${counts.failed} failed`);
  }
}
