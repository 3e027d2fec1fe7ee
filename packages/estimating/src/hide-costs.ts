// The customer's copy of a quote. Fields are named one by one: what is added to a priced quote later stays inside
// the shop until somebody lists it here.
import type { CustomerLine, CustomerQuote, PricedLine, PricedQuote } from '@gusset/contracts/estimating';

/** Takes out costs, margins, declared values and warnings. */
export function hideCosts(priced: PricedQuote): CustomerQuote {
  const { totals } = priced;
  return {
    costs: 'hidden',
    currency: priced.currency,
    pricesIncludeTax: priced.pricesIncludeTax,
    taxRounding: priced.taxRounding,
    taxes: priced.taxes,
    validDays: priced.validDays,
    exclusions: priced.exclusions,
    lines: priced.lines.map(customerLine),
    byKind: priced.byKind.map(({ kind, listMinor, discountMinor, netMinor, taxMinor, grossMinor }) => ({
      kind,
      listMinor,
      discountMinor,
      netMinor,
      taxMinor,
      grossMinor,
    })),
    totals: {
      listMinor: totals.listMinor,
      discountMinor: totals.discountMinor,
      netMinor: totals.netMinor,
      taxMinor: totals.taxMinor,
      grandMinor: totals.grandMinor,
      depositMinor: totals.depositMinor,
      balanceMinor: totals.balanceMinor,
      labourMinutes: totals.labourMinutes,
    },
  };
}

function customerLine(line: PricedLine): CustomerLine {
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
    netMinor: line.netMinor,
    taxCodes: line.taxCodes,
    taxMinor: line.taxMinor,
    grossMinor: line.grossMinor,
    counted: line.counted,
  };
}
