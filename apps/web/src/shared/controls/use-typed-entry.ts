'use client';

import { type FocusEvent, type KeyboardEvent, useState } from 'react';
import type { TypedReading } from './typed-reading.ts';

export type TypedEntryOptions<Value> = {
  /** The committed value, as the field shows it at rest. */
  readonly shown: string;
  readonly read: (text: string) => TypedReading<Value>;
  /** One display step up (+1) or down (-1) from a text; null where there is nothing to step from. */
  readonly step: ((text: string, steps: number) => Value | null) | null;
  readonly format: (value: Value) => string;
  readonly onCommit: (value: Value | null) => void;
};

const BIG_STEP = 10;

type Draft = { readonly text: string; readonly refusal: string | null };

/**
 * Typing into a field that reads what it is given: Enter, Tab and blur commit, Esc restores, arrows step, focus
 * selects all. A text that can't be read stays, with the reason; nothing typed is lost.
 */
export function useTypedEntry<Value>({ shown, read, step, format, onCommit }: TypedEntryOptions<Value>) {
  const [draft, setDraft] = useState<Draft | null>(null);
  const [note, setNote] = useState<string | null>(null);
  const text = draft?.text ?? shown;

  const type = (next: string): void => {
    setNote(null);
    setDraft({ text: next, refusal: draft?.refusal ?? null });
  };

  /** True when the field holds a value (or nothing) that was accepted. */
  const commit = (): boolean => {
    if (draft === null || draft.text === shown) {
      setDraft(null);
      return true;
    }
    const reading = read(draft.text);
    if (reading.kind === 'refused') {
      setDraft({ text: draft.text, refusal: reading.why });
      return false;
    }
    setDraft(null);
    setNote(reading.kind === 'value' ? reading.note : null);
    onCommit(reading.kind === 'value' ? reading.value : null);
    return true;
  };

  const restore = (): void => {
    setDraft(null);
    setNote(null);
  };

  const stepBy = (steps: number): void => {
    const stepped = step?.(text, steps) ?? null;
    if (stepped === null) return;
    const reading = read(format(stepped));
    if (reading.kind === 'refused') {
      setDraft({ text, refusal: reading.why });
      return;
    }
    setDraft(null);
    onCommit(stepped);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    const isChanged = draft !== null && draft.text !== shown;
    if (event.key === 'Enter' && isChanged) {
      event.preventDefault();
      if (commit()) event.currentTarget.select();
      return;
    }
    if (event.key === 'Escape' && draft !== null) {
      event.preventDefault();
      event.stopPropagation();
      restore();
      return;
    }
    if (step !== null && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
      event.preventDefault();
      stepBy((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? BIG_STEP : 1));
    }
  };

  return {
    text,
    note,
    refusal: draft?.refusal ?? null,
    isEditing: draft !== null,
    type,
    commit,
    restore,
    inputHandlers: {
      onKeyDown,
      onFocus: (event: FocusEvent<HTMLInputElement>) => event.currentTarget.select(),
      onBlur: () => {
        commit();
      },
    },
  };
}
