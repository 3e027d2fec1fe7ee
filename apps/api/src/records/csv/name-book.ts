// Other records that a row names: a person types the name, the row keeps the id.
import type { CellReading, CsvCell } from './csv-cell.ts';

export type NameBook = {
  /** The name where it is the only one of its kind, else the id: what an export writes can be read again. */
  readonly nameOf: (id: string) => string;
  readonly idOf: (typed: string) => CellReading;
};

export function nameBook(what: string, entries: readonly { id: string; name: string }[]): NameBook {
  const keyOf = (name: string) => name.trim().toLocaleLowerCase().replace(/\s+/gu, ' ');
  const byName = Map.groupBy(entries, ({ name }) => keyOf(name));
  const byId = new Map(entries.map(({ id, name }) => [id, name]));
  return {
    nameOf(id) {
      const name = byId.get(id);
      return name !== undefined && byName.get(keyOf(name))?.length === 1 ? name : id;
    },
    idOf(typed) {
      if (byId.has(typed)) return { value: typed };
      const found = byName.get(keyOf(typed)) ?? [];
      const [only, another] = found;
      if (only === undefined) return { why: `There is no ${what} named “${typed}” here. Add it first.` };
      if (another !== undefined) {
        return { why: `There are ${found.length} named “${typed}”. Rename one, or give the id.` };
      }
      return { value: only.id };
    },
  };
}

export function named(book: NameBook): CsvCell {
  return {
    units: [],
    write: (value) => (typeof value === 'string' ? book.nameOf(value) : ''),
    read: (typed) => book.idOf(typed),
  };
}
