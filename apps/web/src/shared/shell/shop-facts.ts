import type { InchDenominator, LengthUnit } from '@gusset/units';

/** The shop's own settings that decide how things are shown and read. */
export type ShopFacts = {
  readonly name: string;
  /** BCP 47, `en-GB`: number signs, dates, names of days. */
  readonly locale: string;
  /** ISO 4217. */
  readonly currency: string;
  readonly lengthUnit: LengthUnit;
  /** Finest division of the inch that the shop reads off its tapes. */
  readonly inchDenominator: InchDenominator;
  /** IANA zone of the shop's wall clock. */
  readonly timeZone: string;
};
