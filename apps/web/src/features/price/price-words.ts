// What the price sheet says in words: the verdict, what to settle, what changed. Amounts come formatted by `money`.
import type { LineKind, QuoteWarning } from '@gusset/contracts/estimating';
import type { PriceNote, PriceResult } from '@gusset/contracts/price';
import { formatPercent } from '@gusset/units';
import type { MoneyWords } from '../../shared/job/quote-changes.ts';
import type { VerdictTone } from '../../shared/marks/verdict.tsx';

/** Kinds in the groups that the sheet and the customer's paper have. */
export const PRICE_GROUPS = [
  { title: 'Parts and materials', kinds: ['material', 'part'] },
  { title: 'Work', kinds: ['labour'] },
  { title: 'Also', kinds: ['supplies', 'subcontract', 'other'] },
] as const satisfies readonly { title: string; kinds: readonly LineKind[] }[];

export const KIND_WORDS: Readonly<Record<LineKind, string>> = {
  material: 'Materials',
  part: 'Parts',
  labour: 'Work',
  supplies: 'Supplies',
  subcontract: 'Work by others',
  other: 'Other',
};

export const SOURCE_WORDS = {
  stock: 'from stock',
  buy: 'to buy',
  customer: 'customer brings it',
  sponsor: 'from a sponsor',
} as const;

export type Headline = { readonly tone: VerdictTone; readonly words: string; readonly detail: string };

export function priceHeadline({ quote, notes }: PriceResult, money: MoneyWords): Headline {
  const { totals, warnings } = quote;
  const margin =
    totals.marginBasisPoints === null
      ? ''
      : `Margin ${formatPercent(totals.marginBasisPoints, { digits: 1 })}, ${money(totals.marginMinor)}`;
  const unpriced = notes.filter(({ code }) => code === 'no-price').length;
  if (unpriced > 0) {
    return {
      tone: 'check',
      words: unpriced === 1 ? 'One line has no price yet' : `${unpriced} lines have no price yet`,
      detail: `${money(totals.grandMinor)} without them`,
    };
  }
  if (warnings.some(({ code }) => code === 'margin-below-floor')) {
    return { tone: 'check', words: 'The margin is below the shop’s floor', detail: margin };
  }
  if (warnings.length > 0) return { tone: 'check', words: 'Look at this before it goes out', detail: margin };
  return { tone: 'pass', words: `${money(totals.grandMinor)} in all`, detail: margin };
}

export function warningWords(
  warning: QuoteWarning,
  nameOf: (key: string) => string,
  money: MoneyWords,
): string {
  switch (warning.code) {
    case 'price-below-cost':
      return `${nameOf(warning.lineKey)} sells for ${money(warning.netMinor)} and costs ${money(warning.costMinor)}`;
    case 'margin-below-floor':
      return `Margin ${formatPercent(warning.marginBasisPoints, { digits: 1 })}, the floor is ${formatPercent(warning.floorBasisPoints, { digits: 1 })}`;
    case 'discount-cut-back':
      return `Only ${money(warning.givenMinor)} of the discount of ${money(warning.askedMinor)} could be given`;
    case 'supplied-part-price-dropped':
      return `${nameOf(warning.lineKey)} is brought, so it is listed at nothing`;
  }
}

export function noteWords(note: PriceNote, nameOf: (key: string) => string): string {
  switch (note.code) {
    case 'no-scope':
      return 'Write what the customer gets before you make a quote';
    case 'no-price':
      return `${note.description} has no price in the catalogue: press its price and type one`;
    case 'price-for-nothing':
      return 'A price was typed for a line that is no longer on the parts sheet; it does nothing';
    case 'wait-left-out':
      return `${nameOf(note.taskKey)} waited for a task that is not on the list; that wait is left out`;
  }
}
