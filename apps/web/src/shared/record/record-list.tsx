'use client';

import type { RowData } from '@tanstack/react-table';
import type { ReactNode } from 'react';
import { LinkButton } from '../controls/link-button.tsx';
import { Switch } from '../controls/switch.tsx';
import { listState } from '../data/list-state.ts';
import { useDisplay } from '../shell/display-provider.tsx';
import { Page } from '../shell/page.tsx';
import { PageHeader } from '../shell/page-header.tsx';
import { DataTable, type DataTableProps } from '../table/data-table.tsx';
import { type ListAnswer, useWholeList } from './use-whole-list.ts';

export type RecordListProps<Row extends RowData> = Omit<DataTableProps<Row>, 'state' | 'empty'> & {
  readonly title: string;
  readonly kicker?: ReactNode;
  readonly listName: string;
  readonly page: (ask: { limit: number; offset: number; archived: boolean }) => Promise<ListAnswer<Row>>;
  readonly archived: boolean;
  readonly onArchived: (archived: boolean) => void;
  /** Where a new one is made; null where this person may not. */
  readonly newHref: string | null;
  readonly newWords: string;
  readonly emptyText: string;
  readonly acts?: ReactNode;
  /** Between header and table: the kinds to choose from. */
  readonly above?: ReactNode;
};

/** A whole list of one kind of record, with its archive, its file and the way to a new one. */
export function RecordList<Row extends RowData>(props: RecordListProps<Row>) {
  const {
    title,
    kicker,
    listName,
    page,
    archived,
    onArchived,
    newHref,
    newWords,
    emptyText,
    acts,
    above,
    ...table
  } = props;
  const { shop } = useDisplay();
  const query = useWholeList(listName, archived, page);
  const timeOf = (atMs: number) =>
    new Intl.DateTimeFormat(shop.locale, { timeStyle: 'short', timeZone: shop.timeZone }).format(atMs);
  const makeNew =
    newHref === null ? null : (
      <LinkButton look="primary" href={newHref}>
        {newWords}
      </LinkButton>
    );
  return (
    <Page>
      <PageHeader
        kicker={kicker}
        title={archived ? `${title}, archived` : title}
        acts={
          <>
            <Switch isSelected={archived} onChange={onArchived}>
              Archive
            </Switch>
            {acts}
            {makeNew}
          </>
        }
      />
      {above}
      <DataTable
        {...table}
        state={listState(query, timeOf)}
        empty={
          archived
            ? { title: 'The archive is empty', text: `No ${table.noun.many} have been put away.` }
            : { title: `No ${table.noun.many} yet`, text: emptyText, act: makeNew }
        }
      />
    </Page>
  );
}
