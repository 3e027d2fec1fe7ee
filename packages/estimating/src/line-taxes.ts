// Which taxes fall on a line, and how much each line carries. Several taxes on one line stand side by side, none
// on top of another. Where prices include tax, a line's tax is the part of its price that is tax.
import type { QuoteInput, QuoteLine, QuoteTax } from '@gusset/contracts/estimating';
import { allocate, applyRate, rateWithin } from '@gusset/units';
import { byKey, sumOf } from './in-order.ts';

/** Codes on a line, in the order of the tax list: its own, or those of its kind. */
export function taxesOn(
  { kind, taxCodes }: Pick<QuoteLine, 'kind' | 'taxCodes'>,
  taxes: readonly QuoteTax[],
): readonly string[] {
  return taxes
    .filter((tax) => (taxCodes === null ? tax.appliesTo.includes(kind) : taxCodes.includes(tax.code)))
    .map(({ code }) => code);
}

/** What is taxed: a line's price after discount, as stated. */
export type TaxedAmount = {
  readonly key: string;
  readonly statedMinor: number;
  readonly taxCodes: readonly string[];
};

/** Tax by line key and by tax code; both sum to the same. */
export type TaxShares = {
  readonly byLine: ReadonlyMap<string, number>;
  readonly byCode: ReadonlyMap<string, number>;
};

export type TaxRules = Pick<QuoteInput, 'taxes' | 'pricesIncludeTax' | 'taxRounding'>;

/** Tax of these lines, rounded on each line or once on the sum, as the shop set it. */
export function taxShares(amounts: readonly TaxedAmount[], rules: TaxRules): TaxShares {
  const inOrder = amounts.toSorted(byKey);
  if (rules.taxRounding === 'per-line') return joined(inOrder.map((amount) => taxOfGroup([amount], rules)));
  if (rules.pricesIncludeTax) return joined(bySameTaxes(inOrder).map((group) => taxWithin(group, rules)));
  return joined(rules.taxes.map((tax) => taxOnSum(inOrder, tax)));
}

function taxOfGroup(group: readonly TaxedAmount[], rules: TaxRules): TaxShares {
  if (rules.pricesIncludeTax) return taxWithin(group, rules);
  return joined(rules.taxes.map((tax) => taxOnSum(group, tax)));
}

/** One tax on top of the sum of the lines that carry it, shared among them by price. */
function taxOnSum(amounts: readonly TaxedAmount[], { code, rateBasisPoints }: QuoteTax): TaxShares {
  const carriers = amounts.filter(({ taxCodes }) => taxCodes.includes(code));
  const taxMinor = applyRate(
    sumOf(carriers, ({ statedMinor }) => statedMinor),
    rateBasisPoints,
  );
  return { byLine: sharedByPrice(taxMinor, carriers), byCode: new Map([[code, taxMinor]]) };
}

/** All taxes within the sum of lines that carry the same ones: shared among lines by price, among codes by rate. */
function taxWithin(group: readonly TaxedAmount[], { taxes }: TaxRules): TaxShares {
  const carried = taxes.filter(({ code }) => group[0]?.taxCodes.includes(code));
  const rateBasisPoints = sumOf(carried, (tax) => tax.rateBasisPoints);
  const taxMinor = rateWithin(
    sumOf(group, ({ statedMinor }) => statedMinor),
    rateBasisPoints,
  );
  const parts = allocate(
    taxMinor,
    carried.map((tax) => Math.round(tax.rateBasisPoints * RATE_STEPS)),
  );
  return {
    byLine: sharedByPrice(taxMinor, group),
    byCode: new Map(carried.map(({ code }, index) => [code, parts[index] ?? 0])),
  };
}

const RATE_STEPS = 100; // rates count to a hundredth of a basis point

function sharedByPrice(taxMinor: number, lines: readonly TaxedAmount[]): Map<string, number> {
  const parts = allocate(
    taxMinor,
    lines.map(({ statedMinor }) => statedMinor),
  );
  return new Map(lines.map(({ key }, index) => [key, parts[index] ?? 0]));
}

function bySameTaxes(amounts: readonly TaxedAmount[]): readonly (readonly TaxedAmount[])[] {
  return [...Map.groupBy(amounts, ({ taxCodes }) => JSON.stringify(taxCodes)).values()];
}

function joined(shares: readonly TaxShares[]): TaxShares {
  return {
    byLine: summed(shares.map(({ byLine }) => byLine)),
    byCode: summed(shares.map(({ byCode }) => byCode)),
  };
}

function summed(maps: readonly ReadonlyMap<string, number>[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const map of maps) {
    for (const [name, minor] of map) sums.set(name, (sums.get(name) ?? 0) + minor);
  }
  return sums;
}
