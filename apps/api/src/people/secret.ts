// Secrets that open one thing without more: made here, told once, kept as their SHA-256 only.
import { createHash, randomBytes } from 'node:crypto';

const SECRET_BYTES = 32;

/** `prefix`: in front of it, so that a leaked one is found by a scan for it. */
export function newSecret(prefix = ''): { readonly token: string; readonly tokenHash: string } {
  const token = `${prefix}${randomBytes(SECRET_BYTES).toString('base64url')}`;
  return { token, tokenHash: hashOfSecret(token) };
}

export function hashOfSecret(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
