import { describe, expect, it } from 'vitest';
import { type QuotePaper, quotePaperSchema } from './quote-paper.ts';

const QUOTE: QuotePaper = {
  paper: 'A4',
  locale: 'en-GB',
  currency: 'GBP',
  shop: { name: 'Quarry Road Sound', lines: ['4 Quarry Road'], taxNumber: '' },
  number: 'Q-2417',
  version: 2,
  issued: '24 November 2026',
  validUntil: '24 December 2026',
  customer: { name: 'R. Okafor', lines: [] },
  vehicle: 'Halden Brisk hatch, 2021',
  job: '2417',
  scope: ['One vented box behind the seats.'],
  sections: [
    {
      title: 'Box',
      lines: [
        {
          description: 'Box, built and trimmed',
          detail: '',
          quantity: '1',
          unitPriceMinor: 42_000,
          amountMinor: 42_000,
        },
        { description: 'Discount', detail: '', quantity: '', unitPriceMinor: null, amountMinor: -2_000 },
      ],
    },
  ],
  taxIncluded: false,
  subtotalMinor: 40_000,
  taxes: [{ name: 'VAT 20 %', baseMinor: 40_000, amountMinor: 8_000 }],
  totalMinor: 48_000,
  deposit: { amountMinor: 20_000, due: 'on approval' },
  terms: [],
  note: '',
  approveUrl: 'https://shop.example/q/abc',
};

describe('quotePaperSchema', () => {
  it('takes a quote whose figures add up', () => {
    expect(quotePaperSchema.parse(QUOTE)).toEqual(QUOTE);
  });

  it('refuses a cost on a line, wherever it comes from', () => {
    const [section] = QUOTE.sections;
    const lines = section?.lines.map((line) => ({ ...line, costMinor: 100 }));
    const answer = quotePaperSchema.safeParse({ ...QUOTE, sections: [{ title: 'Box', lines }] });
    expect(answer.success).toBe(false);
    expect(answer.error?.issues[0]?.code).toBe('unrecognized_keys');
  });

  it('refuses a margin beside the total', () => {
    expect(quotePaperSchema.safeParse({ ...QUOTE, marginBasisPoints: 3_500 }).success).toBe(false);
  });

  it('refuses lines that do not add up to the subtotal', () => {
    const answer = quotePaperSchema.safeParse({ ...QUOTE, subtotalMinor: 40_001, totalMinor: 48_001 });
    expect(answer.error?.issues.map(({ path }) => path)).toEqual([['subtotalMinor']]);
  });

  it('refuses a total that forgets the tax, unless the prices hold it', () => {
    const forgotten = { ...QUOTE, totalMinor: 40_000 };
    expect(quotePaperSchema.safeParse(forgotten).error?.issues.map(({ path }) => path)).toEqual([
      ['totalMinor'],
    ]);
    expect(quotePaperSchema.safeParse({ ...forgotten, taxIncluded: true }).success).toBe(true);
  });

  it('refuses a link that is not a web address', () => {
    expect(quotePaperSchema.safeParse({ ...QUOTE, approveUrl: 'javascript:alert(1)' }).success).toBe(false);
  });
});
