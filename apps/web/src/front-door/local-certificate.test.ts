import { X509Certificate } from 'node:crypto';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { localCertificate, trustInstructions } from './local-certificate.ts';

const NOW = new Date('2026-11-24T09:00:00Z');
const DAY_MS = 86_400_000;
let folder = '';

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'gusset-certificate-'));
});
afterEach(() => rm(folder, { recursive: true }));

describe('localCertificate', () => {
  it('names localhost and the loopback address', async () => {
    const { cert } = await localCertificate(folder, NOW);
    const parsed = new X509Certificate(cert);
    expect(parsed.checkHost('localhost')).toBe('localhost');
    expect(parsed.checkIP('127.0.0.1')).toBe('127.0.0.1');
  });

  it('keeps the key from other users of the computer', async () => {
    await localCertificate(folder, NOW);
    const { mode } = await stat(join(folder, 'tls', 'local-key.pem'));
    expect(mode & 0o077).toBe(0);
  });

  it('is kept, so a device trusts it once, and renewed before it ends', async () => {
    const first = await localCertificate(folder, NOW);
    const nextDay = await localCertificate(folder, new Date(NOW.getTime() + DAY_MS));
    expect(nextDay.cert).toBe(first.cert);
    const nearItsEnd = await localCertificate(folder, new Date(NOW.getTime() + 390 * DAY_MS));
    expect(nearItsEnd.cert).not.toBe(first.cert);
  });

  it('tells where the certificate is and that browsers warn', async () => {
    const made = await localCertificate(folder, NOW);
    expect(trustInstructions(made)).toContain(made.certFile);
    expect(trustInstructions(made)).toMatch(/warn/);
  });
});
