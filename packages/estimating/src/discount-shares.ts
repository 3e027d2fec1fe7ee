// The discount, and each line's part of it by largest remainder: never more than there is to take it from.
import type { Discount } from '@gusset/contracts/estimating';
import { allocate, applyRate } from '@gusset/units';
import { byKey, sumOf } from './in-order.ts';
import type { LineAmounts } from './line-amounts.ts';

export type DiscountShares = {
  readonly askedMinor: number;
  readonly givenMinor: number;
  readonly byLine: ReadonlyMap<string, number>;
};

export function discountShares(lines: readonly LineAmounts[], discount: Discount | null): DiscountShares {
  if (discount === null) return { askedMinor: 0, givenMinor: 0, byLine: new Map() };
  const taken = lines
    .filter(({ kind, counted, discountable }) => counted && discountable && discount.on.includes(kind))
    .toSorted(byKey);
  const wholeMinor = sumOf(taken, ({ listMinor }) => listMinor);
  const askedMinor =
    discount.by === 'percent' ? applyRate(wholeMinor, discount.rateBasisPoints) : discount.amountMinor;
  const givenMinor = Math.min(askedMinor, wholeMinor);
  const parts = allocate(
    givenMinor,
    taken.map(({ listMinor }) => listMinor),
  );
  return { askedMinor, givenMinor, byLine: new Map(taken.map(({ key }, index) => [key, parts[index] ?? 0])) };
}
