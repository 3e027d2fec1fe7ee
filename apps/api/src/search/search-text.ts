// What somebody typed into the search box, made ready for the database.

export type SearchText = {
  /** Lower case, one space between words. */
  readonly text: string;
  /** One pattern a word: all must be found, in any order. */
  readonly patterns: readonly string[];
  /** Begins with the whole text. */
  readonly prefix: string;
  /** Letters and digits only, as plates are compared; empty where none is left. */
  readonly plate: string;
  /** The job number that was typed; null where it is none. */
  readonly number: number | null;
};

/** More words than any name has; the rest is not looked for. */
const MOST_WORDS = 6;

export function searchText(typed: string): SearchText | null {
  const text = typed.normalize('NFC').toLowerCase().replace(/\s+/gu, ' ').trim();
  if (text === '') return null;
  return {
    text,
    patterns: text
      .split(' ')
      .slice(0, MOST_WORDS)
      .map((word) => `%${likeLiteral(word)}%`),
    prefix: `${likeLiteral(text)}%`,
    plate: text.replace(/[^\p{L}\p{N}]/gu, ''),
    number: /^#?\d{1,9}$/.test(text) ? Number(text.replace('#', '')) : null,
  };
}

/** So that % and _ are looked for as they are. */
function likeLiteral(text: string): string {
  return text.replace(/[\\%_]/g, (sign) => `\\${sign}`);
}
