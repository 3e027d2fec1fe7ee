// The search in words: aims, boxes, what a design does, what was not tried.
import type { SearchAim, SearchKind } from '@gusset/contracts/acoustics';
import type { ApiOutputs } from '../../../shared/data/api-types.ts';

type Lines<T> = T extends AsyncIterable<infer Line> ? Line : never;
export type SearchLine = Lines<ApiOutputs['soundSearch']['run']>;
export type SearchAnswer = Extract<SearchLine, { kind: 'answer' }>;
export type SearchProgress = Extract<SearchLine, { kind: 'progress' }>;
export type FoundDesign = SearchAnswer['ranked'][number];

export const AIM_WORDS: Readonly<Record<SearchAim, { readonly label: string; readonly detail: string }>> = {
  deep: { label: 'Reach low', detail: 'Lowest note within 3 dB at full power' },
  loud: { label: 'Play loud', detail: 'Highest level from 30 to 80 Hz within every limit' },
  smooth: { label: 'Stay even', detail: 'Least rise and fall from 30 to 80 Hz' },
};

export const KIND_WORDS: Readonly<Record<SearchKind, string>> = {
  closed: 'Closed box',
  vented: 'Vented box',
  'single-tuned-bandpass': 'Bandpass, one port',
  'passive-radiator': 'Passive radiators',
  'infinite-baffle': 'Trunk wall',
};

/** A winner and the step of the search that it came from share a key; volume and tuning tell them apart. */
export function designId({
  key,
  netLitres,
  tuningHz,
}: Pick<FoundDesign, 'key' | 'netLitres' | 'tuningHz'>): string {
  return `${key} ${netLitres} ${tuningHz}`;
}

/** Below this every design counts as reaching it. */
const LOWEST_HZ = 10;

export function driversWords({ count, driverName }: Pick<FoundDesign, 'count' | 'driverName'>): string {
  return `${count} × ${driverName}`;
}

/** `Vented box, 42.0 L at 31.5 Hz`. */
export function boxWords({
  kind,
  netLitres,
  tuningHz,
}: Pick<FoundDesign, 'kind' | 'netLitres' | 'tuningHz'>): string {
  if (kind === 'infinite-baffle') return KIND_WORDS[kind];
  const tuned = tuningHz === null ? '' : ` at ${tuningHz.toFixed(1)} Hz`;
  return `${KIND_WORDS[kind]}, ${netLitres.toFixed(1)} L${tuned}`;
}

export function reachWords(lowCornerHz: number): string {
  return lowCornerHz <= LOWEST_HZ ? `below ${LOWEST_HZ} Hz` : `${lowCornerHz.toFixed(1)} Hz`;
}

export function outputWords(outputDb: number): string {
  return `${outputDb.toFixed(1)} dB`;
}

export function deviationWords(deviationDb: number): string {
  return `${deviationDb.toFixed(1)} dB`;
}

/** The verdict over the answer: the winner by the aim that was chosen. */
export function winnerWords(aim: SearchAim, design: FoundDesign): string {
  const who = `${driversWords(design)}, ${boxWords(design).replace(/^./, (letter) => letter.toLowerCase())}`;
  if (aim === 'deep') return `${who}: holds down to ${reachWords(design.lowCornerHz)}`;
  if (aim === 'loud') return `${who}: plays ${outputWords(design.outputDb)}`;
  return `${who}: rises and falls by ${deviationWords(design.deviationDb)}`;
}

/** `Series, 4 Ω` as a person wires it. */
export function wiringWords({
  count,
  seriesPerString,
  coilWiring,
  loadOhm,
}: Pick<FoundDesign, 'count' | 'seriesPerString' | 'coilWiring' | 'loadOhm'>): string {
  const coils = coilWiring === 'single' ? [] : [`coils in ${coilWiring}`];
  const drivers =
    count === 1
      ? []
      : [
          seriesPerString === 1
            ? 'drivers in parallel'
            : seriesPerString === count
              ? 'drivers in series'
              : `strings of ${seriesPerString} in series`,
        ];
  return [...coils, ...drivers, `${Number(loadOhm.toFixed(2))} Ω load`].join(', ');
}

const LEFT_OUT_WORDS: readonly (readonly [reason: keyof SearchAnswer['leftOut'], words: string])[] = [
  ['limitsUnknown', 'with no travel or power stated'],
  ['sheetsIncomplete', 'with an incomplete data sheet'],
  ['tooDeep', 'too deep for the room behind the panel'],
  ['noneAvailable', 'not in stock'],
  ['priceUnknown', 'without a buying price'],
  ['overBudget', 'over the budget'],
  ['loadTooLow', 'too low a load for the amplifier'],
];

/** `Not tried: 3 too deep, 1 over the budget.`; null where all were. */
export function leftOutWords(leftOut: SearchAnswer['leftOut']): string | null {
  const reasons = LEFT_OUT_WORDS.flatMap(([reason, words]) => {
    const count = leftOut[reason];
    return count === 0 ? [] : [`${count} ${words}`];
  });
  return reasons.length === 0 ? null : `Not tried: ${reasons.join(', ')}.`;
}

const whole = new Intl.NumberFormat('en-GB', { useGrouping: true });

export function countWords(count: number): string {
  return whole.format(count);
}

/** What the chart claims; those who see no costs are told of three things only. */
export function frontWords({ front, frontCount }: Pick<SearchAnswer, 'front' | 'frontCount'>): string {
  const hasCosts = front.some(({ costMinor }) => costMinor !== null);
  const better = hasCosts ? 'lower, louder, smaller and cheaper' : 'lower, louder and smaller';
  const these = frontCount === 1 ? 'this one' : `these ${countWords(frontCount)}`;
  const drawn = frontCount > front.length ? `, of which ${countWords(front.length)} are drawn` : '';
  return `No design is ${better} at once than ${these}${drawn}.`;
}
