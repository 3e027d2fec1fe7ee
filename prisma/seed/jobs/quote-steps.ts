// A quote's way: made and sent by the shop, read, asked about and answered by the customer on their own page.
import { customerCaller } from '../demo-staff.ts';
import { formKey } from '../form-key.ts';
import { secretInMail } from '../secret-in-mail.ts';
import type { DemoMessage } from './demo-quote.ts';
import type { JobsShop } from './jobs-shop.ts';

export type QuotedJob = {
  readonly jobId: string;
  readonly jobName: string;
  readonly customer: { readonly name: string; readonly email: string };
};

/** Answers the quote's id. */
export async function sendDemoQuote({ staff }: JobsShop, job: QuotedJob): Promise<string> {
  const { quote } = staff.daniel;
  const made = await quote.make({ key: formKey(`quote ${job.jobName}`), jobId: job.jobId });
  await quote.send({ key: formKey(`send ${job.jobName}`), quoteId: made.id, to: job.customer.email });
  return made.id;
}

/** The customer's page, by the link in the newest mail that they got. */
async function customerPage({ deps, staff }: JobsShop, { customer }: QuotedJob) {
  const token = await secretInMail(deps, { shopId: staff.shopId, to: customer.email, path: 'q' });
  return customerCaller(deps, token).customerQuote;
}

export async function openQuotePage(shop: JobsShop, job: QuotedJob): Promise<void> {
  await (await customerPage(shop, job)).seen();
}

export async function writeAboutQuote(
  shop: JobsShop,
  job: QuotedJob & { readonly quoteId: string },
  { side, text }: DemoMessage,
): Promise<void> {
  const key = formKey(`message ${job.jobName} ${text}`);
  if (side === 'shop') await shop.staff.daniel.quote.answer({ key, quoteId: job.quoteId, text });
  else await (await customerPage(shop, job)).ask({ key, name: job.customer.name, text });
}

export async function answerQuote(
  shop: JobsShop,
  job: QuotedJob,
  kind: 'approved' | 'declined',
): Promise<void> {
  const page = await customerPage(shop, job);
  const read = await page.read();
  if (read.state === 'ended') throw new Error(`the demo's quote for ${job.jobName} has no link any more`);
  const { snapshotSha256 } = read;
  if (kind === 'approved') await page.approve({ name: job.customer.name, snapshotSha256 });
  else await page.decline({ snapshotSha256 });
}
