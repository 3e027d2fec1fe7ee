// What `npm start` goes by: the environment, and secrets that it makes once and keeps in the data folder.
import { randomBytes } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from './process.ts';

export type StartSettings = {
  readonly port: number;
  readonly host: string;
  readonly dataFolder: string;
  readonly publicUrl: string;
  readonly secure: boolean;
  /** Null = the embedded database. */
  readonly databaseUrl: string | null;
  /** Owner's connection for migrations, where it differs. */
  readonly databaseAdminUrl: string | null;
  readonly demo: boolean;
};

const DEFAULT_PORT = 4300;

/** Throws a sentence on a setting that cannot be. */
export function readSettings(source: Readonly<Record<string, string | undefined>>): StartSettings {
  const port = Number(source.PORT ?? DEFAULT_PORT);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new Error(`PORT is "${source.PORT}": give a whole number from 1 to 65535.`);
  }
  const secure = source.GUSSET_LOCAL_CERT === '1' || (source.TLS_CERT_FILE ?? '') !== '';
  // Without HTTPS only this machine is served: the session cookie needs a secure address or localhost.
  const host = source.HOST ?? (secure ? '0.0.0.0' : '127.0.0.1');
  return {
    port,
    host,
    secure,
    dataFolder: path.resolve(ROOT, source.GUSSET_DATA_DIR ?? '.data'),
    publicUrl: (source.PUBLIC_URL ?? `${secure ? 'https' : 'http'}://localhost:${port}`).replace(/\/+$/, ''),
    databaseUrl: emptyToNull(source.DATABASE_URL),
    databaseAdminUrl: emptyToNull(source.DATABASE_ADMIN_URL),
    demo: source.GUSSET_DEMO !== '0',
  };
}

/** The key that signs session cookies: from AUTH_SECRET, or made once and kept (mode 0600). */
export function authSecret(dataFolder: string, given: string | undefined): string {
  if (given !== undefined && given !== '') return given;
  mkdirSync(dataFolder, { recursive: true });
  const file = path.join(dataFolder, 'auth-secret');
  if (!existsSync(file)) writeFileSync(file, randomBytes(32).toString('base64url'), { mode: 0o600 });
  chmodSync(file, 0o600);
  return readFileSync(file, 'utf8').trim();
}

function emptyToNull(text: string | undefined): string | null {
  return text === undefined || text === '' ? null : text;
}
