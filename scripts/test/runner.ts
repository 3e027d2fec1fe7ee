// Runs one test runner, shows its output, and reads its counts from the JSON report that it writes.
import { spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from '../start/process.ts';
import { say } from '../start/say.ts';

export type Counts = { readonly passed: number; readonly failed: number };
export type Outcome = {
  readonly name: string;
  readonly ok: boolean;
  readonly counts: Counts | null;
  readonly seconds: number;
};

export async function runStep(options: {
  readonly name: string;
  readonly script: string;
  readonly args: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
  /** Where the runner writes its report, and how to count in it; left out for checks that count nothing. */
  readonly report?: { readonly file: string; readonly count: (report: unknown) => Counts };
}): Promise<Outcome> {
  const { name, script, args, env = {}, report } = options;
  say(`\n── ${name}`);
  if (report !== undefined) rmSync(report.file, { force: true });
  const startedAt = Date.now();
  const code = await new Promise<number>((resolve, reject) => {
    const child = spawn(process.execPath, [path.join(ROOT, script), ...args], {
      cwd: ROOT,
      stdio: 'inherit',
      env: {
        ...process.env,
        ...env,
        TURBO_TELEMETRY_DISABLED: '1',
        TURBO_NO_UPDATE_NOTIFIER: '1',
        NEXT_TELEMETRY_DISABLED: '1',
      },
    });
    child.once('error', reject);
    child.once('exit', (exit) => resolve(exit ?? 1));
  });
  const seconds = Math.round((Date.now() - startedAt) / 1000);
  if (report === undefined) return { name, ok: code === 0, counts: null, seconds };
  const counts = existsSync(report.file)
    ? report.count(JSON.parse(readFileSync(report.file, 'utf8')))
    : { passed: 0, failed: 1 };
  // A runner that executed nothing has not passed.
  return { name, ok: code === 0 && counts.failed === 0 && counts.passed > 0, counts, seconds };
}

/** Vitest's JSON report (Jest's shape). */
export function countVitest(report: unknown): Counts {
  const { numPassedTests = 0, numFailedTests = 0 } = report as {
    numPassedTests?: number;
    numFailedTests?: number;
  };
  return { passed: numPassedTests, failed: numFailedTests };
}

/** Playwright's JSON report: skipped tests count as failed, since nothing here may be skipped. */
export function countPlaywright(report: unknown): Counts {
  const { stats = {} } = report as {
    stats?: { expected?: number; unexpected?: number; flaky?: number; skipped?: number };
  };
  const { expected = 0, unexpected = 0, flaky = 0, skipped = 0 } = stats;
  return { passed: expected, failed: unexpected + flaky + skipped };
}
