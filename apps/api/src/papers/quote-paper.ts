// A quote on paper, from its frozen picture: the same for the shop, for the customer, and in ten years.
import type { QuotePaper } from '@gusset/contracts/drawings';
import type { QuoteSnapshot } from '@gusset/contracts/quote';
import { quoteDocument } from '@gusset/drawings';
import { renderPdf } from '@gusset/drawings/pdf';
import { formatMoney, formatShopDate } from '@gusset/units';
import { sceneOf } from '../quotes/quote-snapshot.ts';

/** Longest that a cell of the paper's letterhead and a paragraph of its scope take. */
const CELL_LIMIT = 200;
const PARAGRAPH_LIMIT = 1_000;
const PARAGRAPHS = 30;

export function quotePaperOf(snapshot: QuoteSnapshot): QuotePaper {
  const day = (date: string) => formatShopDate(date, snapshot.locale);
  const { shop } = snapshot;
  const amount = (minor: number) => formatMoney({ minor, currency: snapshot.currency }, snapshot.locale);
  return {
    paper: snapshot.paper === 'Letter' || snapshot.paper === 'Tabloid' ? 'Letter' : 'A4',
    locale: snapshot.locale,
    currency: snapshot.currency,
    shop: {
      name: shop.name,
      lines: [...shop.lines, shop.phone, shop.email]
        .filter((line) => line !== '')
        .slice(0, 8)
        .map((line) => line.slice(0, CELL_LIMIT)),
      taxNumber: shop.taxNumber.slice(0, CELL_LIMIT),
    },
    number: snapshot.number,
    version: snapshot.version,
    issued: day(snapshot.issuedOn),
    validUntil: day(snapshot.validUntil),
    customer: {
      name: snapshot.customer.name,
      lines: snapshot.customer.lines.slice(0, 8).map((line) => line.slice(0, CELL_LIMIT)),
    },
    vehicle: snapshot.vehicle.slice(0, CELL_LIMIT),
    job: `${snapshot.job.number} ${snapshot.job.title}`.slice(0, CELL_LIMIT),
    scope: paragraphsOf(snapshot.scope, PARAGRAPH_LIMIT),
    sections: snapshot.sections.map(({ title, lines }) => ({ title, lines: [...lines] })),
    taxIncluded: snapshot.taxIncluded,
    subtotalMinor: snapshot.subtotalMinor,
    taxes: [...snapshot.taxes].map((tax) => ({ ...tax, name: tax.name.slice(0, CELL_LIMIT) })),
    totalMinor: snapshot.totalMinor,
    deposit:
      snapshot.depositMinor === 0
        ? null
        : { amountMinor: snapshot.depositMinor, due: 'before parts are ordered' },
    terms: [
      ...(snapshot.exclusions.length === 0 ? [] : [`Not included: ${snapshot.exclusions.join('; ')}`]),
      ...(snapshot.depositMinor === 0 ? [] : [`At hand-over: ${amount(snapshot.balanceMinor)}.`]),
      ...paragraphsOf(snapshot.terms, 2 * PARAGRAPH_LIMIT),
      ...snapshot.cautions,
    ].slice(0, PARAGRAPHS),
    note:
      snapshot.promisedOn === null
        ? ''
        : `Ready on ${day(snapshot.promisedOn)}, if it is approved in time and the parts come as promised.`,
    approveUrl: '',
  };
}

/** Long paragraphs are cut into pieces that the paper takes, at spaces where there are any. */
function paragraphsOf(text: string, limit: number): string[] {
  return text
    .split(/\n+/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .flatMap((line) => pieces(line, limit))
    .slice(0, PARAGRAPHS);
}

function pieces(line: string, limit: number): string[] {
  const cut: string[] = [];
  let rest = line;
  while (rest.length > limit) {
    const space = rest.lastIndexOf(' ', limit);
    const at = space > 0 ? space : limit;
    cut.push(rest.slice(0, at));
    rest = rest.slice(at).trimStart();
  }
  return [...cut, rest];
}

export function quotePdf(snapshot: QuoteSnapshot): Promise<Uint8Array> {
  const { section, whole } = snapshot.drawings;
  const drawing = section ?? whole;
  const document = quoteDocument(quotePaperOf(snapshot), drawing === null ? null : () => sceneOf(drawing));
  return renderPdf(document, { createdAt: new Date(snapshot.madeAt) });
}
