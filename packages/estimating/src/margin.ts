// What is left of a price after its cost.
import { divideRounded } from '@gusset/units';

/** Net less cost, and its share of net in basis points; no share where net is 0. */
export function marginOf(
  netMinor: number,
  costMinor: number,
): { readonly marginMinor: number; readonly marginBasisPoints: number | null } {
  const marginMinor = netMinor - costMinor;
  const marginBasisPoints =
    netMinor === 0 ? null : divideRounded(BigInt(marginMinor) * 10_000n, BigInt(netMinor));
  return { marginMinor, marginBasisPoints };
}
