import type { ReactNode } from 'react';

/** What a column sorts by; null sorts last, whichever way. */
export type SortValue = string | number | null;

export type DataColumn<Row> = {
  readonly id: string;
  readonly header: string;
  readonly cell: (row: Row) => ReactNode;
  /** Given where the column can be sorted. */
  readonly sortBy?: (row: Row) => SortValue;
  /** Share of the width, as a grid track: "2fr", "120px". */
  readonly width?: string;
  /** Figures are set in the tabular face, at the end of the cell. */
  readonly isFigures?: boolean;
  /** Place on a phone's card. Three fields matter there; the rest stays on the record. */
  readonly onCard?: 'title' | 'line' | 'side' | 'left-out';
};

export type FilterChip<Row> = {
  readonly id: string;
  readonly label: string;
  readonly test: (row: Row) => boolean;
};

export type ListState<Row> =
  | { readonly kind: 'loading' }
  | {
      readonly kind: 'error';
      readonly message: string;
      readonly referenceId: string | null;
      readonly onRetry: () => void;
    }
  /** Not this person's to see; says whose it is. */
  | { readonly kind: 'forbidden'; readonly message: string }
  /** `asOf`: when the rows are from, where they aren't current: "today 11:20". */
  | { readonly kind: 'ready'; readonly rows: readonly Row[]; readonly asOf: string | null };
