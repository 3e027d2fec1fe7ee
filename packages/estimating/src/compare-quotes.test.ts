import type { PricedQuote, QuoteInput } from '@gusset/contracts/estimating';
import { quoteComparisonSchema } from '@gusset/contracts/estimating';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { compareQuotes, hideCosts, priceQuote } from './index.ts';

const work = (minutes: number): QuoteInput['lines'][number] => ({
  key: 'work',
  kind: 'labour',
  description: 'Build and fit',
  source: null,
  pricing: { by: 'hours', minutes, hourlyCostMinor: 3000, hourlyRateMinor: 6000 },
  taxCodes: null,
  excludeFrom: [],
});
const part = (key: string, unitPriceMinor: number): QuoteInput['lines'][number] => ({
  key,
  kind: 'part',
  description: key,
  source: 'buy',
  pricing: { by: 'price', quantity: 1, unit: 'pc', unitCostMinor: 500, unitPriceMinor },
  taxCodes: null,
  excludeFrom: [],
});

function priced(lines: QuoteInput['lines'], currency = 'USD'): PricedQuote {
  const quote = priceQuote({
    currency,
    lines,
    supplies: null,
    discount: null,
    taxes: [],
    pricesIncludeTax: false,
    taxRounding: 'per-line',
    deposit: { by: 'percent', rateBasisPoints: 5000 },
    validDays: 21,
    marginFloorBasisPoints: null,
    exclusions: [],
  });
  if (isRefusal(quote)) throw new Error(quote.refusal.why);
  return quote;
}

const before = priced([work(120), part('grille', 1000), part('port', 800)]);
const after = priced([part('ring', 700), part('port', 800), work(180)]);

function compared(a: Parameters<typeof compareQuotes>[0], b: Parameters<typeof compareQuotes>[1]) {
  const answer = compareQuotes(a, b);
  if (isRefusal(answer)) throw new Error(answer.refusal.why);
  expect(quoteComparisonSchema.parse(answer)).toEqual(answer);
  return answer;
}

describe('compareQuotes', () => {
  it('lists what came, what went, and what changed with both values', () => {
    const answer = compared(before, after);
    expect(answer.added.map(({ key, grossMinor }) => [key, grossMinor])).toEqual([['ring', 700]]);
    expect(answer.removed.map(({ key }) => key)).toEqual(['grille']);
    expect(answer.changed.map(({ key }) => key)).toEqual(['work']);
    expect(answer.changed[0]?.changes).toContainEqual({ field: 'minutes', before: 120, after: 180 });
    expect(answer.changed[0]?.changes).toContainEqual({ field: 'costMinor', before: 6000, after: 9000 });
    // 120 min at 60.00 + 10 + 8 = 138.00; 180 min + 7 + 8 = 195.00
    expect(answer).toMatchObject({ grandDifferenceMinor: 5700, labourDifferenceMinutes: 60 });
    expect(answer.totals).toContainEqual({ field: 'depositMinor', before: 6900, after: 9750 });
  });

  it('finds nothing between a quote and itself, whatever the order of its lines', () => {
    const turned = { ...before, lines: before.lines.toReversed() };
    expect(compared(before, turned)).toMatchObject({ added: [], removed: [], changed: [], totals: [] });
  });

  it('says nothing of costs when either side hides them', () => {
    for (const [a, b] of [
      [hideCosts(before), after],
      [before, hideCosts(after)],
      [hideCosts(before), hideCosts(after)],
    ] as const) {
      const answer = compared(a, b);
      expect(answer.changed).toHaveLength(1);
      expect(JSON.stringify(answer)).not.toMatch(/cost|margin|purchases|supplied/i);
    }
  });

  it('refuses two currencies', () => {
    expect(compareQuotes(before, priced([], 'EUR'))).toMatchObject({
      refusal: { field: 'currency', got: 'EUR' },
    });
  });
});
