import type { PricedQuote, QuoteInput, QuoteLine } from '@gusset/contracts/estimating';
import { pricedQuoteSchema, quoteInputSchema } from '@gusset/contracts/estimating';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { priceQuote } from './index.ts';

const blank: QuoteInput = {
  currency: 'USD',
  lines: [],
  supplies: null,
  discount: null,
  taxes: [],
  pricesIncludeTax: false,
  taxRounding: 'per-line',
  deposit: { by: 'none' },
  validDays: 21,
  marginFloorBasisPoints: null,
  exclusions: [],
};

function line(key: string, change: Partial<QuoteLine> = {}): QuoteLine {
  return {
    key,
    kind: 'part',
    description: key,
    source: 'buy',
    pricing: { by: 'price', quantity: 1, unit: 'pc', unitCostMinor: 0, unitPriceMinor: 100 },
    taxCodes: null,
    excludeFrom: [],
    ...change,
  };
}

const each = (unitPriceMinor: number, quantity = 1, unitCostMinor = 0): QuoteLine['pricing'] => ({
  by: 'price',
  quantity,
  unit: 'pc',
  unitCostMinor,
  unitPriceMinor,
});

function priced(input: QuoteInput): PricedQuote {
  const quote = priceQuote(input);
  if (isRefusal(quote)) throw new Error(`${quote.refusal.field}: ${quote.refusal.why}`);
  return quote;
}

const refused = (change: Partial<QuoteInput>) => {
  const quote = priceQuote({ ...blank, ...change });
  return isRefusal(quote) ? quote.refusal : null;
};

// Quarry Road Sound, box for the Halden wagon. Worked by hand, all in cents:
//   mdf      2.5 sheets x 42.35 + 35 %   cost 10587.5 -> 10588   list 14293.125 -> 14293
//   drivers  2 x 189.00, cost 142.50     cost 28500              list 37800
//   amp      the customer's, 250.00 typed by mistake: 0; declared value 200.00
//   fit fee  45.00                       cost 0                  list 4500
//   labour   410 min x 75.00/h, 28.00/h  cost 19133.3 -> 19133   list 51250
//   spray    120.00, cost 100.00, no discount, no tax
//   grille   60.00, an option
//   supplies 4 % of 51250 = 2050, cost 60 % = 1230
// Discount 7.5 % on labour and parts: 89050 x 0.075 = 6678.75 -> 6679.
//   labour 6679 x 51250 / 89050 = 3843.88, drivers 2835.12: 3843 + 2835 = 6678, the odd cent to labour: 3844, 2835.
// Tax per line: STD 8.875 %: mdf 1268.50 -> 1269; drivers (37800 - 2835) 3103.14 -> 3103; fee 399.375 -> 399;
//   supplies 181.94 -> 182; together 4953. LAB 5 % of 51250 - 3844 = 47406: 2370.3 -> 2370. Sum 7323.
// Net 14293 + 34965 + 4500 + 47406 + 12000 + 2050 = 115214. Grand 122537. Deposit 40 %: 49014.8 -> 49015.
// Cost 10588 + 28500 + 19133 + 10000 + 1230 = 69451. Margin 45763 = 39.72 % of net.
const HALDEN: QuoteInput = {
  ...blank,
  lines: [
    line('mdf', {
      kind: 'material',
      source: 'stock',
      pricing: { by: 'markup', quantity: 2.5, unit: 'sheet', unitCostMinor: 4235, markupBasisPoints: 3500 },
    }),
    line('drivers', { description: 'Quince 10 in driver', pricing: each(18_900, 2, 14_250) }),
    line('amp', { description: 'Medlar amplifier', source: 'customer', pricing: each(25_000, 1, 20_000) }),
    line('fit-fee', { kind: 'other', source: null, pricing: each(4500) }),
    line('labour', {
      kind: 'labour',
      source: null,
      pricing: { by: 'hours', minutes: 410, hourlyCostMinor: 2800, hourlyRateMinor: 7500 },
    }),
    line('spray', {
      kind: 'subcontract',
      source: null,
      pricing: each(12_000, 1, 10_000),
      taxCodes: [],
      excludeFrom: ['discount'],
    }),
    line('grille', { pricing: each(6000, 1, 2000), excludeFrom: ['total'] }),
  ],
  supplies: {
    description: 'Shop supplies',
    shareOfLabourBasisPoints: 400,
    capMinor: 12_000,
    costBasisPoints: 6000,
  },
  discount: { by: 'percent', rateBasisPoints: 750, on: ['labour', 'part'] },
  taxes: [
    {
      code: 'STD',
      name: 'Sales tax',
      rateBasisPoints: 887.5,
      appliesTo: ['material', 'part', 'supplies', 'other'],
    },
    { code: 'LAB', name: 'Tax on work', rateBasisPoints: 500, appliesTo: ['labour'] },
  ],
  deposit: { by: 'percent', rateBasisPoints: 4000 },
  marginFloorBasisPoints: 2000,
  exclusions: ['The factory head unit stays as it is.'],
};

describe('the Halden quote, worked by hand', () => {
  const quote = priced(HALDEN);
  const by = (key: string) => quote.lines.find((candidate) => candidate.key === key);

  it('prices every line to the cent', () => {
    expect(by('mdf')).toMatchObject({
      listMinor: 14_293,
      costMinor: 10_588,
      unitPriceMinor: null,
      taxMinor: 1269,
    });
    expect(by('drivers')).toMatchObject({
      listMinor: 37_800,
      discountMinor: 2835,
      netMinor: 34_965,
      taxMinor: 3103,
    });
    expect(by('drivers')).toMatchObject({ grossMinor: 38_068, costMinor: 28_500, marginMinor: 6465 });
    expect(by('labour')).toMatchObject({ quantity: 6.833333, unit: 'h', minutes: 410, discountMinor: 3844 });
    expect(by('labour')).toMatchObject({ netMinor: 47_406, taxMinor: 2370, costMinor: 19_133 });
    expect(by('fit-fee')).toMatchObject({ grossMinor: 4899, marginBasisPoints: 10_000 });
    expect(by('spray')).toMatchObject({ discountMinor: 0, taxMinor: 0, grossMinor: 12_000, taxCodes: [] });
    expect(by('supplies')).toMatchObject({ listMinor: 2050, costMinor: 1230, taxMinor: 182 });
  });

  it('lists the customer’s part at nothing, without cost, and says that its price was dropped', () => {
    expect(by('amp')).toMatchObject({
      listMinor: 0,
      grossMinor: 0,
      costMinor: 0,
      marginBasisPoints: null,
      suppliedValueMinor: 20_000,
    });
    expect(quote.warnings).toEqual([{ code: 'supplied-part-price-dropped', lineKey: 'amp' }]);
  });

  it('shows the option with its price and keeps it out of every sum', () => {
    // 60.00 at 8.875 % = 5.325 -> 5.33
    expect(by('grille')).toMatchObject({ counted: false, discountMinor: 0, taxMinor: 533, grossMinor: 6533 });
  });

  it('comes to 1225.37 with 490.15 down', () => {
    expect(quote.totals).toEqual({
      listMinor: 121_893,
      discountMinor: 6679,
      netMinor: 115_214,
      taxMinor: 7323,
      grandMinor: 122_537,
      depositMinor: 49_015,
      balanceMinor: 73_522,
      labourMinutes: 410,
      costMinor: 69_451,
      purchasesMinor: 28_500,
      marginMinor: 45_763,
      marginBasisPoints: 3972,
    });
    expect(quote.taxes).toEqual([
      { code: 'STD', name: 'Sales tax', rateBasisPoints: 887.5, taxableMinor: 55_808, taxMinor: 4953 },
      { code: 'LAB', name: 'Tax on work', rateBasisPoints: 500, taxableMinor: 47_406, taxMinor: 2370 },
    ]);
    expect(quote.byKind.map(({ kind, netMinor }) => [kind, netMinor])).toEqual([
      ['material', 14_293],
      ['part', 34_965],
      ['labour', 47_406],
      ['supplies', 2050],
      ['subcontract', 12_000],
      ['other', 4500],
    ]);
  });

  it('passes both contracts', () => {
    expect(quoteInputSchema.parse(HALDEN)).toEqual(HALDEN);
    expect(pricedQuoteSchema.parse(quote)).toEqual(quote);
  });
});

describe('priceQuote', () => {
  const ten = { code: 'TEN', name: 'Ten', rateBasisPoints: 1000, appliesTo: ['part' as const] };
  const nickels = ['a', 'b', 'c'].map((key) => line(key, { pricing: each(5) }));

  it('rounds tax on each line or once on the sum, as set', () => {
    // 10 % of 0.05 is half a cent: up on each line (3), once on 0.15 (1.5 -> 2).
    const perLine = priced({ ...blank, lines: nickels, taxes: [ten] });
    const perDocument = priced({ ...blank, lines: nickels, taxes: [ten], taxRounding: 'per-document' });
    expect(perLine.totals.taxMinor).toBe(3);
    expect(perDocument.totals.taxMinor).toBe(2);
  });

  it('takes the tax out of prices that include it', () => {
    const vat = { ...ten, rateBasisPoints: 2000 };
    const quote = priced({
      ...blank,
      lines: [line('a', { pricing: each(1200) })],
      taxes: [vat],
      pricesIncludeTax: true,
    });
    expect(quote.lines[0]).toMatchObject({
      listMinor: 1200,
      netMinor: 1000,
      taxMinor: 200,
      grossMinor: 1200,
    });
  });

  it('puts two taxes side by side, on top or within', () => {
    const taxes = [
      { code: 'F', name: 'Federal', rateBasisPoints: 500, appliesTo: ['part' as const] },
      { code: 'P', name: 'Province', rateBasisPoints: 997.5, appliesTo: ['part' as const] },
    ];
    const onTop = priced({ ...blank, lines: [line('a', { pricing: each(10_000) })], taxes });
    // 100.00: 5.00 and 9.975 -> 9.98.
    expect(onTop.taxes.map(({ taxMinor }) => taxMinor)).toEqual([500, 998]);
    // 114.98 with 14.975 % within: 114.98 x 0.14975 / 1.14975 = 14.9757 -> 14.98; 5.00 and 9.98.
    const within = priced({
      ...blank,
      lines: [line('a', { pricing: each(11_498) })],
      taxes,
      pricesIncludeTax: true,
    });
    expect(within.totals).toMatchObject({ netMinor: 10_000, taxMinor: 1498, grandMinor: 11_498 });
    expect(within.taxes.map(({ taxMinor }) => taxMinor)).toEqual([500, 998]);
  });

  it('caps supplies', () => {
    const labour = line('work', {
      kind: 'labour',
      source: null,
      pricing: { by: 'hours', minutes: 600, hourlyCostMinor: 0, hourlyRateMinor: 10_000 },
    });
    const supplies = {
      description: 'Supplies',
      shareOfLabourBasisPoints: 1000,
      capMinor: 2500,
      costBasisPoints: 0,
    };
    expect(priced({ ...blank, lines: [labour], supplies }).totals.listMinor).toBe(102_500);
    expect(
      priced({ ...blank, lines: [labour], supplies: { ...supplies, capMinor: null } }).totals.listMinor,
    ).toBe(110_000);
    expect(priced({ ...blank, lines: [line('a')], supplies }).lines).toHaveLength(1);
    const option = { ...labour, key: 'option', excludeFrom: ['total' as const] };
    expect(
      priced({ ...blank, lines: [labour, option], supplies: { ...supplies, capMinor: null } }).totals
        .listMinor,
    ).toBe(110_000);
  });

  it('gives odd cents of discount and tax to the earlier key, whichever line came first', () => {
    const discount: QuoteInput['discount'] = { by: 'amount', amountMinor: 1, on: ['part'] };
    for (const lines of [nickels, nickels.toReversed()]) {
      const cut = priced({ ...blank, lines, discount });
      expect(cut.lines.find(({ discountMinor }) => discountMinor === 1)?.key).toBe('a');
      const taxed = priced({ ...blank, lines, taxes: [ten], taxRounding: 'per-document' });
      expect(taxed.lines.find(({ taxMinor }) => taxMinor === 0)?.key).toBe('c');
    }
  });

  it('never discounts below nothing, and says that it cut the discount back', () => {
    const quote = priced({
      ...blank,
      lines: nickels,
      discount: { by: 'amount', amountMinor: 100, on: ['part'] },
    });
    expect(quote.totals).toMatchObject({ listMinor: 15, discountMinor: 15, grandMinor: 0 });
    expect(quote.warnings).toEqual([{ code: 'discount-cut-back', askedMinor: 100, givenMinor: 15 }]);
  });

  it('warns below the floor and below cost, comparing the unrounded margin', () => {
    const quote = priced({
      ...blank,
      lines: [line('a', { pricing: each(100_000, 1, 80_001) }), line('b', { pricing: each(10, 1, 11) })],
      marginFloorBasisPoints: 2000,
    });
    // Margin (100010 - 80012) / 100010 = 19.996 %: shown as 20.00 %, still below.
    expect(quote.warnings).toEqual([
      { code: 'margin-below-floor', marginBasisPoints: 2000, floorBasisPoints: 2000 },
      { code: 'price-below-cost', lineKey: 'b', netMinor: 10, costMinor: 11 },
    ]);
  });

  it('asks what the bought parts come to as deposit, never their cost', () => {
    const quote = priced({
      ...blank,
      lines: [
        line('bought', { pricing: each(10_000, 1, 7000) }),
        line('shelf', { source: 'stock', pricing: each(500) }),
        line('lent', { source: 'sponsor', pricing: each(900) }),
      ],
      taxes: [ten],
      deposit: { by: 'parts' },
    });
    expect(quote.totals).toMatchObject({ depositMinor: 11_000, balanceMinor: 550, purchasesMinor: 7000 });
    const small = priced({ ...blank, lines: nickels, deposit: { by: 'amount', amountMinor: 900 } });
    expect(small.totals).toMatchObject({ depositMinor: 15, balanceMinor: 0 });
  });

  it('counts whole yen and thousandths of a dinar alike: in minor units', () => {
    // 10 % of 333 yen = 33.3 -> 33; of 12.345 dinars = 1.2345 -> 1.235.
    const yen = priced({
      ...blank,
      currency: 'JPY',
      lines: [line('a', { pricing: each(333) })],
      taxes: [ten],
    });
    const dinars = priced({
      ...blank,
      currency: 'BHD',
      lines: [line('a', { pricing: each(12_345) })],
      taxes: [ten],
    });
    expect(yen.totals).toMatchObject({ taxMinor: 33, grandMinor: 366 });
    expect(dinars.totals).toMatchObject({ taxMinor: 1235, grandMinor: 13_580 });
  });

  it('prices an empty quote at nothing', () => {
    expect(priced(blank).totals).toMatchObject({ grandMinor: 0, marginBasisPoints: null });
  });

  it('refuses what cannot be priced, naming the field', () => {
    expect(refused({ lines: [line('a'), line('a')] })).toMatchObject({ field: 'lines[1].key', got: 'a' });
    expect(refused({ lines: [line('supplies')] })).toMatchObject({ field: 'lines[0].key' });
    expect(refused({ taxes: [ten, ten] })).toMatchObject({ field: 'taxes[1].code' });
    expect(refused({ lines: [line('a', { source: null })] })).toMatchObject({ field: 'lines[0].source' });
    expect(refused({ lines: [line('a', { kind: 'labour' })] })).toMatchObject({ field: 'lines[0].source' });
    expect(refused({ lines: [line('a', { taxCodes: ['X'] })], taxes: [ten] })).toMatchObject({
      field: 'lines[0].taxCodes[0]',
      allowed: 'TEN',
    });
    const hours = { by: 'hours', minutes: 60, hourlyCostMinor: 0, hourlyRateMinor: 1 } as const;
    expect(refused({ lines: [line('a', { pricing: hours })] })).toMatchObject({
      field: 'lines[0].pricing.by',
    });
    expect(refused({ lines: [line('a', { pricing: each(1_000_000_000, 100_000) })] })).toMatchObject({
      field: 'lines',
    });
  });
});
