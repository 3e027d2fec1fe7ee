// The device's own store of acts that wait (IndexedDB): they survive reload, crash and a day without a signal.

import Dexie, { type EntityTable, liveQuery } from 'dexie';
import type { ActStore, SurveyAct } from './survey-acts.ts';

class ActDatabase extends Dexie {
  declare acts: EntityTable<SurveyAct, 'id'>;

  constructor() {
    super('gusset-surveys');
    this.version(1).stores({ acts: 'id, owner, order' });
  }
}

let opened: ActDatabase | null = null;
const database = (): ActDatabase => {
  opened ??= new ActDatabase();
  return opened;
};

export const browserActs: ActStore = {
  all: (owner) => database().acts.where('owner').equals(owner).toArray(),
  async put(act) {
    await database().acts.put(act);
  },
  async drop(id) {
    await database().acts.delete(id);
  },
};

/** Tells of every change of what waits, also from another tab. Answers how to stop. */
export function watchActs(
  owner: string,
  onChange: (acts: readonly SurveyAct[]) => void,
  onFault: (error: unknown) => void,
): () => void {
  const watching = liveQuery(() => browserActs.all(owner)).subscribe({ next: onChange, error: onFault });
  return () => watching.unsubscribe();
}
