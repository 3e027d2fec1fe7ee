'use client';

import {
  type ColumnDef,
  createSortedRowModel,
  type RowData,
  rowSortingFeature,
  tableFeatures,
  useTable,
} from '@tanstack/react-table';
import { useMemo } from 'react';
import type { DataColumn } from './data-column.ts';
import { compareSortValues } from './visible-rows.ts';

const features = tableFeatures({ rowSortingFeature, sortedRowModel: createSortedRowModel() });

export type SortedRowsOptions<Row extends RowData> = {
  readonly rows: readonly Row[];
  readonly columns: readonly DataColumn<Row>[];
  readonly rowId: (row: Row) => string;
  readonly initialSort?: { readonly columnId: string; readonly isDescending: boolean };
};

const columnDefs = <Row extends RowData>(
  columns: readonly DataColumn<Row>[],
): ColumnDef<typeof features, Row>[] =>
  columns.map((column) => ({
    id: column.id,
    header: column.header,
    // Undefined sorts last both ways; that is where "nothing" belongs.
    accessorFn: (row: Row) => column.sortBy?.(row) ?? undefined,
    enableSorting: column.sortBy !== undefined,
    sortUndefined: 'last',
    sortFn: (a, b, id) => compareSortValues(a.getValue(id), b.getValue(id)),
  }));

/** The table's model: rows in the order chosen, headers with their direction. */
export function useSortedRows<Row extends RowData>({
  rows,
  columns,
  rowId,
  initialSort,
}: SortedRowsOptions<Row>) {
  const defs = useMemo(() => columnDefs(columns), [columns]);
  const table = useTable({
    features,
    columns: defs,
    data: rows,
    getRowId: rowId,
    enableSortingRemoval: false,
    initialState: {
      sorting: initialSort ? [{ id: initialSort.columnId, desc: initialSort.isDescending }] : [],
    },
  });
  return { sorted: table.getRowModel().rows, headers: table.getFlatHeaders() };
}
