import type { UseQueryResult } from '@tanstack/react-query';
import type { ListState } from '../table/data-column.ts';
import { shownError } from './shop-error.ts';

/** A query's result as a DataTable takes it. `asOfOf` words the time of rows that could not be refreshed. */
export function listState<Row>(
  query: UseQueryResult<readonly Row[], unknown>,
  asOfOf: (updatedAtMs: number) => string,
): ListState<Row> {
  if (query.data !== undefined) {
    const isOld = query.isError || query.fetchStatus === 'paused';
    return { kind: 'ready', rows: query.data, asOf: isOld ? asOfOf(query.dataUpdatedAt) : null };
  }
  if (!query.isError) return { kind: 'loading' };
  const { code, message, referenceId } = shownError(query.error);
  if (code === 'NOT_ALLOWED') return { kind: 'forbidden', message };
  return { kind: 'error', message, referenceId, onRetry: () => void query.refetch() };
}
