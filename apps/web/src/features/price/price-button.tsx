'use client';

import { Button } from '../../shared/controls/button.tsx';

export type PriceButtonProps = {
  /** What is changed by it: `Change the price of Quince Q-10`. */
  readonly act: string;
  readonly amount: string;
  /** Null where nobody may change it: then it is only the amount. */
  readonly onPress: (() => void) | null;
};

/** An amount in the list that opens the way to change it; on paper it is the amount alone. */
export function PriceButton({ act, amount, onPress }: PriceButtonProps) {
  if (onPress === null) return amount;
  return (
    <>
      <Button look="quiet" onPress={onPress} aria-label={`${act}, ${amount}`}>
        {amount}
      </Button>
      <span data-print-only="">{amount}</span>
    </>
  );
}
