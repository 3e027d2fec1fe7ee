// One line of a quote -> what it lists at and what it costs, each rounded once, halves away from zero.
import type { LineKind, LinePricing, PartSource, QuoteInput, QuoteLine } from '@gusset/contracts/estimating';
import { applyRate, divideRounded, rateWithin } from '@gusset/units';
import { taxesOn } from './line-taxes.ts';

/** A line with its own amounts, before discount and tax. */
export type LineAmounts = {
  readonly key: string;
  readonly kind: LineKind;
  readonly description: string;
  readonly source: PartSource | null;
  readonly quantity: number;
  readonly unit: string;
  readonly minutes: number | null;
  readonly unitPriceMinor: number | null;
  readonly listMinor: number;
  readonly costMinor: number;
  readonly suppliedValueMinor: number;
  /** A customer's or sponsor's part that came with a price. */
  readonly priceDropped: boolean;
  readonly taxCodes: readonly string[];
  readonly discountable: boolean;
  readonly counted: boolean;
};

/** The generated line's key; no line of a person may have it. */
export const SUPPLIES_KEY = 'supplies';

/** Every line with its amounts, and the supplies line that follows from labour. */
export function lineAmounts(input: QuoteInput): readonly LineAmounts[] {
  const lines = input.lines.map((line) => amountsOf(line, input));
  const supplies = suppliesLine(lines, input);
  return supplies === null ? lines : [...lines, supplies];
}

function amountsOf(line: QuoteLine, input: QuoteInput): LineAmounts {
  const { key, kind, description, source, pricing, excludeFrom } = line;
  const shared = {
    key,
    kind,
    description,
    source,
    taxCodes: excludeFrom.includes('tax') ? [] : taxesOn(line, input.taxes),
    discountable: !excludeFrom.includes('discount'),
    counted: !excludeFrom.includes('total'),
  };
  const priced = amountsByPricing(pricing);
  if (source !== 'customer' && source !== 'sponsor') {
    return { ...shared, ...priced, suppliedValueMinor: 0, priceDropped: false };
  }
  return {
    ...shared,
    ...priced,
    unitPriceMinor: 0,
    listMinor: 0,
    costMinor: 0,
    suppliedValueMinor: priced.costMinor,
    priceDropped: priced.listMinor > 0,
  };
}

type Amounts = Pick<
  LineAmounts,
  'quantity' | 'unit' | 'minutes' | 'unitPriceMinor' | 'listMinor' | 'costMinor'
>;

function amountsByPricing(pricing: LinePricing): Amounts {
  if (pricing.by === 'hours') {
    const { minutes, hourlyRateMinor, hourlyCostMinor } = pricing;
    return {
      quantity: Number((minutes / 60).toFixed(6)),
      unit: 'h',
      minutes,
      unitPriceMinor: hourlyRateMinor,
      listMinor: divideRounded(BigInt(minutes) * BigInt(hourlyRateMinor), 60n),
      costMinor: divideRounded(BigInt(minutes) * BigInt(hourlyCostMinor), 60n),
    };
  }
  const { quantity, unit, unitCostMinor } = pricing;
  const costMinor = timesQuantity(unitCostMinor, quantity);
  if (pricing.by === 'price') {
    const { unitPriceMinor } = pricing;
    const listMinor = timesQuantity(unitPriceMinor, quantity);
    return { quantity, unit, minutes: null, unitPriceMinor, listMinor, costMinor };
  }
  return {
    quantity,
    unit,
    minutes: null,
    costMinor,
    ...markedUp(unitCostMinor, quantity, pricing.markupBasisPoints),
  };
}

const MICRO = 1_000_000; // quantities count to six decimals, rates to a millionth

function timesQuantity(eachMinor: number, quantity: number): number {
  return divideRounded(BigInt(eachMinor) * microQuantity(quantity), BigInt(MICRO));
}

const microQuantity = (quantity: number): bigint => BigInt(Math.round(quantity * MICRO));

/** Cost x quantity x (1 + markup), rounded once; a price for each only where it is a whole number of minor units. */
function markedUp(
  unitCostMinor: number,
  quantity: number,
  markupBasisPoints: number,
): Pick<Amounts, 'unitPriceMinor' | 'listMinor'> {
  const factorMicro = BigInt(MICRO) + BigInt(Math.round(markupBasisPoints * 100));
  const eachMicro = BigInt(unitCostMinor) * factorMicro;
  return {
    unitPriceMinor: eachMicro % BigInt(MICRO) === 0n ? Number(eachMicro / BigInt(MICRO)) : null,
    listMinor: divideRounded(eachMicro * microQuantity(quantity), BigInt(MICRO) ** 2n),
  };
}

/** A share of the labour in the total, as listed, up to the cap; none where that comes to nothing. */
function suppliesLine(
  lines: readonly LineAmounts[],
  { supplies, taxes, pricesIncludeTax }: QuoteInput,
): LineAmounts | null {
  if (supplies === null) return null;
  const labourMinor = lines
    .filter(({ kind, counted }) => kind === 'labour' && counted)
    .reduce((sum, { listMinor }) => sum + listMinor, 0);
  const share = applyRate(labourMinor, supplies.shareOfLabourBasisPoints);
  const listMinor = Math.min(share, supplies.capMinor ?? share);
  if (listMinor === 0) return null;
  const taxCodes = taxesOn({ kind: 'supplies', taxCodes: null }, taxes);
  const rateBasisPoints = taxes
    .filter(({ code }) => taxCodes.includes(code))
    .reduce((sum, tax) => sum + tax.rateBasisPoints, 0);
  const netMinor = pricesIncludeTax ? listMinor - rateWithin(listMinor, rateBasisPoints) : listMinor;
  return {
    key: SUPPLIES_KEY,
    kind: 'supplies',
    description: supplies.description,
    source: null,
    quantity: 1,
    unit: 'lot',
    minutes: null,
    unitPriceMinor: listMinor,
    listMinor,
    costMinor: applyRate(netMinor, supplies.costBasisPoints),
    suppliedValueMinor: 0,
    priceDropped: false,
    taxCodes,
    discountable: true,
    counted: true,
  };
}
