// npm run mail: a mail server for development. It takes every mail, delivers none, prints each to the terminal and
// keeps it as a file. Set SMTP_URL=smtp://127.0.0.1:1025 for the program that is to send through it.
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';
import { ROOT } from './start/process.ts';
import { say, stopWith } from './start/say.ts';

const LARGEST_MAIL_BYTES = 10 * 1_048_576;

const host = process.env.MAIL_HOST ?? '127.0.0.1';
const port = Number(process.env.MAIL_PORT ?? 1025);
const folder = path.resolve(ROOT, process.env.MAIL_FOLDER ?? '.data/mail');
let caught = 0;

const server = new SMTPServer({
  authOptional: true,
  disabledCommands: ['AUTH', 'STARTTLS'],
  size: LARGEST_MAIL_BYTES,
  logger: false,
  onData(stream, session, done) {
    const recipients = session.envelope.rcptTo.map(({ address }) => address);
    readAll(stream)
      .then((raw) => keep(raw, recipients))
      .then(
        () => done(),
        (error: unknown) => done(error instanceof Error ? error : new Error(String(error))),
      );
  },
});
server.on('error', stopWith);

try {
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new Error(`MAIL_PORT is "${process.env.MAIL_PORT}": give a whole number from 1 to 65535.`);
  }
  await mkdir(folder, { recursive: true });
  server.listen(port, host, () => {
    say(
      `Catching mail on smtp://${host}:${port}. Nothing is delivered; files go to ${folder}. Ctrl-C stops.`,
    );
  });
} catch (error) {
  stopWith(error);
}
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => server.close(() => process.exit(0)));
}

async function readAll(stream: AsyncIterable<Buffer | string>): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks);
}

/** One file a mail, named by when it came; the name holds nothing that the mail says. */
async function keep(raw: Buffer, recipients: readonly string[]): Promise<void> {
  caught += 1;
  const stamp = new Date().toISOString().replaceAll(':', '-');
  const file = path.join(folder, `${stamp}-${String(caught).padStart(4, '0')}.eml`);
  await writeFile(file, raw);
  print(await simpleParser(raw), recipients, file);
}

function print(mail: ParsedMail, recipients: readonly string[], file: string): void {
  say(`\n── ${mail.subject ?? '(no subject)'}`);
  say(`   from ${mail.from?.text ?? '(nobody)'}  to ${recipients.join(', ')}  ${path.basename(file)}\n`);
  for (const line of (mail.text ?? '').trimEnd().split('\n')) say(`   ${printable(line)}`);
}

/** Control characters in a mail must not steer the terminal. */
function printable(line: string): string {
  return line.replace(/\p{Cc}/gu, ' ');
}
