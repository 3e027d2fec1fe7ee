import type { BoxFacts, BoxInput, BoxSheetResult } from '@gusset/contracts/box';
import type { BoxUpstream } from '@gusset/sheets';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';

export type BoxJobSheet = JobSheet<BoxInput, BoxFacts, BoxUpstream, BoxSheetResult>;

/** The outside dimensions, by their fields. */
export type OutsideKey = keyof BoxInput['outside'];

export const OUTSIDE_WORDS: Readonly<Record<OutsideKey, string>> = {
  width: 'Outside width',
  height: 'Outside height',
  depth: 'Outside depth',
  depthTop: 'Depth at the top',
  kneeHeight: 'Height of the knee',
};

export function outsideKeyOf(key: string): OutsideKey | null {
  switch (key) {
    case 'outside.width':
      return 'width';
    case 'outside.height':
      return 'height';
    case 'outside.depth':
      return 'depth';
    case 'outside.depthTop':
      return 'depthTop';
    case 'outside.kneeHeight':
      return 'kneeHeight';
    default:
      return null;
  }
}
