import type { QuoteComparison } from '@gusset/contracts/estimating';
import { describe, expect, it } from 'vitest';
import { comparisonChanges } from './quote-changes.ts';

const money = (minor: number) => `€${(minor / 100).toFixed(2)}`;

describe('two versions of a price', () => {
  it('tells a changed line by its hours, not by every figure that followed', () => {
    const comparison: QuoteComparison = {
      currency: 'EUR',
      added: [],
      removed: [
        {
          key: 'd',
          kind: 'other',
          description: 'Delivery',
          quantity: 1,
          unit: 'lot',
          grossMinor: 6_000,
          counted: true,
        },
      ],
      changed: [
        {
          key: 'cut',
          description: 'Cut',
          changes: [
            { field: 'grossMinor', before: 100, after: 200 },
            { field: 'minutes', before: 60, after: 120 },
          ],
        },
      ],
      totals: [
        { field: 'grandMinor', before: 100, after: 200 },
        { field: 'balanceMinor', before: 60, after: 120 },
      ],
      grandDifferenceMinor: 100,
      labourDifferenceMinutes: 60,
    };
    expect(
      comparisonChanges(comparison, money).map(({ label, before, after }) => [label, before, after]),
    ).toEqual([
      ['Delivery', '€60.00', 'taken out'],
      ['Cut', '1 h', '2 h'],
      ['Total', '€1.00', '€2.00'],
      ['Hours in all', '', '+1 h'],
    ]);
  });
});
