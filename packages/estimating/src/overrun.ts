// A change of price against what the customer authorised.
import type { OverrunRule } from '@gusset/contracts/estimating';
import { applyRate } from '@gusset/units';

export type OverrunAnswer = {
  /** The most that may be charged without asking. */
  readonly allowedMinor: number;
  /** What goes past that; 0 where nothing does. */
  readonly overMinor: number;
  readonly needsApproval: boolean;
};

/** Whether work at `proposedMinor` may go on under what was authorised, by the rule of the place. */
export function overrunOf(authorisedMinor: number, proposedMinor: number, rule: OverrunRule): OverrunAnswer {
  const allowedMinor = authorisedMinor + marginOfRule(authorisedMinor, rule);
  const overMinor = Math.max(0, proposedMinor - allowedMinor);
  return { allowedMinor, overMinor, needsApproval: overMinor > 0 };
}

function marginOfRule(authorisedMinor: number, rule: OverrunRule): number {
  switch (rule.by) {
    case 'none':
      return 0;
    case 'amount':
      return rule.amountMinor;
    case 'percent':
      return applyRate(authorisedMinor, rule.rateBasisPoints);
  }
}
