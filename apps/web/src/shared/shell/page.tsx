import type { ReactNode } from 'react';
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
      <main id="main" className={styles.main} tabIndex={-1}>
        {children}
      </main>
    </div>
  );
}
