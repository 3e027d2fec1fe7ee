// A customer's quote on paper. The input has no field for a cost or a margin, so none can be printed.
import type { QuotePaper, QuotePaperLine } from '@gusset/contracts/drawings';
import { formatMoney } from '@gusset/units';
import { line, polygon, text } from '../scene/items.ts';
import type { Scene, SceneItem } from '../scene/scene.ts';
import { rectangle, spot } from '../scene/spot.ts';
import { PLANNING_CAUTION } from './draw-sheet-page.ts';
import { type FlowTable, PageFlow, type TableCell } from './page-flow.ts';
import type { PaperBlock, PaperDocument } from './paper-page.ts';
import { printableArea } from './paper-size.ts';
import { BODY, CAPTION, HEADING, type Lettering, SMALL, setWords, TITLE } from './words-block.ts';

const FOOT_PT = 26;
const FIGURE_SHARE = 0.34; // of the page's height, at most
const MONEY: Lettering = { face: 'mono', sizePt: 9.5, ink: 'ink', leading: 1.45 };
const STRONG: Lettering = { ...BODY, face: 'semibold' };

/** `drawing` draws the box to a given size; null = a quote without a picture. */
export function quoteDocument(
  quote: QuotePaper,
  drawing: ((room: { readonly widthPt: number; readonly heightPt: number }) => Scene) | null,
): PaperDocument {
  const flow = new PageFlow({ paper: quote.paper, orientation: 'portrait', headPt: 0, footPt: FOOT_PT });
  const title = `Quote ${quote.number}, version ${quote.version}`;
  flow.newPage(title);
  letterhead(flow, quote);
  parties(flow, quote);
  if (quote.scope.length > 0) {
    flow.heading('What we will do', HEADING, 'H2');
    for (const part of quote.scope) flow.words(part, BODY);
    flow.space(10);
  }
  if (drawing !== null) {
    const area = printableArea({ paper: quote.paper, orientation: 'portrait' });
    flow.figure(drawing({ widthPt: flow.widthPt, heightPt: (area.bottom - area.top) * FIGURE_SHARE }));
    flow.space(10);
  }
  for (const section of quote.sections) {
    flow.heading(section.title, HEADING, 'H2');
    flow.table(linesTable(section.title, section.lines, quote));
    flow.space(12);
  }
  totals(flow, quote);
  conditions(flow, quote);
  const running = `${quote.shop.name} · ${title} · ${quote.issued}`;
  return {
    title: `${title}, ${quote.vehicle}`,
    language: quote.locale,
    author: quote.shop.name,
    pages: flow.finish((page, pages) => [footBlock(quote, running, page, pages)]),
  };
}

const money = (minor: number, { currency, locale }: QuotePaper): string =>
  formatMoney({ minor, currency }, locale);

function letterhead(flow: PageFlow, { shop }: QuotePaper): void {
  const top = flow.y;
  const half = flow.widthPt / 2;
  const name = setWords(shop.name, TITLE, { left: flow.left, widthPt: half, align: 'start' }, top);
  const lines = [...shop.lines, ...(shop.taxNumber === '' ? [] : [shop.taxNumber])].join('\n');
  const address = setWords(lines, SMALL, { left: flow.left + half, widthPt: half, align: 'end' }, top + 4);
  const heightPt = Math.max(name.heightPt, address.heightPt + 4) + 12;
  flow.add({ kind: 'words', role: 'P', items: [...name.items, ...address.items], url: null }, heightPt);
  const y = flow.y;
  const rule = line(spot(flow.left, y), spot(flow.left + flow.widthPt, y), 'frame');
  flow.add({ kind: 'furniture', items: [rule] }, 16);
}

/** Who and what on the left, number and dates on the right. */
function parties(flow: PageFlow, quote: QuotePaper): void {
  const heading = setWords(`Quote ${quote.number}`, { ...TITLE, sizePt: 20 }, wholeColumn(flow), flow.y);
  flow.add({ kind: 'words', role: 'H1', items: heading.items, url: null }, heading.heightPt + 8);
  const share = flow.widthPt / 3;
  const columns: readonly (readonly [string, string])[] = [
    ['For', [quote.customer.name, ...quote.customer.lines].join('\n')],
    [
      'Vehicle',
      [quote.vehicle, quote.job === '' ? '' : `Job ${quote.job}`].filter((part) => part !== '').join('\n'),
    ],
    ['Dates', `Version ${quote.version}\nIssued ${quote.issued}\nValid until ${quote.validUntil}`],
  ];
  const top = flow.y;
  const set = columns.map(([caption, words], index) => {
    const column = { left: flow.left + index * share, widthPt: share - 12, align: 'start' } as const;
    const head = setWords(caption.toUpperCase(), CAPTION, column, top);
    const body = setWords(words, BODY, column, top + head.heightPt + 1);
    return { items: [...head.items, ...body.items], heightPt: head.heightPt + 1 + body.heightPt };
  });
  const heightPt = Math.max(...set.map((each) => each.heightPt)) + 16;
  flow.add({ kind: 'words', role: 'P', items: set.flatMap(({ items }) => items), url: null }, heightPt);
}

const wholeColumn = (flow: PageFlow) => ({ left: flow.left, widthPt: flow.widthPt, align: 'start' }) as const;

function linesTable(title: string, lines: readonly QuotePaperLine[], quote: QuotePaper): FlowTable {
  const words = (text: string, lettering: Lettering): TableCell => ({
    kind: 'words',
    words: [[text, lettering]],
  });
  return {
    title,
    columns: [
      { title: 'Work and parts', share: 5.4, align: 'start' },
      { title: 'Quantity', share: 1.2, align: 'end' },
      { title: 'Each', share: 1.7, align: 'end' },
      { title: quote.taxIncluded ? 'Price with tax' : 'Price before tax', share: 1.9, align: 'end' },
    ],
    header: CAPTION,
    rowPaddingPt: 3,
    rows: lines.map((each): TableCell[] => [
      {
        kind: 'words',
        words: [
          [each.description, BODY],
          [each.detail, SMALL],
        ],
      },
      words(each.quantity, MONEY),
      words(each.unitPriceMinor === null ? '' : money(each.unitPriceMinor, quote), MONEY),
      words(money(each.amountMinor, quote), MONEY),
    ]),
  };
}

type TotalRow = { readonly name: string; readonly amount: string; readonly strong: boolean };

function totals(flow: PageFlow, quote: QuotePaper): void {
  const taxWord = quote.taxIncluded ? 'in the prices: ' : '';
  const rows: TotalRow[] = [
    {
      name: quote.taxIncluded ? 'Sum with tax' : 'Sum before tax',
      amount: money(quote.subtotalMinor, quote),
      strong: false,
    },
    ...quote.taxes.map(({ name, baseMinor, amountMinor }) => ({
      name: `${taxWord}${name} on ${money(baseMinor, quote)}`,
      amount: money(amountMinor, quote),
      strong: false,
    })),
    { name: 'Total', amount: money(quote.totalMinor, quote), strong: true },
  ];
  if (quote.deposit !== null) {
    const { due, amountMinor } = quote.deposit;
    rows.push({
      name: due === '' ? 'Deposit' : `Deposit, ${due}`,
      amount: money(amountMinor, quote),
      strong: false,
    });
  }
  const rowPt = 19;
  flow.keep(rows.length * rowPt + 8);
  const left = flow.left + flow.widthPt * 0.38;
  const right = flow.left + flow.widthPt;
  const top = flow.y;
  const rules: SceneItem[] = [];
  const tableRows = rows.map(({ name, amount, strong }, index) => {
    const y = top + index * rowPt + 3;
    const name_ = strong ? { ...STRONG, sizePt: 11.5 } : BODY;
    const figure = strong ? { ...MONEY, sizePt: 11.5 } : MONEY;
    rules.push(
      line(spot(left, y + rowPt - 3), spot(right, y + rowPt - 3), {
        role: 'thin',
        dashPt: null,
        widthPt: strong ? 1.2 : 0.4,
      }),
    );
    return {
      header: false,
      cells: [
        setWords(name, name_, { left, widthPt: (right - left) * 0.64, align: 'start' }, y).items,
        setWords(amount, figure, { left: right - 160, widthPt: 160, align: 'end' }, y).items,
      ],
    };
  });
  flow.add({ kind: 'table', title: 'Totals', rows: tableRows }, 0);
  flow.add({ kind: 'furniture', items: rules }, rows.length * rowPt + 20);
}

function conditions(flow: PageFlow, quote: QuotePaper): void {
  if (quote.note !== '') flow.words(quote.note, BODY);
  if (quote.terms.length > 0) {
    flow.space(6);
    flow.heading('Terms', HEADING, 'H2');
    for (const term of quote.terms) {
      flow.words(term, SMALL);
      flow.space(3);
    }
  }
  if (quote.approveUrl !== '') approveBox(flow, quote.approveUrl);
  flow.space(8);
  const caution =
    'Electrical and structural work on a vehicle follows the makers’ instructions, local codes and licensed practice.';
  flow.words(`${PLANNING_CAUTION} ${caution}`, { ...SMALL, ink: 'ink-2' });
}

function approveBox(flow: PageFlow, url: string): void {
  const heightPt = 44;
  flow.keep(heightPt + 12);
  flow.space(8);
  const top = flow.y;
  const inner = { left: flow.left + 12, widthPt: flow.widthPt - 24, align: 'start' } as const;
  const lead = setWords('Approve at', STRONG, inner, top + 7);
  const address = setWords(url, { ...MONEY, ink: 'mark' }, inner, top + 7 + lead.heightPt);
  const framePt = Math.max(heightPt, lead.heightPt + address.heightPt + 14);
  flow.add(
    { kind: 'furniture', items: [polygon(rectangle(flow.left, top, flow.widthPt, framePt), 'frame')] },
    0,
  );
  flow.add({ kind: 'words', role: 'P', items: [...lead.items, ...address.items], url }, framePt);
}

function footBlock(quote: QuotePaper, running: string, page: number, pages: number): PaperBlock {
  const area = printableArea({ paper: quote.paper, orientation: 'portrait' });
  const manner = { sizePt: 7.5, face: 'condensed', ink: 'ink-2' } as const;
  return {
    kind: 'furniture',
    items: [
      line(spot(area.left, area.bottom - 14), spot(area.right, area.bottom - 14), {
        role: 'thin',
        dashPt: null,
        widthPt: 0.5,
      }),
      text(spot(area.left, area.bottom - 2), running, manner),
      text(spot(area.right, area.bottom - 2), `Page ${page} of ${pages}`, { ...manner, anchor: 'end' }),
    ],
  };
}
