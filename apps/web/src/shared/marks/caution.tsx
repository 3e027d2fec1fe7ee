import type { ReactNode } from 'react';
import styles from './caution.module.css';

export type CautionProps = {
  /** The caution for this act: "Two people lift this box." */
  readonly children?: ReactNode;
};

/** Stands beside any act that can hurt someone, on screen and on paper. */
export function Caution({ children }: CautionProps) {
  return (
    <div className={styles.caution} role="note" aria-label="Caution">
      <span className="caption">Caution</span>
      <p>
        {children}
        {children ? ' ' : null}
        Planning aid only: follow the makers' instructions, local codes and licensed practice.
      </p>
    </div>
  );
}
