// The worker's side of mail. Without SMTP_URL nothing is sent and the outbox screen keeps the text.
import { createTransport, type Transporter } from 'nodemailer';
import type { Deps } from '../deps.ts';

export type SendMail = (mail: {
  readonly id: string;
  readonly to: string;
  readonly subject: string;
  readonly text: string;
}) => Promise<void>;

/** Null where no mail server is set. */
export function makeMailer(env: Deps['env']): SendMail | null {
  if (env.SMTP_URL === '') return null;
  const transport: Transporter = createTransport(env.SMTP_URL, {
    from: env.MAIL_FROM,
  });
  const host = new URL(env.PUBLIC_URL).hostname;
  return async ({ id, to, subject, text }) => {
    await transport.sendMail({
      // As an object, so that nothing in the address is parsed as another recipient.
      to: { name: '', address: to },
      subject,
      text,
      // The same mail sent twice carries the same id, so a mailbox shows it once.
      messageId: `<${id}@${host}>`,
      headers: { 'Auto-Submitted': 'auto-generated' },
    });
  };
}

/** Sends one outbox row; a row that went already is left alone. */
export async function sendMailRow(deps: Deps, send: SendMail, shopId: string, mailId: string): Promise<void> {
  const mail = await deps.doors.inShop(shopId, (tx) =>
    tx.mailMessage.findUnique({
      where: { shopId_id: { shopId, id: mailId } },
      select: { id: true, toAddress: true, subject: true, text: true, sentAt: true },
    }),
  );
  if (mail === null || mail.sentAt !== null) return;
  try {
    await send({ id: mail.id, to: mail.toAddress, subject: mail.subject, text: mail.text });
  } catch (error) {
    const failure = error instanceof Error ? error.message.slice(0, 300) : 'unknown';
    await deps.doors.inShop(shopId, (tx) =>
      tx.mailMessage.update({
        where: { shopId_id: { shopId, id: mailId } },
        data: { failedAt: deps.clock.now(), failure },
      }),
    );
    throw error; // the queue tries again later
  }
  await deps.doors.inShop(shopId, (tx) =>
    tx.mailMessage.update({
      where: { shopId_id: { shopId, id: mailId } },
      data: { sentAt: deps.clock.now(), failedAt: null, failure: null },
    }),
  );
}
