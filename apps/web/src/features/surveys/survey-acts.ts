// What a person did at the car and the server may not know yet: readings set or taken back, photos. Kept on the device
// until it is answered, sent in order, each with a key of its own, so that a repeat takes effect once.

import type { Conflict } from '@gusset/contracts/errors';
import type { Reading, TakenReading } from '@gusset/contracts/survey';
import { isPassing, type ShownError } from '../../shared/data/shop-error.ts';

export type KeptReading = TakenReading & { readonly version: number };

type ActBase = {
  /** The key under which the server lets it take effect once. */
  readonly id: string;
  /** Person and shop: nobody sends another's acts from a shared tablet. */
  readonly owner: string;
  readonly surveyId: string;
  /** Rising: the order in which things were done. */
  readonly order: number;
  /** What the server had against it; null = not sent yet, or to be sent again. */
  readonly trouble: ActTrouble | null;
};

export type ActTrouble =
  | { readonly kind: 'conflict'; readonly conflict: Conflict }
  | { readonly kind: 'refused'; readonly message: string };

export type SetAct = ActBase & {
  readonly kind: 'set';
  readonly reading: Reading;
  /** Version of this reading that was on the screen; 0 = there was none. */
  readonly version: number;
  readonly takenAt: string;
};
export type RemoveAct = ActBase & { readonly kind: 'remove'; readonly key: string; readonly version: number };
export type PhotoAct = ActBase & {
  readonly kind: 'photo';
  readonly measurementKey: string | null;
  readonly photo: Blob;
  readonly name: string;
};
export type SurveyAct = SetAct | RemoveAct | PhotoAct;

/** Which dimension an act is about; photos change none. */
export function dimensionOf(act: SurveyAct): string | null {
  if (act.kind === 'set') return act.reading.key;
  return act.kind === 'remove' ? act.key : null;
}

/** The readings as this person sees them: the server's, with what they did since laid over. */
export function withActs(
  readings: readonly KeptReading[],
  acts: readonly SurveyAct[],
  person: string,
): readonly KeptReading[] {
  const shown = new Map(readings.map((reading) => [reading.key, reading]));
  for (const act of [...acts].sort((a, b) => a.order - b.order)) {
    if (act.kind === 'remove') shown.delete(act.key);
    if (act.kind === 'set') {
      const { reading, version, takenAt } = act;
      shown.set(reading.key, { ...reading, version, takenAt, takenBy: person });
    }
  }
  return [...shown.values()];
}

/** What the server answered: the reading's new version, for acts that were done on top of it. */
export type SendAnswer = { readonly versionOf: (key: string) => number };

export interface ActStore {
  all(owner: string): Promise<readonly SurveyAct[]>;
  put(act: SurveyAct): Promise<void>;
  drop(id: string): Promise<void>;
}

export type SenderOptions = {
  readonly owner: string;
  readonly store: ActStore;
  /** Sends one act; throws what `shown` can read. */
  readonly send: (act: SurveyAct) => Promise<SendAnswer>;
  readonly shown: (error: unknown) => ShownError;
  /** Versions that this device's own acts got, by survey and dimension; kept from one sending to the next. */
  readonly known: Map<string, number>;
};

/** `stopped` = the server was not reached: ask again later. */
export type SendOutcome = 'all-sent' | 'stopped';

/**
 * Sends what waits, oldest first. Acts that the server takes exception to stay, with the reason, and later ones at the
 * same dimension wait behind them; everything else goes on.
 */
export async function sendWaiting({ owner, store, send, shown, known }: SenderOptions): Promise<SendOutcome> {
  const blocked = new Set<string>();
  const waiting = [...(await store.all(owner))].sort((a, b) => a.order - b.order);
  for (const kept of waiting) {
    const key = dimensionOf(kept);
    const place = key === null ? kept.id : `${kept.surveyId} ${key}`;
    if (kept.trouble !== null) blocked.add(place);
    if (blocked.has(place)) continue;
    const act = key === null ? kept : onTopOf(kept, known.get(place));
    try {
      const { versionOf } = await send(act);
      if (key !== null) known.set(place, versionOf(key));
      await store.drop(act.id);
    } catch (error) {
      const trouble = troubleOf(shown(error));
      if (trouble === null) return 'stopped';
      blocked.add(place);
      await store.put({ ...act, trouble });
    }
  }
  return 'all-sent';
}

/** Done on top of an act of this device that was still on its way: it goes over the version that one got. */
function onTopOf(act: SurveyAct, version: number | undefined): SurveyAct {
  if (version === undefined || act.kind === 'photo') return act;
  return { ...act, version: Math.max(act.version, version) };
}

function troubleOf(error: ShownError): ActTrouble | null {
  if (error.code === 'CHANGED_MEANWHILE' && error.conflict !== null) {
    return { kind: 'conflict', conflict: error.conflict };
  }
  // Signed out: signing in again lets it go through.
  if (isPassing(error) || error.code === 'SIGN_IN_FIRST' || error.code === 'TOO_MANY') return null;
  return { kind: 'refused', message: error.message };
}

/** "Offline, 3 to send" */
export function sendWords(count: number, isOnline: boolean, isStopped: boolean): string | null {
  if (!isOnline) return count === 0 ? 'Offline' : `Offline, ${count} to send`;
  if (count === 0) return null;
  return isStopped ? `${count} to send, will try again` : `Sending ${count}`;
}
