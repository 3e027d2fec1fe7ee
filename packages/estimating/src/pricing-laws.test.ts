import type { PricedQuote, QuoteInput, QuoteLine } from '@gusset/contracts/estimating';
import { customerQuoteSchema, pricedQuoteSchema, quoteInputSchema } from '@gusset/contracts/estimating';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hideCosts, priceQuote } from './index.ts';

function priced(input: QuoteInput): PricedQuote {
  const quote = priceQuote(input);
  if (isRefusal(quote)) throw new Error(`${quote.refusal.field}: ${quote.refusal.why}`);
  return quote;
}

describe('laws of pricing', () => {
  const kinds = fc.constantFrom('material', 'part', 'labour', 'supplies', 'subcontract', 'other');
  // Few values and many: equal lines are where odd cents could follow the order.
  const quantity = fc.oneof(
    fc.constant(1),
    fc.integer({ min: 0, max: 50_000_000 }).map((micro) => micro / 1e6),
  );
  const minor = fc.oneof(fc.constantFrom(0, 5, 333), fc.integer({ min: 0, max: 500_000 }));
  const rate = fc.integer({ min: 0, max: 300_000 }).map((hundredths) => hundredths / 100);
  const goodsPricing = fc.oneof(
    fc.record({
      by: fc.constant('price' as const),
      quantity,
      unit: fc.constant('pc'),
      unitCostMinor: minor,
      unitPriceMinor: minor,
    }),
    fc.record({
      by: fc.constant('markup' as const),
      quantity,
      unit: fc.constant('m'),
      unitCostMinor: minor,
      markupBasisPoints: rate,
    }),
  );
  const hours = fc.record({
    by: fc.constant('hours' as const),
    minutes: fc.integer({ min: 0, max: 6000 }),
    hourlyCostMinor: minor,
    hourlyRateMinor: minor,
  });
  const anyLine = fc
    .record({
      kind: kinds,
      goods: goodsPricing,
      hours,
      source: fc.constantFrom('stock', 'buy', 'customer', 'sponsor'),
      taxCodes: fc.option(fc.subarray(['A', 'B', 'Z']), { nil: null }),
      excludeFrom: fc.subarray(['discount', 'tax', 'total'] as const, { maxLength: 1 }),
    })
    .map(({ kind, goods, hours: time, source, taxCodes, excludeFrom }): Omit<QuoteLine, 'key'> => {
      const isGoods = kind === 'material' || kind === 'part';
      return {
        kind,
        description: kind,
        source: isGoods ? source : null,
        pricing: kind === 'labour' ? time : goods,
        taxCodes,
        excludeFrom,
      };
    });
  const quoteInput = fc.record<QuoteInput>({
    currency: fc.constantFrom('JPY', 'USD', 'BHD'),
    lines: fc
      .array(anyLine, { maxLength: 12 })
      .map((lines) => lines.map((given, index) => ({ ...given, key: `k${index}` }))),
    supplies: fc.option(
      fc.record({
        description: fc.constant('Supplies'),
        shareOfLabourBasisPoints: rate,
        capMinor: fc.option(minor),
        costBasisPoints: rate,
      }),
    ),
    discount: fc.option(
      fc.oneof(
        fc.record({
          by: fc.constant('percent' as const),
          rateBasisPoints: fc.integer({ min: 0, max: 10_000 }),
          on: fc.subarray(['part', 'labour', 'supplies', 'other'] as const, { minLength: 1 }),
        }),
        fc.record({
          by: fc.constant('amount' as const),
          amountMinor: minor,
          on: fc.subarray(['part', 'material', 'labour'] as const, { minLength: 1 }),
        }),
      ),
    ),
    taxes: fc.constant([
      { code: 'A', name: 'A', rateBasisPoints: 887.5, appliesTo: ['part', 'material', 'supplies'] },
      { code: 'B', name: 'B', rateBasisPoints: 2000, appliesTo: ['part', 'labour'] },
      { code: 'Z', name: 'Zero', rateBasisPoints: 0, appliesTo: ['other'] },
    ]),
    pricesIncludeTax: fc.boolean(),
    taxRounding: fc.constantFrom('per-line', 'per-document'),
    deposit: fc.oneof(
      fc.constant({ by: 'none' as const }),
      fc.constant({ by: 'parts' as const }),
      fc.record({
        by: fc.constant('percent' as const),
        rateBasisPoints: fc.integer({ min: 0, max: 10_000 }),
      }),
      fc.record({ by: fc.constant('amount' as const), amountMinor: minor }),
    ),
    validDays: fc.constant(14),
    marginFloorBasisPoints: fc.option(rate),
    exclusions: fc.constant([]),
  });
  const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

  it('takes and gives only what the contracts describe', () => {
    fc.assert(
      fc.property(quoteInput, (input) => {
        expect(quoteInputSchema.safeParse(input).success).toBe(true);
        const quote = priced(input);
        expect(pricedQuoteSchema.parse(quote)).toEqual(quote);
      }),
      { numRuns: 500 },
    );
  });

  it('sums to the minor unit: lines, kinds, taxes, deposit and balance', () => {
    fc.assert(
      fc.property(quoteInput, (input) => {
        const quote = priced(input);
        const counted = quote.lines.filter((each) => each.counted);
        const { totals } = quote;
        for (const name of [
          'listMinor',
          'discountMinor',
          'netMinor',
          'taxMinor',
          'costMinor',
          'marginMinor',
        ] as const) {
          expect(totals[name]).toBe(total(counted.map((each) => each[name])));
          expect(totals[name]).toBe(total(quote.byKind.map((kind) => kind[name])));
        }
        expect(totals.taxMinor).toBe(total(quote.taxes.map(({ taxMinor }) => taxMinor)));
        expect(totals.grandMinor).toBe(totals.netMinor + totals.taxMinor);
        const stated = totals.listMinor - totals.discountMinor;
        expect(totals.grandMinor).toBe(input.pricesIncludeTax ? stated : stated + totals.taxMinor);
        expect(totals.depositMinor + totals.balanceMinor).toBe(totals.grandMinor);
        expect(totals.balanceMinor).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 3000 },
    );
  });

  it('keeps every line at nothing or above, and every discount within its line', () => {
    fc.assert(
      fc.property(quoteInput, (input) => {
        for (const each of priced(input).lines) {
          expect(each.discountMinor).toBeLessThanOrEqual(each.listMinor);
          expect(
            Math.min(each.discountMinor, each.netMinor, each.taxMinor, each.grossMinor),
          ).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('does not depend on the order of lines', () => {
    fc.assert(
      fc.property(quoteInput, fc.integer({ min: 0, max: 1000 }), (input, turn) => {
        const at = input.lines.length === 0 ? 0 : turn % input.lines.length;
        const turned = [...input.lines.slice(at), ...input.lines.slice(0, at)].toReversed();
        const [straight, other] = [priced(input), priced({ ...input, lines: turned })];
        expect({ ...other, lines: null }).toEqual({ ...straight, lines: null });
        expect(new Map(other.lines.map((each) => [each.key, each]))).toEqual(
          new Map(straight.lines.map((each) => [each.key, each])),
        );
      }),
      { numRuns: 1000 },
    );
  });

  it('keeps brought and sponsored parts out of prices, costs and purchases', () => {
    fc.assert(
      fc.property(quoteInput, (input) => {
        const without = input.lines.filter(({ source }) => source !== 'customer' && source !== 'sponsor');
        expect(priced(input).totals).toEqual(priced({ ...input, lines: without }).totals);
      }),
      { numRuns: 1000 },
    );
  });

  it('changes nothing when the same input is priced again, and nothing in the input', () => {
    fc.assert(
      fc.property(quoteInput, (input) => {
        const before = JSON.stringify(input);
        expect(priced(input)).toEqual(priced(JSON.parse(before)));
        expect(JSON.stringify(input)).toBe(before);
      }),
      { numRuns: 300 },
    );
  });

  it('says the same about tax per line and per document, within half a unit a line and code', () => {
    fc.assert(
      fc.property(quoteInput, (input) => {
        const perLine = priced({ ...input, taxRounding: 'per-line' });
        const once = priced({ ...input, taxRounding: 'per-document' });
        const roundings = total(perLine.lines.map(({ taxCodes }) => taxCodes.length)) + input.taxes.length;
        expect(Math.abs(perLine.totals.taxMinor - once.totals.taxMinor)).toBeLessThanOrEqual(
          roundings / 2 + 1,
        );
      }),
      { numRuns: 1000 },
    );
  });

  it('hides every cost from the customer’s copy', () => {
    fc.assert(
      fc.property(quoteInput, (input) => {
        const copy = hideCosts(priced(input));
        expect(customerQuoteSchema.parse(copy)).toEqual(copy);
        expect(JSON.stringify({ ...copy, costs: '' })).not.toMatch(
          /cost(?!s)|margin|supplied|purchases|warning/i,
        );
      }),
      { numRuns: 300 },
    );
  });
});
