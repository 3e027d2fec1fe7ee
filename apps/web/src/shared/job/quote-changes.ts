// Two versions of a price side by side, as the list of changes that every sheet shows.
import type { QuoteComparison } from '@gusset/contracts/estimating';
import type { SheetChange } from '@gusset/contracts/sheet';
import { formatMinutes } from '@gusset/units';

export type MoneyWords = (minor: number) => string;

const TOTAL_WORDS: Readonly<Record<string, string>> = {
  grandMinor: 'Total',
  netMinor: 'Before tax',
  taxMinor: 'Tax',
  discountMinor: 'Discount',
  depositMinor: 'Deposit',
};

/** A comparison as the list of changes that every sheet shows: lines first, then totals. */
export function comparisonChanges(comparison: QuoteComparison, money: MoneyWords): SheetChange[] {
  const change = (label: string, before: string, after: string): SheetChange => ({
    source: '',
    label,
    before,
    after,
  });
  return [
    ...comparison.added.map((line) => change(line.description, 'not there', money(line.grossMinor))),
    ...comparison.removed.map((line) => change(line.description, money(line.grossMinor), 'taken out')),
    ...comparison.changed.flatMap(({ description, changes }) => lineChange(description, changes, money)),
    ...comparison.totals.flatMap(({ field, before, after }) => {
      const label = TOTAL_WORDS[field];
      return label === undefined ? [] : [change(label, amountOf(before, money), amountOf(after, money))];
    }),
    ...(comparison.labourDifferenceMinutes === 0 ? [] : [labourChange(comparison)]),
  ];
}

/** The figure that says most about a changed line: its time, its quantity, else its price. */
function lineChange(
  description: string,
  changes: QuoteComparison['changed'][number]['changes'],
  money: MoneyWords,
): SheetChange[] {
  const told = ['minutes', 'quantity', 'unitPriceMinor', 'grossMinor']
    .map((field) => changes.find((one) => one.field === field))
    .find((one) => one !== undefined);
  if (told === undefined) return [];
  const words = (value: typeof told.before) => {
    if (told.field === 'minutes' && typeof value === 'number') return formatMinutes(value);
    return told.field === 'quantity' ? String(value) : amountOf(value, money);
  };
  return [{ source: '', label: description, before: words(told.before), after: words(told.after) }];
}

function labourChange({ labourDifferenceMinutes }: QuoteComparison): SheetChange {
  const sign = labourDifferenceMinutes > 0 ? '+' : '−';
  return {
    source: '',
    label: 'Hours in all',
    before: '',
    after: `${sign}${formatMinutes(Math.abs(labourDifferenceMinutes))}`,
  };
}

function amountOf(value: string | number | boolean | null, money: MoneyWords): string {
  return typeof value === 'number' ? money(value) : '–';
}
