// Sheet 08. The estimating engine prices; this file says what is charged for, by which rates and taxes, asks for what
// is missing, and keeps money out of what the plan reads.
import { LINE_KINDS, type QuoteTax, type SuppliesRule } from '@gusset/contracts/estimating';
import type { PartsResult } from '@gusset/contracts/parts';
import {
  type JobTaskSpec,
  type PriceFacts,
  type PriceInput,
  type PriceNote,
  type PriceResult,
  priceInputSchema,
} from '@gusset/contracts/price';
import { priceQuote } from '@gusset/estimating';
import { formatMinutes, isRefusal, type RefusalDetail } from '@gusset/units';
import {
  incomplete,
  type KeyFigure,
  ready,
  refused,
  type SheetDefinition,
  type SheetOutcome,
} from '../sheet-definition.ts';
import { amountWords, priceFactFigures } from './price-figures.ts';
import { priceLines } from './price-lines.ts';

export type PriceUpstream = { readonly parts?: PartsResult | null };

/** Supplies are bought in bulk: what they cost, as a share of what is charged for them. An estimate. */
const SUPPLIES_COST_BASIS_POINTS = 6_000;

export const priceSheet: SheetDefinition<PriceInput, PriceFacts, PriceUpstream, PriceResult> = {
  kind: 'price',
  engineVersion: 1,
  optionalReads: [],
  inputSchema: priceInputSchema,
  emptyInput: () => ({
    tasks: null,
    extraLines: [],
    priceOverrides: [],
    discount: null,
    taxCodeByKind: {},
    deposit: null,
    validDays: null,
    scope: '',
    exclusions: [],
    terms: null,
  }),
  compute: (input, facts, upstream) => computePrice(input, facts, upstream.parts ?? null),
  keyFigures: (result) => [...moneyFigures(result), ...workFigures(result)],
  factFigures: priceFactFigures,
  shared: {
    result: ({ tasks, labourMinutes }) => ({ tasks, labourMinutes }),
    keyFigures: workFigures,
  },
};

function computePrice(
  input: PriceInput,
  facts: PriceFacts,
  parts: PartsResult | null,
): SheetOutcome<PriceResult> {
  if (input.tasks === null) {
    return incomplete([{ field: 'tasks', what: 'the tasks of this job and their hours' }]);
  }
  const repeated = repeatedKey(input.tasks);
  if (repeated !== null) return refused([repeated]);

  const { tasks, notes: waits } = withKnownWaits(input.tasks);
  const { lines, notes } = priceLines(input, tasks, facts, parts);
  if (lines.length === 0) return incomplete([{ field: 'tasks', what: 'something to charge for' }]);
  const terms = input.terms ?? facts.terms;
  const quote = priceQuote({
    currency: facts.currency,
    lines: [...lines],
    supplies: suppliesOf(facts),
    discount: input.discount,
    taxes: taxesOf(input, facts),
    pricesIncludeTax: facts.taxes.pricesIncludeTax,
    taxRounding: facts.taxes.rounding,
    deposit: input.deposit ?? { by: 'percent', rateBasisPoints: Math.min(10_000, facts.depositBasisPoints) },
    validDays: input.validDays ?? facts.validDays,
    marginFloorBasisPoints: facts.rates.marginFloorBasisPoints,
    exclusions: input.exclusions.filter((text) => text !== ''),
  });
  if (isRefusal(quote)) return refused([quote.refusal]);
  return ready({
    quote,
    tasks,
    scope: input.scope,
    terms,
    labourMinutes: quote.totals.labourMinutes,
    notes: [...(input.scope === '' ? [{ code: 'no-scope' } as const] : []), ...notes, ...waits],
  });
}

function repeatedKey(tasks: readonly JobTaskSpec[]): RefusalDetail | null {
  const keys = tasks.map(({ key }) => key);
  const key = keys.find((one, at) => keys.indexOf(one) < at);
  if (key === undefined) return null;
  return { field: 'tasks', allowed: 'each task once', got: key, why: 'Two tasks have the same key' };
}

/** A wait for a task that is not on the list would hold the plan for ever: it is left out and said. */
function withKnownWaits(tasks: readonly JobTaskSpec[]) {
  const keys = new Set(tasks.map(({ key }) => key));
  const notes: PriceNote[] = [];
  const kept = tasks.map((task) => ({
    ...task,
    prerequisites: task.prerequisites.filter(({ taskKey }) => {
      if (keys.has(taskKey)) return true;
      notes.push({ code: 'wait-left-out', taskKey: task.key, missingKey: taskKey });
      return false;
    }),
  }));
  return { tasks: kept, notes };
}

function suppliesOf({ rates }: PriceFacts): SuppliesRule | null {
  if (rates.suppliesPercentOfLabourBasisPoints === 0) return null;
  return {
    description: 'Glue, screws, tape and small supplies',
    shareOfLabourBasisPoints: rates.suppliesPercentOfLabourBasisPoints,
    capMinor: rates.suppliesCapMinor === 0 ? null : rates.suppliesCapMinor,
    costBasisPoints: SUPPLIES_COST_BASIS_POINTS,
  };
}

/** Each tax with the kinds it falls on: as the shop sets it, or as this job says. */
function taxesOf(input: PriceInput, { taxes }: PriceFacts): QuoteTax[] {
  const codeOf = (kind: (typeof LINE_KINDS)[number]) =>
    input.taxCodeByKind[kind] === undefined ? taxes.codeByKind[kind] : input.taxCodeByKind[kind];
  return taxes.codes.map(({ code, name, rateBasisPoints }) => ({
    code,
    name,
    rateBasisPoints,
    appliesTo: LINE_KINDS.filter((kind) => codeOf(kind) === code),
  }));
}

function moneyFigures({ quote }: PriceResult): KeyFigure[] {
  const { totals, currency } = quote;
  const amount = (minor: number) => amountWords(minor, currency);
  return [
    { key: 'total', label: 'Total', value: amount(totals.grandMinor) },
    { key: 'net', label: 'Before tax', value: amount(totals.netMinor) },
    { key: 'deposit', label: 'Deposit', value: amount(totals.depositMinor) },
    { key: 'discount', label: 'Discount', value: amount(totals.discountMinor) },
  ];
}

function workFigures({ tasks, labourMinutes }: PriceResult): KeyFigure[] {
  return [
    { key: 'tasks', label: 'Tasks', value: String(tasks.length) },
    { key: 'labour', label: 'Labour', value: formatMinutes(labourMinutes) },
  ];
}
