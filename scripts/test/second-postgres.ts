// A PostgreSQL of another version than the embedded one, so that the database tests run on two.
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { installFromDebian } from './debian.ts';

const DEBIAN_FOLDER = '/usr/lib/postgresql';
const OLDEST_SERVED = 15;

/** The folder that holds `bin/`; null when the person said to go without. Throws a sentence when there is none. */
export function secondPostgresFolder(): string | null {
  const given = process.env.TEST_SECOND_POSTGRES;
  if (given === 'none') return null;
  if (given !== undefined && given !== '') {
    if (existsSync(path.join(given, 'bin', 'initdb'))) return given;
    throw new Error(`TEST_SECOND_POSTGRES is ${given}, but there is no bin/initdb in it.`);
  }
  const found = newestIn(DEBIAN_FOLDER);
  if (found !== null) return found;
  if (installFromDebian(['postgresql'])) {
    const installed = newestIn(DEBIAN_FOLDER);
    if (installed !== null) return installed;
  }
  throw new Error(
    `The database tests run on two versions, and no second PostgreSQL (${OLDEST_SERVED} or newer) was found. Install one and name its folder (the one that holds bin/) in TEST_SECOND_POSTGRES, or set TEST_SECOND_POSTGRES=none to test on the embedded one only.`,
  );
}

function newestIn(folder: string): string | null {
  if (!existsSync(folder)) return null;
  const versions = readdirSync(folder)
    .filter(
      (name) =>
        /^\d+$/.test(name) &&
        Number(name) >= OLDEST_SERVED &&
        existsSync(path.join(folder, name, 'bin', 'initdb')),
    )
    .sort((a, b) => Number(b) - Number(a));
  return versions[0] === undefined ? null : path.join(folder, versions[0]);
}
