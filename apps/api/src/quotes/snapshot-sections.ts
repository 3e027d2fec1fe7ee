// A priced job as the customer reads it: parts one by one, work by phase, the discount as a line of its own. The lines
// add up to the subtotal to the cent.
import type { CustomerLine, CustomerQuote, LineKind } from '@gusset/contracts/estimating';
import type { TaskPhase } from '@gusset/contracts/planning';
import type { JobTaskSpec } from '@gusset/contracts/price';
import type { QuoteSnapshot, SnapshotLine } from '@gusset/contracts/quote';
import { quantityWords } from '@gusset/sheets';

const PHASE_WORDS: Readonly<Record<TaskPhase, string>> = {
  intake: 'Taking your vehicle in and measuring it',
  design: 'Drawing the box and trying it in the vehicle',
  parts: 'Ordering and checking parts',
  wood: 'Building the box',
  finish: 'Finishing the box',
  wiring: 'Wiring',
  fitting: 'Fitting everything',
  handover: 'Tuning, checks and hand-over',
};
const PHASES: readonly TaskPhase[] = [
  'intake',
  'design',
  'parts',
  'wood',
  'finish',
  'wiring',
  'fitting',
  'handover',
];

const DETAIL_LIMIT = 500;
const NAME_LIMIT = 120;

export function snapshotSections(
  quote: CustomerQuote,
  tasks: readonly JobTaskSpec[],
): QuoteSnapshot['sections'] {
  const counted = quote.lines.filter((line) => line.counted);
  const of = (...kinds: LineKind[]) => counted.filter(({ kind }) => kinds.includes(kind));
  const { discountMinor } = quote.totals;
  const sections = [
    { title: 'Parts and materials', lines: of('material', 'part').map(partLine) },
    { title: 'Work', lines: workLines(of('labour'), tasks) },
    { title: 'Also', lines: of('supplies', 'subcontract', 'other').map(partLine) },
    {
      title: 'Discount',
      lines: discountMinor === 0 ? [] : [plainLine({ description: 'Discount', amountMinor: -discountMinor })],
    },
  ];
  return sections.filter(({ lines }) => lines.length > 0);
}

function plainLine(line: Pick<SnapshotLine, 'description' | 'amountMinor'> & Partial<SnapshotLine>) {
  return { detail: '', quantity: '', unitPriceMinor: null, ...line };
}

const BROUGHT: Readonly<Record<string, string>> = {
  customer: 'You bring it.',
  sponsor: 'Comes from a sponsor.',
};

function partLine(line: CustomerLine): SnapshotLine {
  return plainLine({
    description: line.description.slice(0, NAME_LIMIT),
    detail: line.source === null ? '' : (BROUGHT[line.source] ?? ''),
    quantity: quantityWords(line),
    unitPriceMinor: line.unit === 'lot' ? null : line.unitPriceMinor,
    amountMinor: line.listMinor,
  });
}

/** One line a phase: how long and how much, the tasks in small under it. */
function workLines(lines: readonly CustomerLine[], tasks: readonly JobTaskSpec[]): SnapshotLine[] {
  const phaseOf = new Map(tasks.map(({ key, phase }) => [key, phase]));
  return PHASES.flatMap((phase) => {
    const own = lines.filter(({ key }) => phaseOf.get(key) === phase);
    if (own.length === 0) return [];
    const minutes = own.reduce((sum, line) => sum + (line.minutes ?? 0), 0);
    return [
      plainLine({
        description: PHASE_WORDS[phase],
        detail: own
          .map(({ description }) => description)
          .join(' · ')
          .slice(0, DETAIL_LIMIT),
        quantity: `${Number((minutes / 60).toFixed(2))} h`,
        amountMinor: own.reduce((sum, { listMinor }) => sum + listMinor, 0),
      }),
    ];
  });
}
