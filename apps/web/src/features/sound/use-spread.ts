'use client';

import { toleranceBand } from '@gusset/acoustics';
import type { SoundFacts, SoundInput } from '@gusset/contracts/sound';
import { type ChartSpread, soundSystem } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useEffect, useState } from 'react';

/** The draws wait until a drag rests: some hundred circuits take longer than a frame. */
const RESTS_MS = 250;
const SHOWN = { lowHz: 10, highHz: 500 };

/** Where nine in ten of what is built will lie; null while it is off, being drawn, or the design is not complete. */
export function useSpread(input: SoundInput, facts: SoundFacts, isOn: boolean): ChartSpread | null {
  const [spread, setSpread] = useState<{ readonly of: SoundInput; readonly band: ChartSpread } | null>(null);
  useEffect(() => {
    if (!isOn) return;
    const timer = setTimeout(() => {
      const system = soundSystem(input, facts);
      if (system === null) return;
      const { frequenciesHz: _frequencies, ...asked } = system;
      const band = toleranceBand({ system: asked, shown: SHOWN });
      if (!isRefusal(band)) setSpread({ of: input, band });
    }, RESTS_MS);
    return () => clearTimeout(timer);
  }, [input, facts, isOn]);
  return isOn && spread?.of === input ? spread.band : null;
}
