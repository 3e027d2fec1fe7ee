import type { ReactNode } from 'react';
import { classNames } from '../../shared/controls/class-names.ts';
import styles from './style-group.module.css';

export type StyleGroupProps = {
  readonly title: string;
  readonly isRow?: boolean;
  readonly children: ReactNode;
};

export function StyleGroup({ title, isRow = false, children }: StyleGroupProps) {
  return (
    <section className={styles.group}>
      <h2>{title}</h2>
      <div className={classNames(styles.body, isRow && styles.row)}>{children}</div>
    </section>
  );
}
