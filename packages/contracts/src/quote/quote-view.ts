// A quote as the shop lists it, and as the customer's page reads and answers it.
import { z } from 'zod';
import { idempotencyKeySchema, idSchema, nameSchema } from '../common/index.ts';
import type { QuoteSnapshot } from './quote-snapshot.ts';

/** Follows from what happened to it. `ended` = its links were taken back, so nobody can open it. */
export type QuoteStanding =
  | 'draft'
  | 'sent'
  | 'seen'
  | 'approved'
  | 'declined'
  | 'superseded'
  | 'expired'
  | 'ended';

export type QuoteMessageView = {
  readonly id: string;
  readonly side: 'customer' | 'shop';
  readonly authorName: string;
  readonly text: string;
  readonly at: string;
};

export type QuoteView = {
  readonly id: string;
  readonly version: number;
  readonly number: string;
  readonly standing: QuoteStanding;
  readonly currency: string;
  readonly totalMinor: number;
  readonly depositMinor: number;
  readonly priceRevision: string;
  readonly madeAt: string;
  readonly validUntil: string;
  readonly promisedOn: string | null;
  readonly sentAt: string | null;
  /** An address, or empty where the link was handed over another way. */
  readonly sentTo: string | null;
  readonly firstSeenAt: string | null;
  readonly approvedAt: string | null;
  readonly approvedByName: string | null;
  readonly declinedAt: string | null;
  readonly supersededAt: string | null;
  /** How many links to it still open. */
  readonly openLinks: number;
  readonly messages: readonly QuoteMessageView[];
};

/** What the customer's page shows. `ended` tells no more than who to ask. */
export type CustomerQuotePage =
  | {
      readonly state: 'open' | 'approved' | 'declined' | 'expired' | 'superseded';
      readonly snapshot: QuoteSnapshot;
      readonly snapshotSha256: string;
      readonly approvedAt: string | null;
      readonly approvedByName: string | null;
      readonly messages: readonly QuoteMessageView[];
    }
  | { readonly state: 'ended'; readonly shopName: string; readonly phone: string; readonly email: string };

export const sendQuoteSchema = z.strictObject({
  key: idempotencyKeySchema,
  quoteId: idSchema,
  /** Null = make a link to hand over; nothing is mailed. */
  to: z.email('Type an address such as name@example.com.').max(254).nullable(),
});

const messageTextSchema = z
  .string()
  .max(4_000, 'At most 4000 characters fit here.')
  .refine((text) => !text.includes('\u0000') && text.isWellFormed(), 'Some characters here cannot be stored.')
  .transform((text) => text.normalize('NFC').trim())
  .pipe(z.string().min(1, 'Write what you would like to know.'));

const snapshotHashSchema = z.string().regex(/^[0-9a-f]{64}$/);

export const approveQuoteSchema = z.strictObject({
  /** Typed by the customer: the approval carries it. */
  name: nameSchema,
  /** Of what they have read; another one is not approved. */
  snapshotSha256: snapshotHashSchema,
});

export const declineQuoteSchema = z.strictObject({ snapshotSha256: snapshotHashSchema });

export const askAboutQuoteSchema = z.strictObject({
  key: idempotencyKeySchema,
  name: nameSchema,
  text: messageTextSchema,
});
