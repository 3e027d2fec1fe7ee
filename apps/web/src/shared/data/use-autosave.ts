'use client';

import type { Conflict } from '@gusset/contracts/errors';
import { useEffect, useState, useSyncExternalStore } from 'react';
import type { SaveStatus } from '../marks/save-state.tsx';
import { useDisplay } from '../shell/display-provider.tsx';
import { type Autosave, type AutosaveDeps, type AutosaveState, createAutosave } from './autosave.ts';
import { browserDrafts, type DraftKey } from './drafts.ts';
import type { ShownError } from './shop-error.ts';

export type UseAutosaveOptions<Value> = {
  readonly key: DraftKey;
  /** As loaded; a later refetch does not overwrite what someone is typing. */
  readonly start: { readonly value: Value; readonly version: number };
  readonly save: (value: Value, version: number) => Promise<{ readonly version: number }>;
  /** Usually the contract's schema, fetched when a draft was kept: pages don't send the validator. */
  readonly readDraft: AutosaveDeps<Value>['readDraft'];
};

export type UsedAutosave<Value> = {
  readonly value: Value;
  readonly change: (value: Value) => void;
  /** Put on the element around the fields: leaving a field sends at once. */
  readonly onBlur: () => void;
  /** Sends what is unsent and waits for the answer. */
  readonly flush: () => Promise<void>;
  /** For SaveState in the page header. */
  readonly status: SaveStatus;
  /** What the server refused, for `fieldError(error, path)`. */
  readonly error: ShownError | null;
  readonly conflict: Conflict | null;
  readonly resolve: (value: Value) => void;
  /** Takes what somebody else saved, where nothing typed here waits to be sent; false where something does. */
  readonly adopt: (saved: { readonly value: Value; readonly version: number }) => boolean;
  readonly isRestored: boolean;
};

const shownStatus = (
  status: AutosaveState<unknown>['status'],
  timeOf: (atMs: number) => string,
): SaveStatus => {
  if (status.kind === 'saved') return { kind: 'saved', at: timeOf(status.atMs) };
  if (status.kind === 'waiting') return { kind: 'waiting', unsent: 1 };
  if (status.kind === 'refused') return { kind: 'refused', why: status.error.message };
  return { kind: status.kind };
};

/** Saves while one types; keeps what isn't sent on this device; never loses a word, never overwrites another's. */
export function useAutosave<Value>(options: UseAutosaveOptions<Value>): UsedAutosave<Value> {
  const { shop } = useDisplay();
  const [autosave] = useState<Autosave<Value>>(() =>
    createAutosave<Value>({
      ...options,
      store: browserDrafts,
      nowMs: Date.now,
      later: (act, delayMs) => {
        const timer = setTimeout(act, delayMs);
        return () => clearTimeout(timer);
      },
    }),
  );
  const state = useSyncExternalStore(autosave.subscribe, autosave.state, autosave.state);

  useEffect(() => {
    const flush = () => void autosave.flush();
    const onHide = () => {
      if (document.visibilityState === 'hidden') flush();
    };
    void autosave.restore();
    window.addEventListener('online', flush);
    document.addEventListener('visibilitychange', onHide);
    return () => {
      window.removeEventListener('online', flush);
      document.removeEventListener('visibilitychange', onHide);
      flush();
    };
  }, [autosave]);

  const mustWarn = !state.isKept && state.status.kind !== 'saved';
  useEffect(() => {
    if (!mustWarn) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
  }, [mustWarn]);

  const timeOf = (atMs: number): string =>
    new Intl.DateTimeFormat(shop.locale, {
      hour: '2-digit',
      minute: '2-digit',
      timeZone: shop.timeZone,
    }).format(atMs);
  const { status } = state;
  return {
    value: state.value,
    change: autosave.change,
    onBlur: () => void autosave.flush(),
    flush: autosave.flush,
    status: shownStatus(status, timeOf),
    error: status.kind === 'refused' ? status.error : null,
    conflict: status.kind === 'conflict' ? status.conflict : null,
    resolve: (value) => void autosave.resolve(value),
    adopt: autosave.adopt,
    isRestored: state.isRestored,
  };
}
