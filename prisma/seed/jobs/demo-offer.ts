// What a job of the demo takes and costs, as it was typed on its parts and price sheets.
import type { PartsLine } from '@gusset/contracts/parts';
import type { PriceInput } from '@gusset/contracts/price';
import type { DaysAgo } from './demo-job.ts';

export type DemoPart = Pick<PartsLine, 'kind' | 'group' | 'quantity' | 'unit'> & {
  /** Code in the catalogue. */
  readonly code: string;
  readonly source?: PartsLine['source'];
  readonly note?: string;
};

export type DemoParts = {
  readonly daysAgo: DaysAgo;
  readonly byHand: readonly DemoPart[];
  /** What is lent: a line of the parts sheet or its group, and when it goes back, in open days from today. */
  readonly loans?: readonly { readonly line: string; readonly source: 'sponsor'; readonly backIn: number }[];
  readonly settledBriefKeys?: readonly string[];
};

export type DemoPrice = Partial<Pick<PriceInput, 'discount' | 'exclusions' | 'extraLines'>> & {
  readonly daysAgo: DaysAgo;
  readonly finish: 'carpet' | 'coating';
  /** Standard tasks that this job does not need. */
  readonly without?: readonly string[];
  /** Minutes that differ from the usual ones. */
  readonly minutes?: Readonly<Record<string, number>>;
  readonly scope: string;
};

export type DemoOffer = {
  readonly cutting: {
    readonly daysAgo: DaysAgo;
    /** Cut along with the box: length and width of the board that the amplifier sits on. */
    readonly amplifierBoard?: readonly [string, string];
    readonly notes?: string;
  };
  readonly parts: DemoParts;
  readonly price?: DemoPrice;
};

/** Amplifier, cable, fuse and leads, as every job with power needs them. */
export function powerAndSignal(options: {
  readonly amplifier: string;
  readonly source?: PartsLine['source'];
  readonly cable: 'CBL-20R' | 'CBL-35R';
  readonly metres: number;
  readonly fuse: 'FH-60' | 'FH-100';
  readonly loudspeakerMetres: number;
}): readonly DemoPart[] {
  const { amplifier, source, cable, metres, fuse, loudspeakerMetres } = options;
  const each = { kind: 'part', quantity: 1, unit: 'each' } as const;
  return [
    {
      code: amplifier,
      ...each,
      group: 'amplifier',
      ...(source === undefined ? {} : { source }),
    },
    { code: cable, kind: 'material', group: 'power', quantity: metres, unit: 'm' },
    { code: fuse, ...each, group: 'power', note: 'Near the battery; fuse goes in last' },
    { code: 'SIG-5', ...each, group: 'signal' },
    { code: 'CBL-SP25', kind: 'material', group: 'signal', quantity: loudspeakerMetres, unit: 'm' },
  ];
}
