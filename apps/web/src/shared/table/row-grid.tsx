'use client';

import type { RowData } from '@tanstack/react-table';
import Link from 'next/link';
import type { KeyboardEvent, MouseEvent } from 'react';
import { classNames } from '../controls/class-names.ts';
import type { DataColumn } from './data-column.ts';
import styles from './row-grid.module.css';
import { useRowWindow } from './use-row-window.ts';
import { useSortedRows } from './use-sorted-rows.ts';
import { rowAfterKey } from './visible-rows.ts';

export type RowGridProps<Row extends RowData> = {
  readonly label: string;
  readonly rows: readonly Row[];
  readonly columns: readonly DataColumn<Row>[];
  readonly rowId: (row: Row) => string;
  readonly rowName: (row: Row) => string;
  readonly hrefOf: ((row: Row) => string) | null;
  readonly onOpen: ((row: Row) => void) | null;
  readonly initialSort?: { readonly columnId: string; readonly isDescending: boolean };
};

/**
 * An APG grid moved through by row: arrows, Page keys, Home and End move, Enter opens. Only the rows in sight
 * are in the page; the window scrolls, so the header sticks under the strip.
 */
export function RowGrid<Row extends RowData>({
  label,
  rows,
  columns,
  rowId,
  rowName,
  hrefOf,
  onOpen,
  initialSort,
}: RowGridProps<Row>) {
  const { sorted, headers } = useSortedRows({ rows, columns, rowId, initialSort });
  const { bodyRef, places, heightPx, measure, activeRow, setActive, moveTo } = useRowWindow(sorted.length);

  const onKeyDown = (event: KeyboardEvent<HTMLTableElement>): void => {
    // Buttons and links inside a row keep their own keys.
    if (!(event.target instanceof HTMLTableRowElement)) return;
    const to = rowAfterKey(event.key, activeRow, sorted.length);
    if (to !== null) {
      event.preventDefault();
      moveTo(to);
      return;
    }
    const row = sorted[activeRow]?.original;
    if (event.key === 'Enter' && row !== undefined && onOpen) {
      event.preventDefault();
      onOpen(row);
    }
  };

  const onRowClick = (event: MouseEvent<HTMLElement>, row: Row): void => {
    // Links and buttons in a cell act by themselves; a selection of text is not a click.
    if ((event.target as HTMLElement).closest('a, button, input, label')) return;
    if (window.getSelection()?.toString()) return;
    onOpen?.(row);
  };

  const tracks = columns.map(({ width }) => width ?? 'minmax(0, 1fr)').join(' ');
  return (
    <table
      // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: APG's data grid, on a real table for paper and readers.
      role="grid"
      aria-label={label}
      aria-rowcount={sorted.length + 1}
      className={styles.grid}
      style={{ '--tracks': tracks } as React.CSSProperties}
      onKeyDown={onKeyDown}
    >
      <thead className={styles.heads}>
        <tr aria-rowindex={1} className={styles.row}>
          {headers.map((header, at) => (
            <HeadCell
              key={header.id}
              words={columns[at]?.header ?? ''}
              isFigures={columns[at]?.isFigures ?? false}
              direction={header.column.getCanSort() ? header.column.getIsSorted() : null}
              onSort={(isDescending) => header.column.toggleSorting(isDescending)}
            />
          ))}
        </tr>
      </thead>
      <tbody
        ref={bodyRef}
        className={styles.body}
        style={heightPx === null ? undefined : { blockSize: heightPx }}
      >
        {places.map(({ index, startPx }) => {
          const row = sorted[index];
          if (!row) return null;
          return (
            <tr
              key={row.id}
              ref={startPx === null ? undefined : measure}
              aria-rowindex={index + 2}
              aria-label={rowName(row.original)}
              data-index={index}
              tabIndex={index === activeRow ? 0 : -1}
              className={classNames(styles.row, styles.line, onOpen && styles.opens)}
              style={startPx === null ? undefined : { transform: `translateY(${startPx}px)` }}
              onFocus={() => setActive(index)}
              onClick={(event) => onRowClick(event, row.original)}
            >
              {columns.map((column, at) => (
                <td key={column.id} className={classNames(styles.cell, column.isFigures && styles.figures)}>
                  {at === 0 && hrefOf ? (
                    <Link prefetch={false} href={hrefOf(row.original)} tabIndex={-1} className={styles.link}>
                      {column.cell(row.original)}
                    </Link>
                  ) : (
                    column.cell(row.original)
                  )}
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

type HeadCellProps = {
  readonly words: string;
  readonly isFigures: boolean;
  /** Null where the column can't be sorted, false where it isn't. */
  readonly direction: 'asc' | 'desc' | false | null;
  readonly onSort: (isDescending: boolean) => void;
};

function HeadCell({ words, isFigures, direction, onSort }: HeadCellProps) {
  const sorted = direction === 'asc' ? 'ascending' : direction === 'desc' ? 'descending' : undefined;
  return (
    <th scope="col" aria-sort={sorted} className={classNames(styles.headCell, isFigures && styles.figures)}>
      {direction === null ? (
        words
      ) : (
        <button type="button" className={styles.sort} onClick={() => onSort(direction === 'asc')}>
          {words}
          <span className={styles.direction} data-direction={direction || 'none'} aria-hidden="true" />
        </button>
      )}
    </th>
  );
}
