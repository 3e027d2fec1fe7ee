// Text that has not reached the server, kept on this device: it survives reload, crash and a lost connection.
// The key holds the person, so nobody sees or sends what another one left on a shared tablet.

import Dexie, { type EntityTable } from 'dexie';

export type DraftKey = { readonly userId: string; readonly shopId: string; readonly document: string };

export type Draft = {
  readonly value: unknown;
  /** The version on the server that the text was typed over. */
  readonly version: number;
  /** Milliseconds since 1970, this device's clock. */
  readonly keptAtMs: number;
};

/** The seam between autosave and the browser's store. */
export interface DraftStore {
  read(key: DraftKey): Promise<Draft | null>;
  keep(key: DraftKey, draft: Draft): Promise<void>;
  drop(key: DraftKey): Promise<void>;
}

type DraftRow = Draft & { readonly id: string; readonly owner: string };

class DraftDatabase extends Dexie {
  declare drafts: EntityTable<DraftRow, 'id'>;

  constructor() {
    super('gusset-drafts');
    this.version(1).stores({ drafts: 'id, owner' });
  }
}

const ownerOf = ({ userId, shopId }: Omit<DraftKey, 'document'>): string => `${userId} ${shopId}`;
const idOf = (key: DraftKey): string => `${ownerOf(key)} ${key.document}`;

let opened: DraftDatabase | null = null;
const database = (): DraftDatabase => {
  opened ??= new DraftDatabase();
  return opened;
};

export const browserDrafts: DraftStore = {
  async read(key) {
    const row = await database().drafts.get(idOf(key));
    return row ? { value: row.value, version: row.version, keptAtMs: row.keptAtMs } : null;
  },
  async keep(key, draft) {
    await database().drafts.put({ ...draft, id: idOf(key), owner: ownerOf(key) });
  },
  async drop(key) {
    await database().drafts.delete(idOf(key));
  },
};

/** How many documents of this person in this shop still have text to send. */
export function countDrafts(owner: Omit<DraftKey, 'document'>): Promise<number> {
  return database().drafts.where('owner').equals(ownerOf(owner)).count();
}
