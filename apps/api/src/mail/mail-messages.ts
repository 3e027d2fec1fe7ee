// Mail is asked for inside the change it tells of: a row in the outbox and a queued message, or neither.
import type { Tx } from '@gusset/database';
import type { Actor, Deps } from '../deps.ts';

export type NewMail = {
  readonly purpose: 'invite' | 'quote' | 'quote-answer' | 'quote-question';
  readonly subjectId: string;
  readonly to: string;
  readonly subject: string;
  readonly text: string;
};

export async function askForMail(
  deps: Pick<Deps, 'queue'>,
  tx: Tx,
  actor: Pick<Actor, 'shopId'>,
  mail: NewMail,
): Promise<void> {
  const row = await tx.mailMessage.create({
    data: {
      shopId: actor.shopId,
      purpose: mail.purpose,
      subjectId: mail.subjectId,
      toAddress: mail.to,
      subject: oneLine(mail.subject),
      text: mail.text,
    },
    select: { id: true },
  });
  await deps.queue.ask(tx, 'send-mail', { shopId: actor.shopId, mailId: row.id });
}

/** A header holds one line: whatever a name contains cannot start another header. */
function oneLine(text: string): string {
  return text.replace(/[\r\n\u2028\u2029]+/g, ' ').slice(0, 200);
}
