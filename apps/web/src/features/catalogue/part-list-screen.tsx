'use client';

import type { PartKind } from '@gusset/contracts/records';
import { formatLength, formatMoney } from '@gusset/units';
import { capital, KIND_WORDS, kindSlug } from '../../shared/catalogue-kinds.ts';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import { paths } from '../../shared/paths.ts';
import { RecordList } from '../../shared/record/record-list.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import type { DataColumn, FilterChip } from '../../shared/table/data-column.ts';
import { CatalogueSections } from './catalogue-sections.tsx';
import type { PartRow } from './part-calls.ts';
import { keyFigures, type ShowLength, stockWords } from './part-words.ts';

const CHIPS: readonly FilterChip<PartRow>[] = [
  { id: 'in-stock', label: 'In stock', test: ({ stockQuantity }) => stockQuantity > 0 },
  { id: 'out', label: 'None left', test: ({ stockQuantity }) => stockQuantity === 0 },
];

const SHEET_CHIPS: readonly FilterChip<PartRow>[] = [
  ...CHIPS,
  {
    id: 'unmeasured',
    label: 'Not measured',
    test: (part) => part.kind === 'sheet' && part.figures.measuredThicknessMm === null,
  },
];

const nameOf = ({ maker, name }: PartRow): string => [maker, name].filter(Boolean).join(' ');

function columnsOf(
  show: ShowLength,
  money: ((minor: number) => string) | null,
): readonly DataColumn<PartRow>[] {
  return [
    { id: 'name', header: 'Part', cell: nameOf, sortBy: nameOf, width: '1.6fr', onCard: 'title' },
    {
      id: 'figures',
      header: 'Figures',
      cell: (part) => keyFigures(part, show),
      width: '2.2fr',
      onCard: 'line',
    },
    {
      id: 'code',
      header: 'Order code',
      cell: ({ code }) => code,
      sortBy: ({ code }) => code || null,
      onCard: 'left-out',
    },
    {
      id: 'supplier',
      header: 'Supplier',
      cell: ({ supplierName }) => supplierName ?? '',
      sortBy: ({ supplierName }) => supplierName,
      onCard: 'left-out',
    },
    {
      id: 'stock',
      header: 'In stock',
      cell: stockWords,
      sortBy: ({ stockQuantity }) => stockQuantity,
      isFigures: true,
      width: '120px',
      onCard: 'side',
    },
    ...(money === null
      ? []
      : [
          {
            id: 'price',
            header: 'Sells at',
            cell: ({ sellPriceMinor }: PartRow) => (sellPriceMinor === null ? '' : money(sellPriceMinor)),
            sortBy: ({ sellPriceMinor }: PartRow) => sellPriceMinor,
            isFigures: true,
            width: '130px',
            onCard: 'left-out' as const,
          },
        ]),
  ];
}

/** One kind of part: what the shop has, knows and can order. */
export function PartListScreen({ kind }: { readonly kind: PartKind }) {
  const client = useTRPCClient();
  const { shop, lengthUnit } = useDisplay();
  const seesMoney = useMay('money.read');
  const words = KIND_WORDS[kind];
  const columns = columnsOf(
    (mm) => formatLength(mm, { unit: lengthUnit, denominator: shop.inchDenominator }),
    seesMoney ? (minor) => formatMoney({ minor, currency: shop.currency }, shop.locale) : null,
  );
  return (
    <RecordList<PartRow>
      title={capital(words.many)}
      kicker="Parts"
      noun={words}
      listName={`part.${kind}`}
      procedures={client.part[kind]}
      edit="catalogue.edit"
      columns={columns}
      chips={kind === 'sheet' ? SHEET_CHIPS : CHIPS}
      rowName={nameOf}
      hrefOf={({ id }) => paths.cataloguePart(kindSlug(kind), id)}
      wordsOf={(part) => `${nameOf(part)} ${part.code} ${part.supplierName ?? ''}`}
      initialSort={{ columnId: 'name', isDescending: false }}
      newHref={paths.newPart(kindSlug(kind))}
      newWords={`New ${words.one}`}
      emptyText={EMPTY_TEXT[kind]}
      above={<CatalogueSections here={kind} />}
    />
  );
}

const EMPTY_TEXT: Readonly<Record<PartKind, string>> = {
  driver: 'Type a driver in from its data sheet; the program works out what the sheet leaves open.',
  amplifier: 'An amplifier’s rated power by load tells which drivers it can feed, and which fuse it needs.',
  processor: 'Crossovers and processors: how many channels go in and out.',
  source: 'Head units and other sources: how many outputs, at which voltage.',
  sheet: 'Boards with nominal thickness and the calliper reading of the real one.',
  finish: 'Carpet, vinyl, coatings and paint: how thick, how wide, how long to dry.',
  hardware: 'Screws, inserts, terminals, grilles, cable: what holds and joins.',
  supply: 'Glue, sealant, lining, abrasives: what is used up, and how long it takes to set.',
};
