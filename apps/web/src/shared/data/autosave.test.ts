import type { Conflict, ShopErrorData } from '@gusset/contracts/errors';
import { TRPCClientError } from '@trpc/client';
import { describe, expect, it } from 'vitest';
import { createAutosave } from './autosave.ts';
import type { Draft, DraftKey, DraftStore } from './drafts.ts';

type Note = { readonly text: string };
const KEY: DraftKey = { userId: 'ilves', shopId: 'quarry', document: 'job/2417/brief' };

const memoryStore = (): DraftStore & { readonly kept: Map<string, Draft> } => {
  const kept = new Map<string, Draft>();
  const id = (key: DraftKey) => `${key.userId} ${key.shopId} ${key.document}`;
  return {
    kept,
    read: async (key) => kept.get(id(key)) ?? null,
    keep: async (key, draft) => void kept.set(id(key), draft),
    drop: async (key) => void kept.delete(id(key)),
  };
};

/** Timers that run when told to. */
const handClock = () => {
  let waiting: { act: () => void; delayMs: number }[] = [];
  return {
    delays: () => waiting.map(({ delayMs }) => delayMs),
    later: (act: () => void, delayMs: number) => {
      const timer = { act, delayMs };
      waiting.push(timer);
      return () => {
        waiting = waiting.filter((other) => other !== timer);
      };
    },
    run: () => {
      const due = waiting;
      waiting = [];
      for (const { act } of due) act();
    },
  };
};

const apiError = (code: ShopErrorData['code'], conflict: Conflict | null = null): Error =>
  TRPCClientError.from({
    error: {
      message: code,
      code: -32000,
      data: { shop: { code, message: code, fields: [], conflict, requestId: 'r1' } },
    },
  });

const settle = async (): Promise<void> => {
  for (let turn = 0; turn < 10; turn += 1) await Promise.resolve();
};

type Answer = { readonly version: number } | Error;

const begin = (answers: readonly Answer[], store = memoryStore()) => {
  const clock = handClock();
  const sent: { readonly text: string; readonly version: number }[] = [];
  const left = [...answers];
  const autosave = createAutosave<Note>({
    key: KEY,
    start: { value: { text: 'begun' }, version: 7 },
    save: async (value, version) => {
      sent.push({ text: value.text, version });
      const answer = left.shift();
      if (answer === undefined) throw new Error('the test gave no further answer');
      if (answer instanceof Error) throw answer;
      return answer;
    },
    readDraft: (kept) =>
      typeof kept === 'object' && kept !== null && 'text' in kept && typeof kept.text === 'string'
        ? { text: kept.text }
        : null,
    store,
    nowMs: () => 1_000,
    later: clock.later,
  });
  return { autosave, clock, sent, store };
};

describe('createAutosave', () => {
  it('waits 600 ms after the last change, then sends once with the version it was typed over', async () => {
    const { autosave, clock, sent } = begin([{ version: 8 }]);
    autosave.change({ text: 'a' });
    autosave.change({ text: 'ab' });
    expect(clock.delays()).toEqual([600]);
    clock.run();
    await settle();
    expect(sent).toEqual([{ text: 'ab', version: 7 }]);
    expect(autosave.state().status).toEqual({ kind: 'saved', atMs: 1_000 });
  });

  it('keeps each change on the device until the server has it', async () => {
    const { autosave, store } = begin([{ version: 8 }]);
    autosave.change({ text: 'kept' });
    expect([...store.kept.values()]).toMatchObject([{ value: { text: 'kept' }, version: 7 }]);
    await autosave.flush();
    expect(store.kept.size).toBe(0);
  });

  it('sends what was typed during a save after it, over the new version', async () => {
    const { autosave, sent } = begin([{ version: 8 }, { version: 9 }]);
    autosave.change({ text: 'first' });
    const flushed = autosave.flush();
    autosave.change({ text: 'second' });
    await flushed;
    expect(sent).toEqual([
      { text: 'first', version: 7 },
      { text: 'second', version: 8 },
    ]);
  });

  it('says that it waits, retries after 2 s and then 4 s, and loses nothing', async () => {
    const { autosave, clock, sent, store } = begin([
      new TypeError('offline'),
      new TypeError('offline'),
      { version: 8 },
    ]);
    autosave.change({ text: 'typed in the yard' });
    await autosave.flush();
    expect(autosave.state().status).toEqual({ kind: 'waiting' });
    expect(store.kept.size).toBe(1);
    expect(clock.delays()).toEqual([2_000]);
    clock.run();
    await settle();
    expect(clock.delays()).toEqual([4_000]);
    clock.run();
    await settle();
    expect(autosave.state().status.kind).toBe('saved');
    expect(sent.map(({ text }) => text)).toEqual(Array.from({ length: 3 }, () => 'typed in the yard'));
  });

  it('does not retry what the server refused, and tries again once it is changed', async () => {
    const { autosave, clock } = begin([apiError('NOT_ACCEPTED'), { version: 8 }]);
    autosave.change({ text: 'wrong' });
    await autosave.flush();
    expect(autosave.state().status).toMatchObject({ kind: 'refused', error: { code: 'NOT_ACCEPTED' } });
    expect(clock.delays()).toEqual([]);
    autosave.change({ text: 'right' });
    await autosave.flush();
    expect(autosave.state().status.kind).toBe('saved');
  });

  it('stops at a conflict and sends over the current version once someone chose', async () => {
    const conflict: Conflict = {
      currentVersion: 12,
      savedBy: 'J. Sato',
      savedAt: '2026-11-24T14:02:00Z',
      differences: [{ field: 'text', yours: 'mine', theirs: 'theirs' }],
    };
    const { autosave, sent } = begin([apiError('CHANGED_MEANWHILE', conflict), { version: 13 }]);
    autosave.change({ text: 'mine' });
    await autosave.flush();
    expect(autosave.state().status).toEqual({ kind: 'conflict', conflict });
    await autosave.flush();
    expect(sent).toHaveLength(1);
    await autosave.resolve({ text: 'both' });
    expect(sent[1]).toEqual({ text: 'both', version: 12 });
    expect(autosave.state().status.kind).toBe('saved');
  });

  it('brings back and sends what an earlier visit left, over the version of then', async () => {
    const store = memoryStore();
    await store.keep(KEY, { value: { text: 'from before the crash' }, version: 5, keptAtMs: 1 });
    const { autosave, sent } = begin([{ version: 8 }], store);
    await autosave.restore();
    expect(autosave.state().value.text).toBe('from before the crash');
    expect(sent).toEqual([{ text: 'from before the crash', version: 5 }]);
  });

  it('leaves a draft that no longer has the right shape alone', async () => {
    const store = memoryStore();
    await store.keep(KEY, { value: 42, version: 5, keptAtMs: 1 });
    const { autosave, sent } = begin([], store);
    await autosave.restore();
    expect(autosave.state().value.text).toBe('begun');
    expect(sent).toEqual([]);
  });

  it('tells when this device cannot keep a draft, and still sends it', async () => {
    const store = { ...memoryStore(), keep: async () => Promise.reject(new Error('the store is full')) };
    const { autosave, sent } = begin([{ version: 8 }], store);
    autosave.change({ text: 'only on the screen' });
    await settle();
    expect(autosave.state().isKept).toBe(false);
    await autosave.flush();
    expect(sent).toEqual([{ text: 'only on the screen', version: 7 }]);
  });

  it('takes what somebody else saved, and types on over their version', async () => {
    const { autosave, sent } = begin([{ version: 10 }]);
    expect(autosave.adopt({ value: { text: 'theirs' }, version: 9 })).toBe(true);
    expect(autosave.state().value.text).toBe('theirs');
    autosave.change({ text: 'theirs and mine' });
    await autosave.flush();
    expect(sent).toEqual([{ text: 'theirs and mine', version: 9 }]);
  });

  it('takes nothing over what is typed, on its way, waiting or in conflict', async () => {
    const theirs = { value: { text: 'theirs' }, version: 9 };
    const { autosave } = begin([new TypeError('offline')]);
    autosave.change({ text: 'mine' });
    expect(autosave.adopt(theirs)).toBe(false);
    const flushed = autosave.flush();
    expect(autosave.adopt(theirs)).toBe(false);
    await flushed;
    expect(autosave.adopt(theirs)).toBe(false);
    expect(autosave.state().value.text).toBe('mine');
  });

  it('sends nothing when nothing was changed', async () => {
    const { autosave, sent } = begin([]);
    await autosave.flush();
    expect(sent).toEqual([]);
  });
});
