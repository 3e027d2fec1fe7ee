// Builds the pages when something that they are made of has changed; a second start finds the build and goes on.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from './process.ts';
import { say } from './say.ts';

const WEB = path.join(ROOT, 'apps/web');
const STAMP = path.join(WEB, '.next', 'gusset-sources');
const SOURCES = ['apps/web', 'apps/api/src', 'packages', 'package-lock.json'];
const SKIP = new Set(['node_modules', '.next', '.turbo', 'test', 'bench', 'truth', 'tsconfig.tsbuildinfo']);

export function ensureWebBuild(): void {
  const sources = hashOfSources();
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === sources) return;
  say('Building the pages (a minute the first time)');
  const turbo = path.join(ROOT, 'node_modules', 'turbo', 'bin', 'turbo');
  const built = spawnSync(
    process.execPath,
    [turbo, 'run', 'build', '--filter=@gusset/web', '--output-logs=errors-only'],
    {
      cwd: ROOT,
      encoding: 'utf8',
      env: {
        ...process.env,
        NEXT_TELEMETRY_DISABLED: '1',
        TURBO_TELEMETRY_DISABLED: '1',
        TURBO_NO_UPDATE_NOTIFIER: '1',
        NODE_ENV: 'production',
      },
    },
  );
  if (built.status !== 0) {
    throw new Error(`The pages could not be built:\n${built.stdout ?? ''}${built.stderr ?? ''}`);
  }
  writeFileSync(STAMP, sources);
}

function hashOfSources(): string {
  const hash = createHash('sha256');
  for (const source of SOURCES) addToHash(hash, path.join(ROOT, source));
  return hash.digest('hex');
}

function addToHash(hash: ReturnType<typeof createHash>, place: string): void {
  if (statSync(place).isDirectory()) {
    for (const entry of readdirSync(place).sort()) {
      if (!SKIP.has(entry) && !entry.endsWith('.test.ts')) addToHash(hash, path.join(place, entry));
    }
    return;
  }
  hash.update(path.relative(ROOT, place)).update(readFileSync(place));
}
