import { describe, expect, it } from 'vitest';
import type { ShownError } from '../../shared/data/shop-error.ts';
import {
  type ActStore,
  type KeptReading,
  type SetAct,
  type SurveyAct,
  sendWaiting,
  sendWords,
  withActs,
} from './survey-acts.ts';

const OWNER = 'tomas quarry-road';
const takenAt = '2026-11-24T09:30:00.000Z';

function act(order: number, key: string, value: number, version = 0): SetAct {
  const reading = { key, value, typed: String(value), plusMinus: 3, method: 'tape' } as const;
  return {
    kind: 'set',
    id: `act-${order}`,
    owner: OWNER,
    surveyId: 's',
    order,
    trouble: null,
    reading,
    version,
    takenAt,
  };
}

function storeWith(...acts: readonly SurveyAct[]): ActStore & { readonly kept: Map<string, SurveyAct> } {
  const kept = new Map(acts.map((each) => [each.id, each]));
  return {
    kept,
    all: async (owner) => [...kept.values()].filter((each) => each.owner === owner),
    put: async (each) => {
      kept.set(each.id, each);
    },
    drop: async (id) => {
      kept.delete(id);
    },
  };
}

const failure = (code: ShownError['code']): ShownError => ({
  code,
  message: code,
  fields: [],
  referenceId: null,
  conflict:
    code === 'CHANGED_MEANWHILE'
      ? { currentVersion: 4, savedBy: 'Mira Ilves', savedAt: takenAt, differences: [] }
      : null,
});

class Refused extends Error {
  readonly shown: ShownError;
  constructor(code: ShownError['code']) {
    super(code);
    this.shown = failure(code);
  }
}
const shown = (error: unknown) => (error instanceof Refused ? error.shown : failure('UNEXPECTED'));

function sender(store: ActStore, answer: (act: SurveyAct) => number) {
  const sent: SurveyAct[] = [];
  const send = async (each: SurveyAct) => {
    const version = answer(each);
    sent.push(each);
    return { versionOf: () => version };
  };
  const known = new Map<string, number>();
  return { sent, run: () => sendWaiting({ owner: OWNER, store, send, shown, known }) };
}

describe('sendWaiting', () => {
  it('sends in the order in which things were done and keeps nothing', async () => {
    const store = storeWith(act(2, 'opening', 597), act(1, 'floorDepth', 812));
    const { sent, run } = sender(store, () => 1);
    expect(await run()).toBe('all-sent');
    expect(sent.map(({ order }) => order)).toEqual([1, 2]);
    expect(store.kept.size).toBe(0);
  });

  it('puts a second reading of a letter on top of the version that the first one got', async () => {
    const store = storeWith(act(1, 'opening', 597), act(2, 'opening', 596));
    const { sent, run } = sender(store, () => 7);
    await run();
    expect(sent.map((each) => (each.kind === 'set' ? each.version : null))).toEqual([0, 7]);
  });

  it('does the same when the second was made while the first was on its way', async () => {
    const store = storeWith(act(1, 'opening', 597));
    const { sent, run } = sender(store, () => 7);
    await run();
    await store.put(act(2, 'opening', 596));
    await run();
    expect(sent.map((each) => (each.kind === 'set' ? each.version : null))).toEqual([0, 7]);
  });

  it('stops where the server is not reached, and sends the same key again later', async () => {
    const store = storeWith(act(1, 'floorDepth', 812), act(2, 'opening', 597));
    let isReached = false;
    const { sent, run } = sender(store, () => {
      if (!isReached) throw new Refused('NO_ANSWER');
      return 1;
    });
    expect(await run()).toBe('stopped');
    expect(store.kept.size).toBe(2);
    isReached = true;
    await run();
    expect(sent.map(({ id }) => id)).toEqual(['act-1', 'act-2']);
  });

  it('keeps a conflict with both values, holds later readings of that letter, and sends the others', async () => {
    const store = storeWith(act(1, 'opening', 597), act(2, 'opening', 596), act(3, 'floorDepth', 812));
    const { sent, run } = sender(store, (each) => {
      if (each.id === 'act-1') throw new Refused('CHANGED_MEANWHILE');
      return 1;
    });
    expect(await run()).toBe('all-sent');
    expect(sent.map(({ id }) => id)).toEqual(['act-3']);
    expect(store.kept.get('act-1')?.trouble).toMatchObject({
      kind: 'conflict',
      conflict: { currentVersion: 4 },
    });
    await run();
    expect([...store.kept.keys()]).toEqual(['act-1', 'act-2']);
  });

  it('leaves alone what another person left on this device', async () => {
    const store = storeWith({ ...act(1, 'opening', 597), owner: 'mira quarry-road' });
    const { sent, run } = sender(store, () => 1);
    await run();
    expect([sent.length, store.kept.size]).toEqual([0, 1]);
  });
});

describe('withActs', () => {
  const kept = (key: string, value: number): KeptReading => {
    const { reading } = act(0, key, value);
    return { ...reading, takenBy: 'Mira Ilves', takenAt, version: 2 };
  };
  it('lays what was done over what the server knows', () => {
    const remove: SurveyAct = {
      kind: 'remove',
      id: 'r',
      owner: OWNER,
      surveyId: 's',
      order: 5,
      trouble: null,
      key: 'floorDepth',
      version: 2,
    };
    const seen = withActs(
      [kept('floorDepth', 800), kept('opening', 600)],
      [remove, act(1, 'opening', 597, 2)],
      'Tomas',
    );
    expect(seen.map(({ key, value, takenBy }) => [key, value, takenBy])).toEqual([['opening', 597, 'Tomas']]);
  });
});

describe('sendWords', () => {
  it('counts what waits', () => {
    expect(sendWords(3, false, false)).toBe('Offline, 3 to send');
    expect(sendWords(0, true, false)).toBeNull();
    expect(sendWords(1, true, true)).toBe('1 to send, will try again');
  });
});
