// npm run bench: every measurement in turn, each in a process of its own so that none warms up another.
// `npm run bench -- cutting` runs those whose path contains the word. Ratios hold on any machine, milliseconds do not.
import { spawn } from 'node:child_process';
import { globSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from './start/process.ts';
import { say, stopWith } from './start/say.ts';

const PLACES = ['packages/*/bench/*.bench.ts', 'bench/*.bench.ts'];
const WITHIN_MS = 10 * 60_000;

try {
  const word = process.argv[2] ?? '';
  const files = globSync(PLACES, { cwd: ROOT })
    .map((file) => file.split(path.sep).join('/'))
    .filter((file) => file.includes(word))
    .sort();
  if (files.length === 0) throw new Error(`No measurement's path contains "${word}".`);
  const failed: string[] = [];
  for (const file of files) {
    say(`\n── ${file}`);
    const started = performance.now();
    if (!(await measure(file))) failed.push(file);
    say(`   (${((performance.now() - started) / 1_000).toFixed(1)} s)`);
  }
  if (failed.length > 0)
    throw new Error(`These failed, or hold a figure over its limit: ${failed.join(', ')}`);
} catch (error) {
  stopWith(error);
}

/** True when it ended by itself and well; its lines go straight to the terminal. */
function measure(file: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--disable-warning=ExperimentalWarning', path.join(ROOT, file)], {
      cwd: ROOT,
      stdio: ['ignore', 'inherit', 'inherit'],
      timeout: WITHIN_MS,
    });
    child.once('error', reject);
    child.once('exit', (code) => resolve(code === 0));
  });
}
