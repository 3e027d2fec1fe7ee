// Whether the record of what happened still says what was written: each link's hash is worked out anew.
import { linkHash } from '../data/audit.ts';

export type ChainLink = {
  readonly seq: number;
  readonly actor: string;
  readonly actorName: string;
  readonly requestId: string;
  readonly act: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly before: unknown;
  readonly after: unknown;
  readonly prevHash: string;
  readonly hash: string;
};

/** Where a chain has been followed to. */
export type ChainEnd = { readonly seq: number; readonly hash: string };
export const CHAIN_START: ChainEnd = { seq: 0, hash: '' };

export type BrokenLink = { readonly seq: number; readonly why: string };

/** Follows links in order from `end`; answers the new end, or the first link that does not hold. */
export function followChain(end: ChainEnd, links: readonly ChainLink[]): ChainEnd | BrokenLink {
  let at = end;
  for (const { prevHash, hash, ...content } of links) {
    if (content.seq !== at.seq + 1) return { seq: at.seq + 1, why: 'the entry is missing' };
    if (prevHash !== at.hash) return { seq: content.seq, why: 'it does not follow the entry before it' };
    if (hash !== linkHash(prevHash, content)) return { seq: content.seq, why: 'its text was altered' };
    at = { seq: content.seq, hash };
  }
  return at;
}
