'use client';

import { toShopTime } from '@gusset/units';
import { useEffect, useState } from 'react';
import { useDisplay } from '../shell/display-provider.tsx';
import type { PlanFrame } from './plan-words.ts';

const TICK_MS = 30_000;

/** The moment now, on the shop's wall; begins with when the plan was made, so that server and browser draw alike. */
export function usePlanFrame(plannedAt: string): PlanFrame & { readonly now: string } {
  const { shop } = useDisplay();
  const [now, setNow] = useState(plannedAt);
  useEffect(() => {
    const tick = () => setNow(new Date().toISOString());
    tick();
    const timer = setInterval(tick, TICK_MS);
    return () => clearInterval(timer);
  }, []);
  return { zone: shop.timeZone, locale: shop.locale, today: toShopTime(now, shop.timeZone).date, now };
}
