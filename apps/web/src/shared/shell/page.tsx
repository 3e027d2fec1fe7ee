import type { ReactNode } from 'react';
import { classNames } from '../controls/class-names.ts';
import styles from './page.module.css';

export type PageProps = {
  readonly children: ReactNode;
  /** The sheet index of a job, at the left. */
  readonly index?: ReactNode;
};

/** The room under the strip: the index of sheets, if there is one, and the page itself. */
export function Page({ children, index }: PageProps) {
  return (
    <div className={index ? styles.withIndex : styles.plain}>
      {index}
      <main id="main" className={classNames(styles.main, index ? styles.beside : null)} tabIndex={-1}>
        {children}
      </main>
    </div>
  );
}
