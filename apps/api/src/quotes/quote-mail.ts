// What goes out by mail about a quote, to the customer and to the shop.
import type { QuoteSnapshot } from '@gusset/contracts/quote';
import { formatMoney, formatShopDate } from '@gusset/units';

type Mail = { readonly subject: string; readonly text: string };

const moneyOf = ({ currency, locale }: QuoteSnapshot, minor: number) =>
  formatMoney({ minor, currency }, locale);

const signature = ({ shop }: QuoteSnapshot) =>
  [shop.name, shop.phone, shop.email].filter((line) => line !== '');

export function quoteSentMail(snapshot: QuoteSnapshot, link: string): Mail {
  const { shop, customer, number, job, vehicle, validUntil, locale } = snapshot;
  return {
    subject: `Your quote ${number} from ${shop.name}`,
    text: [
      `Hello ${customer.name},`,
      '',
      `here is our quote ${number} for ${job.title}${vehicle === '' ? '' : `, ${vehicle}`}:`,
      `${moneyOf(snapshot, snapshot.totalMinor)}, valid until ${formatShopDate(validUntil, locale)}.`,
      '',
      'What we would build, with drawing and prices, is here. You can approve it there or ask us something:',
      link,
      '',
      'The link is for you; whoever has it can read and answer the quote.',
      '',
      ...signature(snapshot),
    ].join('\n'),
  };
}

export function shopAnsweredMail(snapshot: QuoteSnapshot, by: string, text: string, link: string): Mail {
  return {
    subject: `About your quote ${snapshot.number}`,
    text: [
      `${by} of ${snapshot.shop.name} writes:`,
      '',
      text,
      '',
      'The quote:',
      link,
      '',
      ...signature(snapshot),
    ].join('\n'),
  };
}

export function approvedMail(snapshot: QuoteSnapshot, name: string): Mail {
  return {
    subject: `Quote ${snapshot.number} is approved`,
    text: [
      `${name} approved quote ${snapshot.number}: ${snapshot.job.title}, ${moneyOf(snapshot, snapshot.totalMinor)}.`,
      snapshot.depositMinor === 0
        ? ''
        : `Deposit to be taken before parts are ordered: ${moneyOf(snapshot, snapshot.depositMinor)}.`,
    ]
      .filter((line) => line !== '')
      .join('\n'),
  };
}

/** For the customer to keep. */
export function approvalKeptMail(snapshot: QuoteSnapshot, name: string): Mail {
  return {
    subject: `You approved quote ${snapshot.number}`,
    text: [
      `Hello ${snapshot.customer.name},`,
      '',
      `quote ${snapshot.number} for ${snapshot.job.title} was approved in the name of ${name}:`,
      `${moneyOf(snapshot, snapshot.totalMinor)} in all${
        snapshot.depositMinor === 0 ? '' : `, ${moneyOf(snapshot, snapshot.depositMinor)} of it as deposit`
      }.`,
      'We will be in touch about the deposit and the day to bring the vehicle.',
      '',
      `If that was not you, tell us at once.`,
      '',
      ...signature(snapshot),
    ].join('\n'),
  };
}

export function declinedMail(snapshot: QuoteSnapshot): Mail {
  return {
    subject: `Quote ${snapshot.number}: not now`,
    text: `${snapshot.customer.name} does not go ahead with quote ${snapshot.number} for ${snapshot.job.title}.`,
  };
}

export function questionMail(snapshot: QuoteSnapshot, name: string, text: string): Mail {
  return {
    subject: `A question about quote ${snapshot.number}`,
    text: [`${name} asks about quote ${snapshot.number}, ${snapshot.job.title}:`, '', text].join('\n'),
  };
}
