// The queued work, done in this process: as its own process (`node src/server.ts worker`) or beside the API.
import type { Deps } from './deps.ts';
import { makeMailer, sendMailRow } from './mail/send-mail.ts';

export async function startWorker(deps: Deps): Promise<void> {
  const send = makeMailer(deps.env);
  await deps.queue.work('send-mail', async ({ shopId, mailId }) => {
    if (send !== null) await sendMailRow(deps, send, shopId, mailId);
  });
  await deps.queue.work('send-reset-mail', async ({ to, link }) => {
    if (send === null) {
      deps.log.warn('a password reset was asked for, but no mail server is set (SMTP_URL)');
      return;
    }
    await send({
      id: `reset-${deps.clock.now().getTime()}`,
      to,
      subject: 'Choose a new password for Gusset',
      text: `Somebody asked to choose a new password for this address. If that was you, open this link within an hour:\n\n${link}\n\nIf not, ignore this mail: nothing changes.`,
    });
  });
  deps.log.info('worker ready');
}
