'use client';

import type { RowData } from '@tanstack/react-table';
import { useRouter } from 'next/navigation';
import { type ReactNode, useMemo, useState } from 'react';
import { Button } from '../controls/button.tsx';
import { SearchBox } from '../controls/search-box.tsx';
import { EmptyState } from '../marks/empty-state.tsx';
import { Skeleton } from '../marks/skeleton.tsx';
import { Verdict } from '../marks/verdict.tsx';
import { useOnline } from '../shell/online.tsx';
import { PHONE_WIDTH, useMediaQuery } from '../shell/use-media-query.ts';
import type { DataColumn, FilterChip, ListState } from './data-column.ts';
import styles from './data-table.module.css';
import { FilterChips } from './filter-chips.tsx';
import { RowCards } from './row-cards.tsx';
import { RowGrid } from './row-grid.tsx';
import { countWords, visibleRows } from './visible-rows.ts';

export type DataTableProps<Row extends RowData> = {
  /** "Jobs": names the table and its search. */
  readonly label: string;
  readonly noun: { readonly one: string; readonly many: string };
  readonly state: ListState<Row>;
  /** Stable between renders, as are `chips`. */
  readonly columns: readonly DataColumn<Row>[];
  readonly rowId: (row: Row) => string;
  /** What the row is called, for the screen reader: "Job 2417, Halden Brisk". */
  readonly rowName: (row: Row) => string;
  /** Where a row leads; null where it leads nowhere. */
  readonly hrefOf: ((row: Row) => string) | null;
  readonly wordsOf: (row: Row) => string;
  readonly chips?: readonly FilterChip<Row>[];
  readonly initialSort?: { readonly columnId: string; readonly isDescending: boolean };
  /** Shown when there are no rows at all: what the list is and the one next act. */
  readonly empty: { readonly title: string; readonly text: string; readonly act?: ReactNode };
};

/** A list of records: search, filter chips, sort, keyboard rows, every state; cards on phones. */
export function DataTable<Row extends RowData>(props: DataTableProps<Row>) {
  const { state, label } = props;
  if (state.kind === 'loading') return <Skeleton lines={6} what={`Fetching ${label.toLowerCase()}`} />;
  if (state.kind === 'forbidden') return <Verdict tone="note" words={state.message} />;
  if (state.kind === 'error') {
    return (
      <Verdict tone="fail" words={state.message}>
        <Button onPress={state.onRetry}>Try again</Button>
        {state.referenceId ? <p className={styles.reference}>Reference {state.referenceId}</p> : null}
      </Verdict>
    );
  }
  return <ReadyTable {...props} rows={state.rows} asOf={state.asOf} />;
}

type ReadyTableProps<Row extends RowData> = DataTableProps<Row> & {
  readonly rows: readonly Row[];
  readonly asOf: string | null;
};

const NO_CHIPS: readonly never[] = [];

function ReadyTable<Row extends RowData>(props: ReadyTableProps<Row>) {
  const { rows, asOf, label, noun, columns, rowId, hrefOf, wordsOf, chips = NO_CHIPS, empty } = props;
  const router = useRouter();
  const isOnline = useOnline();
  const isPhone = useMediaQuery(PHONE_WIDTH);
  const [searchText, setSearchText] = useState('');
  const [chipsOn, setChipsOn] = useState<ReadonlySet<string>>(new Set());

  const shown = useMemo(
    () => visibleRows({ rows, searchText, wordsOf, chips: chips.filter(({ id }) => chipsOn.has(id)) }),
    [rows, searchText, wordsOf, chips, chipsOn],
  );
  const clear = () => {
    setSearchText('');
    setChipsOn(new Set());
  };
  const open = (row: Row) => {
    if (hrefOf) router.push(hrefOf(row));
  };

  if (rows.length === 0) {
    return (
      <EmptyState title={empty.title} act={empty.act}>
        {empty.text}
      </EmptyState>
    );
  }
  return (
    <div className={styles.table}>
      <div className={styles.bar} data-screen-only="">
        <SearchBox label={`Search ${label.toLowerCase()}`} value={searchText} onChange={setSearchText} />
        {chips.length > 0 ? (
          <FilterChips label={`Show ${noun.many}`} chips={chips} on={chipsOn} onChange={setChipsOn} />
        ) : null}
        <p className={styles.count} role="status">
          {countWords(shown.length, rows.length, noun)}
          {isOnline || asOf ? '' : ' · offline'}
          {asOf ? ` · as of ${asOf}${isOnline ? '' : ', offline'}` : ''}
        </p>
      </div>
      {shown.length === 0 ? (
        <EmptyState
          title={`No ${noun.many} like that`}
          act={<Button onPress={clear}>Clear search and filters</Button>}
        >
          {`None of the ${rows.length} ${noun.many} matches what is typed and chosen above.`}
        </EmptyState>
      ) : isPhone ? (
        <RowCards rows={shown} columns={columns} rowId={rowId} hrefOf={hrefOf} label={label} />
      ) : (
        <RowGrid {...props} rows={shown} onOpen={hrefOf ? open : null} />
      )}
    </div>
  );
}
