'use client';

import type { Dimension, MeasuringMethod } from '@gusset/contracts/cargo';
import type { Reading } from '@gusset/contracts/survey';
import { useState } from 'react';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { isUsual, readEntry } from '../../shared/survey/reading-entry.ts';
import type { KeptReading } from './survey-acts.ts';

export type UsedEntry = {
  readonly text: string;
  readonly method: MeasuringMethod;
  readonly plusMinus: number | null;
  readonly refusal: string | null;
  /** Nothing typed since the letter was opened: the first key replaces what stands there. */
  readonly isFresh: boolean;
  readonly type: (text: string) => void;
  readonly restore: () => void;
  readonly setMethod: (method: MeasuringMethod) => void;
  readonly setPlusMinus: (plusMinus: number | null) => void;
  /** False where what stands there cannot be: it stays, with the reason. */
  readonly commit: () => boolean;
};

export type UseEntryOptions = {
  readonly dimension: Dimension | null;
  readonly reading: KeptReading | null;
  readonly onReading: (reading: Reading) => void;
  readonly onCleared: () => void;
};

type Draft = { readonly key: string | null; readonly text: string | null; readonly refusal: string | null };

/** What is being typed at the open letter. The way of measuring stays from letter to letter, as the tape in the hand. */
export function useEntry({ dimension, reading, onReading, onCleared }: UseEntryOptions): UsedEntry {
  const { lengthUnit } = useDisplay();
  const [draft, setDraft] = useState<Draft>({ key: null, text: null, refusal: null });
  const [method, setMethod] = useState<MeasuringMethod>('tape');
  const [plusMinus, setPlusMinus] = useState<number | null>(null);
  const key = dimension?.key ?? null;
  const [opened, setOpened] = useState<string | null>(null);

  // Opening a letter shows how it was taken; a letter not taken yet keeps the method in hand with its usual ±. Done
  // while rendering, so that an answer from the server never undoes a choice made at the open letter.
  if (opened !== key) {
    setOpened(key);
    setDraft({ key, text: null, refusal: null });
    if (reading !== null) setMethod(reading.method);
    setPlusMinus(
      dimension === null || reading === null || isUsual(dimension, reading) ? null : reading.plusMinus,
    );
  }

  const typed = draft.key === key ? draft.text : null;
  const text = typed ?? reading?.typed ?? '';

  const put = (entry: { text: string; method: MeasuringMethod; plusMinus: number | null }): boolean => {
    if (dimension === null) return true;
    const outcome = readEntry(dimension, entry, lengthUnit);
    if (outcome.kind === 'refused') {
      setDraft({ key, text: entry.text, refusal: outcome.why });
      return false;
    }
    setDraft({ key, text: null, refusal: null });
    if (outcome.kind === 'empty') {
      if (reading !== null) onCleared();
      return true;
    }
    if (reading === null || !sameReading(reading, outcome.reading)) onReading(outcome.reading);
    return true;
  };
  const choose = (chosen: { method: MeasuringMethod; plusMinus: number | null }) => {
    setMethod(chosen.method);
    setPlusMinus(chosen.plusMinus);
    // A letter that is taken already changes at once; one half typed waits for Next.
    if (typed === null && reading !== null) put({ text, ...chosen });
  };
  return {
    text,
    method,
    plusMinus,
    refusal: draft.key === key ? draft.refusal : null,
    isFresh: typed === null,
    type: (next) => setDraft({ key, text: next, refusal: null }),
    restore: () => setDraft({ key, text: null, refusal: null }),
    setMethod: (next) => choose({ method: next, plusMinus: null }),
    setPlusMinus: (next) => choose({ method, plusMinus: next }),
    commit: () => (typed === null ? true : put({ text: typed, method, plusMinus })),
  };
}

function sameReading(a: Reading, b: Reading): boolean {
  return a.value === b.value && a.typed === b.typed && a.plusMinus === b.plusMinus && a.method === b.method;
}
