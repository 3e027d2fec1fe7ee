'use client';

import { type UseQueryResult, useQuery } from '@tanstack/react-query';

export type ListAnswer<Row> = { readonly rows: readonly Row[]; readonly total: number };

/** As many as one answer of the API holds. */
const PAGE = 200;
/** A list that is longer is found by searching; the screen says how many it shows. */
const MOST_ROWS = 2_000;

export const wholeListKey = (name: string) => ['whole-list', name] as const;

/** A list page by page until it is whole, so that sorting and searching it need no server. */
export function useWholeList<Row>(
  name: string,
  archived: boolean,
  page: (ask: { limit: number; offset: number; archived: boolean }) => Promise<ListAnswer<Row>>,
): UseQueryResult<readonly Row[], unknown> {
  return useQuery({
    queryKey: [...wholeListKey(name), archived],
    queryFn: async (): Promise<readonly Row[]> => {
      const rows: Row[] = [];
      for (;;) {
        const answer = await page({ limit: PAGE, offset: rows.length, archived });
        rows.push(...answer.rows);
        if (answer.rows.length < PAGE || rows.length >= Math.min(answer.total, MOST_ROWS)) return rows;
      }
    },
  });
}
