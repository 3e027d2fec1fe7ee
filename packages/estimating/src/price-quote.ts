// Quantities and rates -> a priced quote. Every line is rounded once, halves away from zero; discount and tax are
// split by largest remainder in the order of line keys, so lines sum to totals and their order changes nothing.
import type { PricedLine, PricedQuote, QuoteInput } from '@gusset/contracts/estimating';
import type { Refusal } from '@gusset/units';
import { discountShares } from './discount-shares.ts';
import { type LineAmounts, lineAmounts } from './line-amounts.ts';
import { type TaxShares, taxShares } from './line-taxes.ts';
import { marginOf } from './margin.ts';
import { refuseQuote, refuseSize } from './quote-door.ts';
import { quoteTotals, quoteWarnings, taxTotals, totalsByKind } from './quote-totals.ts';

/** Prices a quote for the shop's own eyes; `hideCosts` makes the customer's. */
export function priceQuote(input: QuoteInput): PricedQuote | Refusal {
  const impossible = refuseQuote(input);
  if (impossible !== null) return impossible;
  const amounts = lineAmounts(input);
  const tooLarge = refuseSize(amounts);
  if (tooLarge !== null) return tooLarge;

  const discount = discountShares(amounts, input.discount);
  const discounted = amounts.map((line) => withDiscount(line, discount.byLine.get(line.key) ?? 0));
  const { counted: countedTax, options: optionTax } = taxesOf(discounted, input);
  const lines = discounted.map((line) => {
    const shares = line.counted ? countedTax : optionTax;
    return pricedLine(line, shares.byLine.get(line.key) ?? 0, input.pricesIncludeTax);
  });
  const counted = lines.filter((line) => line.counted);
  return {
    costs: 'shown',
    currency: input.currency,
    pricesIncludeTax: input.pricesIncludeTax,
    taxRounding: input.taxRounding,
    taxes: taxTotals(counted, input, countedTax.byCode),
    validDays: input.validDays,
    exclusions: [...input.exclusions],
    lines,
    byKind: totalsByKind(counted),
    totals: quoteTotals(counted, input.deposit),
    warnings: quoteWarnings(counted, amounts, discount, input.marginFloorBasisPoints),
  };
}

type DiscountedLine = LineAmounts & { readonly discountMinor: number; readonly statedMinor: number };

function withDiscount(line: LineAmounts, discountMinor: number): DiscountedLine {
  return { ...line, discountMinor, statedMinor: line.listMinor - discountMinor };
}

/** An option is taxed by itself, so that its price can be shown without being in any sum. */
function taxesOf(
  lines: readonly DiscountedLine[],
  input: QuoteInput,
): { readonly counted: TaxShares; readonly options: TaxShares } {
  const counted = lines.filter((line) => line.counted);
  const options = lines.filter((line) => !line.counted);
  return {
    counted: taxShares(counted, input),
    options: taxShares(options, { ...input, taxRounding: 'per-line' }),
  };
}

function pricedLine(line: DiscountedLine, taxMinor: number, pricesIncludeTax: boolean): PricedLine {
  const netMinor = pricesIncludeTax ? line.statedMinor - taxMinor : line.statedMinor;
  return {
    key: line.key,
    kind: line.kind,
    description: line.description,
    source: line.source,
    quantity: line.quantity,
    unit: line.unit,
    minutes: line.minutes,
    unitPriceMinor: line.unitPriceMinor,
    listMinor: line.listMinor,
    discountMinor: line.discountMinor,
    netMinor,
    taxCodes: [...line.taxCodes],
    taxMinor,
    grossMinor: netMinor + taxMinor,
    counted: line.counted,
    costMinor: line.costMinor,
    suppliedValueMinor: line.suppliedValueMinor,
    ...marginOf(netMinor, line.costMinor),
  };
}
