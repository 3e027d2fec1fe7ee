'use client';

import { formatMoney } from '@gusset/units';
import type { MoneyWords } from '../../shared/job/quote-changes.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';

/** Amounts of the sheet's own currency, as the shop writes them. */
export function useMoney(currency: string): MoneyWords {
  const { shop } = useDisplay();
  return (minor) => formatMoney({ minor, currency }, shop.locale);
}
