'use client';

import { formatLength } from '@gusset/units';
import { useMemo } from 'react';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import type { LengthRule } from './cutting-types.ts';

/** How this device writes lengths. */
export function useLengthRule(): LengthRule {
  const { lengthUnit, shop } = useDisplay();
  const denominator = shop.inchDenominator;
  return useMemo(() => {
    const format = { unit: lengthUnit, denominator };
    return {
      words: (mm) => formatLength(mm, { ...format, style: lengthUnit === 'mm' ? 'plain' : 'drawing' }),
      drawn: (mm) => formatLength(mm, { ...format, style: 'drawing' }),
      unit: lengthUnit,
    };
  }, [lengthUnit, denominator]);
}
