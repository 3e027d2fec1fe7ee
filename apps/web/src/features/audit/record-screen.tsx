'use client';

import { formatInstant } from '@gusset/units';
import { useInfiniteQuery } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { SearchBox } from '../../shared/controls/search-box.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { actWords, changeLines } from './change-lines.ts';
import styles from './record-screen.module.css';

type Entry = ApiOutputs['audit']['list']['rows'][number];

const PAGE = 50;

/** Who did what and when, each entry chained to the one before; nobody can take one back. */
export function RecordScreen({ above }: { readonly above: ReactNode }) {
  const client = useTRPCClient();
  const { shop } = useDisplay();
  const [search, setSearch] = useState('');
  const query = useInfiniteQuery({
    queryKey: ['record-of-changes', search],
    queryFn: ({ pageParam }) => client.audit.list.query({ limit: PAGE, beforeSeq: pageParam, search }),
    initialPageParam: null as number | null, // from the newest entry
    getNextPageParam: ({ nextBeforeSeq }) => nextBeforeSeq,
  });
  const rows = query.data?.pages.flatMap((page) => page.rows) ?? [];
  return (
    <Page>
      <PageHeader kicker="Shop" title="Record of changes" />
      {above}
      <SheetFrame
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 3 },
          { caption: 'Sheet', value: 'Record of changes', span: 2 },
          { caption: 'Newest entry', value: rows[0]?.seq ?? '–', isFigures: true },
        ]}
      >
        <div className={styles.page}>
          <div>
            <SearchBox label="Search by name or act" value={search} onChange={setSearch} />
          </div>
          {query.isPending ? <Skeleton lines={6} what="Fetching the record" /> : null}
          {query.isError ? (
            <Verdict tone="fail" words={shownError(query.error).message}>
              <Button onPress={() => void query.refetch()}>Try again</Button>
            </Verdict>
          ) : null}
          {query.isSuccess && rows.length === 0 ? <p>No entry like that.</p> : null}
          <ol className={styles.entries}>
            {rows.map((entry) => (
              <EntryLine key={entry.seq} entry={entry} />
            ))}
          </ol>
          {query.hasNextPage ? (
            <div>
              <Button onPress={() => void query.fetchNextPage()} isPending={query.isFetchingNextPage}>
                Older entries
              </Button>
            </div>
          ) : null}
        </div>
      </SheetFrame>
    </Page>
  );
}

function EntryLine({ entry }: { readonly entry: Entry }) {
  const { shop } = useDisplay();
  const lines = changeLines(entry.before, entry.after);
  return (
    <li className={styles.entry}>
      <span className={styles.seq}>{entry.seq}</span>
      <time dateTime={entry.at} className={styles.time}>
        {formatInstant(entry.at, { zone: shop.timeZone, locale: shop.locale })}
      </time>
      <span className={styles.who}>{entry.actorName}</span>
      <div className={styles.what}>
        <span>{actWords(entry.act)}</span>
        {lines.length > 0 ? (
          <details>
            <summary>{lines.length === 1 ? '1 value' : `${lines.length} values`}</summary>
            <table className={styles.values}>
              <thead>
                <tr>
                  <th scope="col">What</th>
                  <th scope="col">Was</th>
                  <th scope="col">Is</th>
                </tr>
              </thead>
              <tbody>
                {lines.map(({ path, before, after }) => (
                  <tr key={path}>
                    <th scope="row">{path}</th>
                    <td>{before}</td>
                    <td>{after}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
        ) : null}
      </div>
    </li>
  );
}
