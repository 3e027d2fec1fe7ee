'use client';

import type { DesignLetter, SoundResult } from '@gusset/contracts/sound';
import { useState } from 'react';

/** Where a reader looks first when the curve has no lower end. */
const START_HZ = 40;

/** How the curves are being looked at: shared by all charts of the sheet. */
export type CurveView = {
  readonly cursorHz: number;
  readonly onCursor: (hz: number) => void;
  readonly isFreeAir: boolean;
  readonly onFreeAir: (isFreeAir: boolean) => void;
  /** Designs laid over the one that counts. */
  readonly letters: readonly DesignLetter[];
  readonly onLetters: (shown: readonly DesignLetter[]) => void;
  /** The last issue, drawn beside a draft that differs from it. */
  readonly issued: SoundResult | null;
};

/** A design that is added is drawn until somebody takes it off the charts. */
export function useCurveView(result: SoundResult | null, issued: SoundResult | null): CurveView {
  const [cursorHz, onCursor] = useState(result?.reachesHz ?? START_HZ);
  const [isFreeAir, onFreeAir] = useState(false);
  const [hidden, setHidden] = useState<readonly DesignLetter[]>([]);
  const all = (result?.variants ?? []).map(({ letter }) => letter);
  return {
    cursorHz,
    onCursor,
    isFreeAir,
    onFreeAir,
    letters: all.filter((letter) => !hidden.includes(letter)),
    onLetters: (shown) => setHidden(all.filter((letter) => !shown.includes(letter))),
    issued,
  };
}
