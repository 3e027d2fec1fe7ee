import type { ReactNode } from 'react';
import styles from './page-header.module.css';

export type PageHeaderProps = {
  /** Where this is: "Job 2417 · sheet 04 · draft". */
  readonly kicker?: ReactNode;
  readonly title: string;
  /** SaveState, or a line on how current the page is. */
  readonly state?: ReactNode;
  /** Buttons; the primary one last. On phones they lie at the bottom, under the thumb. */
  readonly acts?: ReactNode;
};

export function PageHeader({ kicker, title, state, acts }: PageHeaderProps) {
  return (
    <header className={styles.header}>
      <div className={styles.titles}>
        {kicker ? <p className="caption">{kicker}</p> : null}
        <h1>{title}</h1>
      </div>
      {state ? <div className={styles.state}>{state}</div> : null}
      {acts ? (
        <div className={styles.acts} data-screen-only="">
          {acts}
        </div>
      ) : null}
    </header>
  );
}
