'use client';

import type { Permission } from '@gusset/contracts/access';
import type { RowData } from '@tanstack/react-table';
import { type ReactNode, useState } from 'react';
import { LinkButton } from '../controls/link-button.tsx';
import { Switch } from '../controls/switch.tsx';
import { listState } from '../data/list-state.ts';
import { useDisplay } from '../shell/display-provider.tsx';
import { Page } from '../shell/page.tsx';
import { PageHeader } from '../shell/page-header.tsx';
import { useMay } from '../shell/person.tsx';
import { DataTable, type DataTableProps } from '../table/data-table.tsx';
import { type ListFile, ListFileMenu } from './list-file.tsx';
import { type ListAnswer, useWholeList } from './use-whole-list.ts';

/** As `useTRPCClient().<kind>` gives them. */
export type ListProcedures<Row> = ListFile & {
  readonly list: {
    query(ask: { limit: number; offset: number; archived: boolean }): Promise<ListAnswer<Row>>;
  };
};

export type RecordListProps<Row extends RowData> = Omit<
  DataTableProps<Row>,
  'state' | 'empty' | 'label' | 'rowId'
> & {
  readonly title: string;
  readonly kicker?: ReactNode;
  readonly listName: string;
  readonly procedures: ListProcedures<Row>;
  /** What it takes to make one and to take a list in. */
  readonly edit: Permission;
  /** Where a new one is made. */
  readonly newHref: string;
  readonly newWords: string;
  readonly emptyText: string;
  /** Between header and table: the kinds to choose from. */
  readonly above?: ReactNode;
};

/** A whole list of one kind of record, with its archive, its file and the way to a new one. */
export function RecordList<Row extends RowData & { readonly id: string }>(props: RecordListProps<Row>) {
  const { title, kicker, listName, procedures, edit, newHref, newWords, emptyText, above, ...table } = props;
  const { shop } = useDisplay();
  const mayEdit = useMay(edit);
  const mayExport = useMay('list.export');
  const [archived, setArchived] = useState(false);
  const query = useWholeList(listName, archived, (ask) => procedures.list.query(ask));
  const timeOf = (atMs: number) =>
    new Intl.DateTimeFormat(shop.locale, { timeStyle: 'short', timeZone: shop.timeZone }).format(atMs);
  const makeNew = mayEdit ? (
    <LinkButton look="primary" href={newHref}>
      {newWords}
    </LinkButton>
  ) : null;
  return (
    <Page>
      <PageHeader
        kicker={kicker}
        title={archived ? `${title}, archived` : title}
        acts={
          <>
            <Switch isSelected={archived} onChange={setArchived}>
              Archive
            </Switch>
            <ListFileMenu
              noun={table.noun}
              listName={listName}
              mayImport={mayEdit}
              mayExport={mayExport}
              file={procedures}
            />
            {makeNew}
          </>
        }
      />
      {above}
      <DataTable
        {...table}
        label={title}
        rowId={({ id }) => id}
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
