/** Where a sheet stands: nothing on it, being drawn, or frozen under a revision. */
export type SheetState = 'empty' | 'draft' | 'issued';

/** One fact upstream that is no longer what this sheet was issued with. */
export type SheetChange = {
  /** The fact in the shop's words: "Opening, square to the way in". */
  readonly what: string;
  readonly before: string;
  readonly after: string;
  /** The sheet it comes from: "02 Survey". */
  readonly from: string;
};

export type IndexedSheet = {
  readonly number: number;
  readonly slug: string;
  readonly name: string;
  readonly href: string;
  readonly state: SheetState;
  /** What changed upstream since this sheet was issued; empty when nothing did. */
  readonly changes: readonly SheetChange[];
};

export const SHEET_STATE_WORDS: Readonly<Record<SheetState, string>> = {
  empty: 'not begun',
  draft: 'draft',
  issued: 'issued',
};

/** Sheets are numbered in two figures: 01, 11. */
export function sheetNumber(number: number): string {
  return String(number).padStart(2, '0');
}

/** The sheets before and after one in the set; null at the ends. */
export function neighbours(
  sheets: readonly IndexedSheet[],
  slug: string,
): { readonly before: IndexedSheet | null; readonly after: IndexedSheet | null } {
  const at = sheets.findIndex((sheet) => sheet.slug === slug);
  if (at < 0) return { before: null, after: null };
  return { before: sheets[at - 1] ?? null, after: sheets[at + 1] ?? null };
}
