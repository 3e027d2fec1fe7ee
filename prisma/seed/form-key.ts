import { createHash } from 'node:crypto';

/** The key of a form that is sent once, made from what it is for: the same in every demo. */
export function formKey(what: string): string {
  const hex = createHash('sha256').update(`gusset demo: ${what}`).digest('hex');
  const variant = '89ab'[Number.parseInt(hex.charAt(16), 16) % 4];
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
