// Sums over the counted lines of a quote, its deposit, and what the shop should look at.
import type {
  DepositRule,
  KindTotal,
  PricedLine,
  QuoteInput,
  QuoteTotals,
  QuoteWarning,
  TaxTotal,
} from '@gusset/contracts/estimating';
import { LINE_KINDS } from '@gusset/contracts/estimating';
import { applyRate } from '@gusset/units';
import type { DiscountShares } from './discount-shares.ts';
import { byKey, sumOf } from './in-order.ts';
import type { LineAmounts } from './line-amounts.ts';
import { marginOf } from './margin.ts';

/** Sums of each kind that is on the quote, in the usual order of kinds. */
export function totalsByKind(counted: readonly PricedLine[]): KindTotal[] {
  return LINE_KINDS.flatMap((kind) => {
    const lines = counted.filter((line) => line.kind === kind);
    return lines.length === 0 ? [] : [{ kind, ...sums(lines) }];
  });
}

function sums(lines: readonly PricedLine[]): Omit<KindTotal, 'kind'> {
  return {
    listMinor: sumOf(lines, (line) => line.listMinor),
    discountMinor: sumOf(lines, (line) => line.discountMinor),
    netMinor: sumOf(lines, (line) => line.netMinor),
    taxMinor: sumOf(lines, (line) => line.taxMinor),
    grossMinor: sumOf(lines, (line) => line.grossMinor),
    costMinor: sumOf(lines, (line) => line.costMinor),
    marginMinor: sumOf(lines, (line) => line.marginMinor),
  };
}

export function quoteTotals(counted: readonly PricedLine[], deposit: DepositRule): QuoteTotals {
  const amounts = sums(counted);
  const grandMinor = amounts.grossMinor;
  const depositMinor = Math.min(grandMinor, askedDeposit(counted, grandMinor, deposit));
  return {
    listMinor: amounts.listMinor,
    discountMinor: amounts.discountMinor,
    netMinor: amounts.netMinor,
    taxMinor: amounts.taxMinor,
    costMinor: amounts.costMinor,
    grandMinor,
    depositMinor,
    balanceMinor: grandMinor - depositMinor,
    labourMinutes: sumOf(counted, ({ minutes }) => minutes ?? 0),
    purchasesMinor: sumOf(bought(counted), ({ costMinor }) => costMinor),
    ...marginOf(amounts.netMinor, amounts.costMinor),
  };
}

function askedDeposit(counted: readonly PricedLine[], grandMinor: number, rule: DepositRule): number {
  switch (rule.by) {
    case 'none':
      return 0;
    case 'amount':
      return rule.amountMinor;
    case 'percent':
      return applyRate(grandMinor, rule.rateBasisPoints);
    case 'parts':
      return sumOf(bought(counted), ({ grossMinor }) => grossMinor);
  }
}

const bought = (lines: readonly PricedLine[]) => lines.filter(({ source }) => source === 'buy');

/** Every tax that is on a counted line, in the order of the tax list. */
export function taxTotals(
  counted: readonly PricedLine[],
  { taxes }: QuoteInput,
  taxByCode: ReadonlyMap<string, number>,
): TaxTotal[] {
  return taxes.flatMap(({ code, name, rateBasisPoints }) => {
    const lines = counted.filter(({ taxCodes }) => taxCodes.includes(code));
    if (lines.length === 0) return [];
    const taxableMinor = sumOf(lines, ({ netMinor }) => netMinor);
    return [{ code, name, rateBasisPoints, taxableMinor, taxMinor: taxByCode.get(code) ?? 0 }];
  });
}

export function quoteWarnings(
  counted: readonly PricedLine[],
  amounts: readonly LineAmounts[],
  discount: DiscountShares,
  floorBasisPoints: number | null,
): QuoteWarning[] {
  const belowCost = counted
    .filter(({ netMinor, costMinor }) => netMinor < costMinor)
    .toSorted(byKey)
    .map(({ key, netMinor, costMinor }) => ({
      code: 'price-below-cost' as const,
      lineKey: key,
      netMinor,
      costMinor,
    }));
  const dropped = amounts
    .filter(({ priceDropped }) => priceDropped)
    .toSorted(byKey)
    .map(({ key }) => ({ code: 'supplied-part-price-dropped' as const, lineKey: key }));
  return [
    ...marginWarning(counted, floorBasisPoints),
    ...belowCost,
    ...(discount.askedMinor > discount.givenMinor
      ? [
          {
            code: 'discount-cut-back' as const,
            askedMinor: discount.askedMinor,
            givenMinor: discount.givenMinor,
          },
        ]
      : []),
    ...dropped,
  ];
}

function marginWarning(counted: readonly PricedLine[], floorBasisPoints: number | null): QuoteWarning[] {
  const { netMinor, costMinor } = sums(counted);
  const { marginMinor, marginBasisPoints } = marginOf(netMinor, costMinor);
  if (floorBasisPoints === null || marginBasisPoints === null) return [];
  if (isAtLeast(marginMinor, netMinor, floorBasisPoints)) return [];
  return [{ code: 'margin-below-floor', marginBasisPoints, floorBasisPoints }];
}

/** Compared unrounded: a margin of 19.996 % is below a floor of 20 %. */
function isAtLeast(marginMinor: number, netMinor: number, floorBasisPoints: number): boolean {
  const floorSteps = BigInt(Math.round(floorBasisPoints * 100)); // floors count to a hundredth of a basis point
  return BigInt(marginMinor) * 1_000_000n >= BigInt(netMinor) * floorSteps;
}
