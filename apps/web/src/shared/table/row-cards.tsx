'use client';

import Link from 'next/link';
import { classNames } from '../controls/class-names.ts';
import type { DataColumn } from './data-column.ts';
import styles from './row-cards.module.css';

export type RowCardsProps<Row> = {
  readonly label: string;
  readonly rows: readonly Row[];
  readonly columns: readonly DataColumn<Row>[];
  readonly rowId: (row: Row) => string;
  readonly hrefOf: ((row: Row) => string) | null;
};

/** The same rows on a phone: a title, a line, one figure at the side. Far cards are skipped by the browser. */
export function RowCards<Row>({ label, rows, columns, rowId, hrefOf }: RowCardsProps<Row>) {
  return (
    <ul className={styles.cards} aria-label={label}>
      {rows.map((row) => {
        const body = <CardBody row={row} columns={columns} />;
        return (
          <li key={rowId(row)} className={styles.card}>
            {hrefOf ? (
              <Link prefetch={false} href={hrefOf(row)} className={styles.link}>
                {body}
              </Link>
            ) : (
              <div className={styles.link}>{body}</div>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function CardBody<Row>({
  row,
  columns,
}: {
  readonly row: Row;
  readonly columns: readonly DataColumn<Row>[];
}) {
  const at = (place: DataColumn<Row>['onCard']) => columns.filter((column) => column.onCard === place);
  const cellOf = (column: DataColumn<Row>) => (
    <span key={column.id} className={classNames(column.isFigures && 'figures')}>
      {column.cell(row)}
    </span>
  );
  return (
    <>
      <span className={styles.title}>{at('title').map(cellOf)}</span>
      <span className={styles.side}>{at('side').map(cellOf)}</span>
      <span className={styles.line}>{at('line').map(cellOf)}</span>
    </>
  );
}
