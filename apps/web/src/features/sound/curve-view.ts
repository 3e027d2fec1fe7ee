'use client';

import type { DesignLetter, SoundResult } from '@gusset/contracts/sound';
import type { ChartSpread } from '@gusset/sheets';
import { useState } from 'react';
import type { SoundSheet } from './use-sound-sheet.ts';
import { useSpread } from './use-spread.ts';

/** Where a reader looks first when the curve has no lower end. */
const START_HZ = 40;

/** How the curves are being looked at: shared by all charts of the sheet. */
export type CurveView = {
  readonly cursorHz: number;
  readonly onCursor: (hz: number) => void;
  readonly isFreeAir: boolean;
  readonly onFreeAir: (isFreeAir: boolean) => void;
  /** What parts and work within their tolerances make of it. */
  readonly isSpread: boolean;
  readonly onSpread: (isSpread: boolean) => void;
  readonly spread: ChartSpread | null;
  /** Designs laid over the one that counts. */
  readonly letters: readonly DesignLetter[];
  readonly onLetters: (shown: readonly DesignLetter[]) => void;
  /** The last issue, drawn beside a draft that differs from it. */
  readonly issued: SoundResult | null;
};

/** A design that is added is drawn until somebody takes it off the charts. */
export function useCurveView({ result, input, data }: SoundSheet, issued: SoundResult | null): CurveView {
  const [cursorHz, onCursor] = useState(result?.reachesHz ?? START_HZ);
  const [isFreeAir, onFreeAir] = useState(false);
  const [isSpread, onSpread] = useState(false);
  const spread = useSpread(input, data.facts, isSpread);
  const [hidden, setHidden] = useState<readonly DesignLetter[]>([]);
  const all = (result?.variants ?? []).map(({ letter }) => letter);
  return {
    cursorHz,
    onCursor,
    isFreeAir,
    onFreeAir,
    isSpread,
    onSpread,
    spread,
    letters: all.filter((letter) => !hidden.includes(letter)),
    onLetters: (shown) => setHidden(all.filter((letter) => !shown.includes(letter))),
    issued,
  };
}
