// Autosave without a screen: when to send, what to keep on the device, what to do when it fails. The clock, the
// store and the server are given, so every path is tested without a browser.

import type { Conflict } from '@gusset/contracts/errors';
import type { DraftKey, DraftStore } from './drafts.ts';
import { isPassing, type ShownError, shownError } from './shop-error.ts';

const SEND_AFTER_MS = 600;
const FIRST_RETRY_MS = 2_000;
const LONGEST_RETRY_MS = 60_000;

export type AutosaveState<Value> = {
  readonly value: Value;
  readonly status:
    | { readonly kind: 'idle' }
    | { readonly kind: 'saving' }
    | { readonly kind: 'saved'; readonly atMs: number }
    | { readonly kind: 'waiting' }
    | { readonly kind: 'refused'; readonly error: ShownError }
    | { readonly kind: 'conflict'; readonly conflict: Conflict };
  /** True when the value came from this device's store, not from the server. */
  readonly isRestored: boolean;
  /** False where this device can't keep a draft (a full or locked store): leaving the page must warn. */
  readonly isKept: boolean;
};

export type AutosaveDeps<Value> = {
  readonly key: DraftKey;
  readonly start: { readonly value: Value; readonly version: number };
  /** Sends the value typed over `version`; answers with the new version. */
  readonly save: (value: Value, version: number) => Promise<{ readonly version: number }>;
  /** A kept draft as a value of today's shape; null when it no longer fits. May fetch the schema for it. */
  readonly readDraft: (kept: unknown) => Value | null | Promise<Value | null>;
  readonly store: DraftStore;
  readonly nowMs: () => number;
  /** Runs `act` later; the answer cancels it. */
  readonly later: (act: () => void, delayMs: number) => () => void;
};

export type Autosave<Value> = {
  readonly state: () => AutosaveState<Value>;
  readonly subscribe: (changed: () => void) => () => void;
  readonly change: (value: Value) => void;
  /** Sends now: on blur, on leaving the page, when the network is back. */
  readonly flush: () => Promise<void>;
  /** Brings back what an earlier visit left unsent, and sends it. */
  readonly restore: () => Promise<void>;
  /** Takes what somebody else saved, where nothing typed here waits to be sent; false where something does. */
  readonly adopt: (saved: { readonly value: Value; readonly version: number }) => boolean;
  /** Settles a conflict: this value stands, over the version that the server has now. */
  readonly resolve: (value: Value) => Promise<void>;
};

export function createAutosave<Value>(deps: AutosaveDeps<Value>): Autosave<Value> {
  const { key, start, save, readDraft, store, nowMs, later } = deps;
  const listeners = new Set<() => void>();
  let state: AutosaveState<Value> = {
    value: start.value,
    status: { kind: 'idle' },
    isRestored: false,
    isKept: true,
  };
  let version = start.version;
  let isDirty = false;
  let running: Promise<void> | null = null;
  let retryMs = FIRST_RETRY_MS;
  let cancelTimer = (): void => undefined;

  const set = (next: Partial<AutosaveState<Value>>): void => {
    state = { ...state, ...next };
    for (const changed of listeners) changed();
  };
  const keep = (value: Value): Promise<void> =>
    store.keep(key, { value, version, keptAtMs: nowMs() }).then(
      () => {
        if (!state.isKept) set({ isKept: true });
      },
      // The store is the browser's; when it fails the text is only on the screen, and the person must know.
      () => set({ isKept: false }),
    );
  const sendIn = (delayMs: number): void => {
    cancelTimer();
    cancelTimer = later(() => void send(), delayMs);
  };

  const failed = (error: ShownError): void => {
    isDirty = true;
    if (error.code === 'CHANGED_MEANWHILE' && error.conflict) {
      set({ status: { kind: 'conflict', conflict: error.conflict } });
    } else if (isPassing(error)) {
      set({ status: { kind: 'waiting' } });
      sendIn(retryMs);
      retryMs = Math.min(LONGEST_RETRY_MS, retryMs * 2);
    } else {
      set({ status: { kind: 'refused', error } });
    }
  };

  const sendOnce = async (): Promise<void> => {
    const sent = state.value;
    isDirty = false;
    set({ status: { kind: 'saving' } });
    try {
      ({ version } = await save(sent, version));
    } catch (error) {
      failed(shownError(error));
      return;
    }
    retryMs = FIRST_RETRY_MS;
    if (isDirty) {
      await keep(state.value);
      await sendOnce();
      return;
    }
    await store.drop(key).catch(() => set({ isKept: false }));
    set({ status: { kind: 'saved', atMs: nowMs() }, isRestored: false });
  };

  const send = (): Promise<void> => {
    cancelTimer();
    if (running) return running;
    if (!isDirty || state.status.kind === 'conflict') return Promise.resolve();
    running = sendOnce().finally(() => {
      running = null;
    });
    return running;
  };

  const change = (value: Value): void => {
    isDirty = true;
    set(state.status.kind === 'refused' ? { value, status: { kind: 'idle' } } : { value });
    void keep(value);
    if (state.status.kind !== 'conflict') sendIn(SEND_AFTER_MS);
  };

  return {
    state: () => state,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => {
        listeners.delete(changed);
      };
    },
    change,
    flush: send,
    restore: async () => {
      const kept = await store.read(key);
      if (kept === null || isDirty) return;
      const value = await readDraft(kept.value);
      if (value === null || isDirty) return;
      version = kept.version;
      isDirty = true;
      set({ value, isRestored: true });
      await send();
    },
    adopt: (saved) => {
      if (isDirty || running !== null) return false;
      version = saved.version;
      set({ value: saved.value });
      return true;
    },
    resolve: async (value) => {
      if (state.status.kind !== 'conflict') return;
      version = state.status.conflict.currentVersion;
      isDirty = true;
      set({ value, status: { kind: 'idle' } });
      await keep(value);
      await send();
    },
  };
}
