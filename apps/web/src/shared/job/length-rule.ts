'use client';

import { displayStepMm, formatLength, type TypedLength } from '@gusset/units';
import { useMemo } from 'react';
import { lengthInField } from '../controls/length-entry.ts';
import { useDisplay } from '../shell/display-provider.tsx';

export type LengthRule = {
  /** With its unit, for sentences. */
  readonly words: (mm: number) => string;
  /** Bare, for drawings and tables that state the unit once. */
  readonly drawn: (mm: number) => string;
  /** As if it had been typed. */
  readonly write: (mm: number) => string;
  readonly stepMm: number;
  readonly unit: 'mm' | 'in';
};

/** How this device writes lengths. */
export function useLengthRule(): LengthRule {
  const { lengthUnit, shop } = useDisplay();
  const denominator = shop.inchDenominator;
  return useMemo(() => {
    const rules = { unit: lengthUnit, denominator, minMm: 0, maxMm: 20_000 };
    const format = { unit: lengthUnit, denominator };
    return {
      words: (mm) => formatLength(mm, { ...format, style: lengthUnit === 'mm' ? 'plain' : 'drawing' }),
      drawn: (mm) => formatLength(mm, { ...format, style: 'drawing' }),
      write: (mm) => lengthInField(mm, rules),
      stepMm: displayStepMm(lengthUnit === 'mm' ? { unit: 'mm', digits: 0 } : { unit: 'in', denominator }),
      unit: lengthUnit,
    };
  }, [lengthUnit, denominator]);
}

/** As a draft keeps it: the note of the field stays on the screen. */
export function keptLength(length: TypedLength | null) {
  return length === null ? null : { mm: length.mm, typed: length.typed, unit: length.unit };
}
