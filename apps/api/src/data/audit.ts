// The record of what happened: written in the same transaction as the change, chained by SHA-256 per shop. With it goes
// the word to all screens that something has changed.
import { createHash } from 'node:crypto';
import type { Tx } from '@gusset/database';
import { canonicalJson } from '@gusset/sheets';
import type { Actor } from '../deps.ts';
import { tellLive } from '../live/live-message.ts';
import { nextNumber } from './counter.ts';
import { asJson } from './json.ts';

export type Happening = {
  /** In the past tense, in the shop's words: `customer.changed`, `quote.approved`. */
  readonly act: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly before?: unknown;
  readonly after?: unknown;
};

/** Who acts where nobody is signed in: the customer on the quote page, the worker. */
export type Recorder = Pick<Actor, 'shopId' | 'requestId' | 'name'> & { readonly userId: string };

export async function record(tx: Tx, actor: Recorder, happening: Happening): Promise<void> {
  const seq = await nextNumber(tx, actor.shopId, 'audit'); // locks the shop's chain until the transaction ends
  const previous = await tx.auditEntry.findUnique({
    where: { shopId_seq: { shopId: actor.shopId, seq: seq - 1 } },
    select: { hash: true },
  });
  const prevHash = previous?.hash ?? '';
  const content = {
    seq,
    actor: actor.userId,
    actorName: actor.name,
    requestId: actor.requestId,
    act: happening.act,
    subject: happening.subject,
    subjectId: happening.subjectId,
    before: happening.before ?? null,
    after: happening.after ?? null,
  };
  const stored = { ...content, before: asJson(content.before), after: asJson(content.after) };
  await tx.auditEntry.create({
    data: { shopId: actor.shopId, ...stored, prevHash, hash: linkHash(prevHash, content) },
  });
  const { act, subject: noun, subjectId: id } = happening;
  await tellLive(tx, { shopId: actor.shopId, act, noun, id });
}

/** The hash of one link: what stood before it and what it says. */
export function linkHash(prevHash: string, content: Readonly<Record<string, unknown>>): string {
  // Through JSON once, so that what is hashed is what the database gives back.
  return createHash('sha256')
    .update(prevHash)
    .update(canonicalJson(JSON.parse(JSON.stringify(content))))
    .digest('hex');
}
