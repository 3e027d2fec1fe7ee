// What pricing can't work with, though each field for itself is fine.
import type { QuoteInput, QuoteLine } from '@gusset/contracts/estimating';
import { MONEY_LIMIT_MINOR, type Refusal, refuse } from '@gusset/units';
import { type LineAmounts, SUPPLIES_KEY } from './line-amounts.ts';

/** The first thing that makes the quote impossible, or null. */
export function refuseQuote(input: QuoteInput): Refusal | null {
  return refuseRepeatedTax(input) ?? refuseRepeatedKey(input) ?? refuseLines(input);
}

function refuseRepeatedTax({ taxes }: QuoteInput): Refusal | null {
  const index = firstRepeated(taxes.map(({ code }) => code));
  if (index === null) return null;
  return refuse(`taxes[${index}].code`, {
    allowed: 'each code once',
    got: taxes[index]?.code ?? null,
    why: 'Two taxes have the same code.',
  });
}

function refuseRepeatedKey({ lines }: QuoteInput): Refusal | null {
  const index = firstRepeated([SUPPLIES_KEY, ...lines.map(({ key }) => key)]);
  if (index === null) return null;
  const key = lines[index - 1]?.key ?? null;
  return refuse(`lines[${index - 1}].key`, {
    allowed: `each key once, and not ${SUPPLIES_KEY}`,
    got: key,
    why: key === SUPPLIES_KEY ? 'That key is kept for the supplies line.' : 'Two lines have the same key.',
  });
}

function firstRepeated(texts: readonly string[]): number | null {
  const index = texts.findIndex((text, at) => texts.indexOf(text) < at);
  return index < 0 ? null : index;
}

function refuseLines({ lines, taxes }: QuoteInput): Refusal | null {
  const codes = taxes.map(({ code }) => code);
  for (const [index, line] of lines.entries()) {
    const refusal = refuseSource(line, index) ?? refuseTaxCodes(line, index, codes);
    if (refusal !== null) return refusal;
  }
  return null;
}

function refuseSource({ kind, source, pricing }: QuoteLine, index: number): Refusal | null {
  const isGoods = kind === 'material' || kind === 'part';
  const field = `lines[${index}].source`;
  if (isGoods && source === null) {
    const why = 'A part or material comes from stock, is bought, or is brought.';
    return refuse(field, { allowed: 'stock, buy, customer or sponsor', got: null, why });
  }
  if (!isGoods && source !== null) {
    return refuse(field, {
      allowed: 'none',
      got: source,
      why: 'Only parts and materials come from somewhere.',
    });
  }
  if (!isGoods || pricing.by !== 'hours') return null;
  const why = 'Parts and materials are priced each, not by the hour.';
  return refuse(`lines[${index}].pricing.by`, { allowed: 'price or markup', got: 'hours', why });
}

function refuseTaxCodes({ taxCodes }: QuoteLine, index: number, known: readonly string[]): Refusal | null {
  const unknown = taxCodes?.findIndex((code) => !known.includes(code)) ?? -1;
  if (unknown < 0) return null;
  return refuse(`lines[${index}].taxCodes[${unknown}]`, {
    allowed: known.length > 0 ? known.join(', ') : 'no code, since the quote has no taxes',
    got: taxCodes?.[unknown] ?? null,
    why: 'The line has a tax that the quote does not have.',
  });
}

/** Sums stay far below what a whole number can hold. */
export function refuseSize(lines: readonly LineAmounts[]): Refusal | null {
  const large = lines.find(({ listMinor, costMinor }) => Math.max(listMinor, costMinor) > MONEY_LIMIT_MINOR);
  if (large === undefined) return null;
  return refuse('lines', {
    allowed: `up to ${MONEY_LIMIT_MINOR} minor units a line`,
    got: large.key,
    why: `${large.description.slice(0, 60)} comes to more than a quote can carry.`,
  });
}
