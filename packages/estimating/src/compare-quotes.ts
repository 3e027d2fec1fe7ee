// Two versions of a quote -> what was added, taken out and changed. Of two quotes with costs, costs are compared
// too; where one of them hides costs, nothing in the answer tells them.
import type {
  ChangedValue,
  CustomerLine,
  CustomerQuote,
  PricedQuote,
  QuoteComparison,
} from '@gusset/contracts/estimating';
import { type Refusal, refuse } from '@gusset/units';
import { byKey, compareText } from './in-order.ts';

type AnyQuote = PricedQuote | CustomerQuote;
type Value = ChangedValue['before'];
type Fields = Readonly<Record<string, Value>>;

/** Lines are the same line when they have the same key. Everything comes out in the order of keys. */
export function compareQuotes(before: AnyQuote, after: AnyQuote): QuoteComparison | Refusal {
  if (before.currency !== after.currency) {
    return refuse('currency', {
      allowed: before.currency,
      got: after.currency,
      why: 'Only quotes in one currency can be compared.',
    });
  }
  const showCosts = before.costs === 'shown' && after.costs === 'shown';
  const linesBefore = new Map(before.lines.map((line) => [line.key, line]));
  const linesAfter = new Map(after.lines.map((line) => [line.key, line]));
  const changed = after.lines.toSorted(byKey).flatMap((line) => {
    const earlier = linesBefore.get(line.key);
    const changes =
      earlier === undefined ? [] : changesOf(lineFields(earlier, showCosts), lineFields(line, showCosts));
    return changes.length === 0 ? [] : [{ key: line.key, description: line.description, changes }];
  });
  return {
    currency: after.currency,
    added: after.lines
      .filter(({ key }) => !linesBefore.has(key))
      .toSorted(byKey)
      .map(named),
    removed: before.lines
      .filter(({ key }) => !linesAfter.has(key))
      .toSorted(byKey)
      .map(named),
    changed,
    totals: changesOf(totalFields(before, showCosts), totalFields(after, showCosts)),
    grandDifferenceMinor: after.totals.grandMinor - before.totals.grandMinor,
    labourDifferenceMinutes: after.totals.labourMinutes - before.totals.labourMinutes,
  };
}

function named({
  key,
  kind,
  description,
  quantity,
  unit,
  grossMinor,
  counted,
}: CustomerLine): QuoteComparison['added'][number] {
  return { key, kind, description, quantity, unit, grossMinor, counted };
}

function lineFields(line: AnyQuote['lines'][number], showCosts: boolean): Fields {
  return {
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
    taxCodes: line.taxCodes.join(', '),
    taxMinor: line.taxMinor,
    grossMinor: line.grossMinor,
    counted: line.counted,
    ...(showCosts && 'costMinor' in line
      ? {
          costMinor: line.costMinor,
          marginMinor: line.marginMinor,
          suppliedValueMinor: line.suppliedValueMinor,
        }
      : {}),
  };
}

function totalFields(quote: AnyQuote, showCosts: boolean): Fields {
  const { totals } = quote;
  const taxes = quote.taxes
    .toSorted((a, b) => compareText(a.code, b.code))
    .map(
      ({ code, rateBasisPoints, taxMinor }) =>
        [
          [`taxes.${code}.rateBasisPoints`, rateBasisPoints],
          [`taxes.${code}.taxMinor`, taxMinor],
        ] as const,
    );
  return {
    listMinor: totals.listMinor,
    discountMinor: totals.discountMinor,
    netMinor: totals.netMinor,
    taxMinor: totals.taxMinor,
    grandMinor: totals.grandMinor,
    depositMinor: totals.depositMinor,
    balanceMinor: totals.balanceMinor,
    labourMinutes: totals.labourMinutes,
    validDays: quote.validDays,
    exclusions: quote.exclusions.join('\n'),
    ...Object.fromEntries(taxes.flat()),
    ...(showCosts && 'costMinor' in totals
      ? {
          costMinor: totals.costMinor,
          purchasesMinor: totals.purchasesMinor,
          marginMinor: totals.marginMinor,
        }
      : {}),
  };
}

/** Fields that differ; one that is missing on one side (a tax that came or went) counts as null there. */
function changesOf(before: Fields, after: Fields): ChangedValue[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return names.flatMap((field) => {
    const [old, now] = [before[field] ?? null, after[field] ?? null];
    return old === now ? [] : [{ field, before: old, after: now }];
  });
}
