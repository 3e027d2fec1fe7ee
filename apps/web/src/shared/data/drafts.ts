// Text that has not reached the server, kept on this device: it survives reload, crash and a lost connection.
// The key holds the person, so nobody sees or sends what another one left on a shared tablet.

import type { Dexie, EntityTable } from 'dexie';

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

type DraftDatabase = Dexie & { drafts: EntityTable<DraftRow, 'id'> };

const ownerOf = ({ userId, shopId }: Omit<DraftKey, 'document'>): string => `${userId} ${shopId}`;
const idOf = (key: DraftKey): string => `${ownerOf(key)} ${key.document}`;

let opened: Promise<DraftDatabase> | null = null;

/** The library is fetched when a draft is first looked for: no page waits for it. */
const database = (): Promise<DraftDatabase> => {
  opened ??= import('dexie').then(({ Dexie: Database }) => {
    // `stores` makes the table that the type names.
    const made = new Database('gusset-drafts') as DraftDatabase;
    made.version(1).stores({ drafts: 'id, owner' });
    return made;
  });
  return opened;
};

export const browserDrafts: DraftStore = {
  async read(key) {
    const row = await (await database()).drafts.get(idOf(key));
    return row ? { value: row.value, version: row.version, keptAtMs: row.keptAtMs } : null;
  },
  async keep(key, draft) {
    await (await database()).drafts.put({ ...draft, id: idOf(key), owner: ownerOf(key) });
  },
  async drop(key) {
    await (await database()).drafts.delete(idOf(key));
  },
};

/** How many documents of this person in this shop still have text to send. */
export async function countDrafts(owner: Omit<DraftKey, 'document'>): Promise<number> {
  return (await database()).drafts.where('owner').equals(ownerOf(owner)).count();
}
