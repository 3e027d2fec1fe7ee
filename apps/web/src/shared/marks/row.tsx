import type { ReactNode } from 'react';
import { classNames } from '../controls/class-names.ts';
import styles from './row.module.css';

export type RowsProps = {
  /** Caption over the rows: "Volume". */
  readonly title?: string;
  readonly children: ReactNode;
};

/** A schedule of label and value lines, ruled as on a drawing. */
export function Rows({ title, children }: RowsProps) {
  return (
    <section className={styles.rows} aria-label={title} data-keep-together="">
      {title ? <h2 className="caption">{title}</h2> : null}
      <dl>{children}</dl>
    </section>
  );
}

export type RowProps = {
  readonly label: ReactNode;
  /** Figures with their unit, or words. */
  readonly children: ReactNode;
  readonly isTotal?: boolean;
  readonly tone?: 'plain' | 'pencil' | 'brass' | 'mark';
  /** True for words; figures are set in the tabular face. */
  readonly isWords?: boolean;
};

export function Row({ label, children, isTotal = false, tone = 'plain', isWords = false }: RowProps) {
  return (
    <div className={classNames(styles.row, isTotal && styles.total, tone !== 'plain' && styles[tone])}>
      <dt>{label}</dt>
      <dd className={isWords ? styles.words : 'figures'}>{children}</dd>
    </div>
  );
}
