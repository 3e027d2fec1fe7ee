// Which rows a list shows, and where a key press moves in it. Pure.

import type { FilterChip, SortValue } from './data-column.ts';

export type RowChoice<Row> = {
  readonly rows: readonly Row[];
  readonly searchText: string;
  /** All words a row is found by. */
  readonly wordsOf: (row: Row) => string;
  /** Chips that are on; a row must pass every one. */
  readonly chips: readonly FilterChip<Row>[];
};

/** Accents and case don't count when looking for something: "bello" finds "Béllo". */
export function foldWords(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLocaleLowerCase();
}

export function visibleRows<Row>({ rows, searchText, wordsOf, chips }: RowChoice<Row>): readonly Row[] {
  const wanted = foldWords(searchText).split(/\s+/u).filter(Boolean);
  if (wanted.length === 0 && chips.length === 0) return rows;
  return rows.filter((row) => {
    const words = foldWords(wordsOf(row));
    return chips.every((chip) => chip.test(row)) && wanted.every((word) => words.includes(word));
  });
}

const collator = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** Ascending. Nulls are handled by the caller, which puts them last both ways. */
export function compareSortValues(a: SortValue, b: SortValue): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  return collator.compare(String(a), String(b));
}

/** Rows a PageUp or PageDown passes over. */
const PAGE_ROWS = 10;

/** The row a key moves to from row `at` of `count`; null when the key doesn't move. */
export function rowAfterKey(key: string, at: number, count: number): number | null {
  if (count === 0) return null;
  const moves: Readonly<Record<string, number>> = {
    ArrowDown: at + 1,
    ArrowUp: at - 1,
    PageDown: at + PAGE_ROWS,
    PageUp: at - PAGE_ROWS,
    Home: 0,
    End: count - 1,
  };
  const to = moves[key];
  return to === undefined ? null : Math.max(0, Math.min(count - 1, to));
}

/** "24 jobs", "3 of 24 jobs", "1 job". */
export function countWords(
  shown: number,
  all: number,
  noun: { readonly one: string; readonly many: string },
): string {
  const word = all === 1 ? noun.one : noun.many;
  return shown === all ? `${all} ${word}` : `${shown} of ${all} ${word}`;
}
