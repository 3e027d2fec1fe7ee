import type { SheetChange, SheetKind } from '@gusset/contracts/sheet';

/** Where a sheet stands: nothing on it, being drawn, or frozen under a revision. */
export type SheetState = 'empty' | 'draft' | 'issued';

/** One line of the index, as the API gives it, with its address. */
export type IndexedSheet = {
  readonly kind: SheetKind;
  /** `04`: stands on the index and in the title block. */
  readonly number: string;
  readonly title: string;
  readonly mark: SheetState;
  readonly href: string;
  /** What changed upstream since this sheet was issued; empty when nothing did. */
  readonly changes: readonly SheetChange[];
};

export const SHEET_STATE_WORDS: Readonly<Record<SheetState, string>> = {
  empty: 'not begun',
  draft: 'draft',
  issued: 'issued',
};

/** The sheets before and after one in the set; null at the ends. */
export function neighbours(
  sheets: readonly IndexedSheet[],
  kind: SheetKind,
): { readonly before: IndexedSheet | null; readonly after: IndexedSheet | null } {
  const at = sheets.findIndex((sheet) => sheet.kind === kind);
  if (at < 0) return { before: null, after: null };
  return { before: sheets[at - 1] ?? null, after: sheets[at + 1] ?? null };
}
