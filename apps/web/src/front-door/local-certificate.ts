// A certificate for trying HTTPS on the shop's own network (phones need it for the camera). Kept in the data
// folder so that a device has to trust it once only.

import { X509Certificate } from 'node:crypto';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { hostname, networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { generate } from 'selfsigned';

/** The longest that current browsers accept. */
const VALID_DAYS = 397;
const RENEW_DAYS_BEFORE = 14;
const DAY_MS = 86_400_000;

export type LocalCertificate = {
  readonly cert: string;
  readonly key: string;
  readonly certFile: string;
  readonly names: readonly string[];
};

/** Names and addresses by which this computer is reached on the shop's network, sorted. */
export function localNames(): { readonly hosts: readonly string[]; readonly addresses: readonly string[] } {
  const addresses = Object.values(networkInterfaces())
    .flatMap((entries) => entries ?? [])
    .filter((entry) => entry.family === 'IPv4' && !entry.internal)
    .map((entry) => entry.address);
  return {
    hosts: ['localhost', hostname().toLowerCase()].sort(),
    addresses: ['127.0.0.1', ...addresses].sort(),
  };
}

const stillServes = (cert: string, names: readonly string[], now: Date): boolean => {
  const parsed = new X509Certificate(cert);
  const renewMs = new Date(parsed.validTo).getTime() - RENEW_DAYS_BEFORE * DAY_MS;
  const covers = (name: string) => parsed.checkHost(name) ?? parsed.checkIP(name);
  return renewMs > now.getTime() && names.every((name) => covers(name) !== undefined);
};

const readKept = async (file: string): Promise<string | null> => {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
};

/** The kept certificate while it names this computer and isn't about to end; else a new one, kept. */
export async function localCertificate(dataDir: string, now: Date): Promise<LocalCertificate> {
  const folder = join(dataDir, 'tls');
  const certFile = join(folder, 'local-certificate.pem');
  const keyFile = join(folder, 'local-key.pem');
  const { hosts, addresses } = localNames();
  const names = [...hosts, ...addresses];

  const [keptCert, keptKey] = await Promise.all([readKept(certFile), readKept(keyFile)]);
  if (keptCert && keptKey && stillServes(keptCert, names, now)) {
    return { cert: keptCert, key: keptKey, certFile, names };
  }

  const made = await generate([{ name: 'commonName', value: 'Gusset on this computer' }], {
    keyType: 'ec',
    curve: 'P-256',
    algorithm: 'sha256',
    notBeforeDate: now,
    notAfterDate: new Date(now.getTime() + VALID_DAYS * DAY_MS),
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [
          ...hosts.map((value) => ({ type: 2 as const, value })),
          ...addresses.map((ip) => ({ type: 7 as const, ip })),
        ],
      },
    ],
  });
  await mkdir(folder, { recursive: true, mode: 0o700 });
  await writeFile(keyFile, made.private, { mode: 0o600 });
  await writeFile(certFile, made.cert);
  return { cert: made.cert, key: made.private, certFile, names };
}

/** What to do once on each device so that its browser trusts the certificate. */
export function trustInstructions({ certFile, names }: LocalCertificate): string {
  return [
    `HTTPS uses a local certificate for ${names.join(', ')}.`,
    `Browsers warn until a device trusts it. Copy ${certFile} to the device, then:`,
    '  Windows   open it, Install Certificate, "Trusted Root Certification Authorities"',
    '  macOS     open it in Keychain Access, set Trust to "Always Trust"',
    '  iOS       open it, install the profile, then Settings, General, About, Certificate Trust Settings',
    '  Android   Settings, Security, Install a certificate, CA certificate',
    '  Linux     add it in the browser under Certificates, Authorities',
    'Compare the fingerprint on the device before trusting it. Remove it when this computer is retired.',
  ].join('\n');
}
