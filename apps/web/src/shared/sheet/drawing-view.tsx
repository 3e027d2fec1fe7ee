import type { ReactNode } from 'react';
import styles from './drawing-view.module.css';

export type DrawingViewProps = {
  /** What it shows, for those who can't see it; the facts in it also stand in a table or list nearby. */
  readonly label: string;
  /** One SVG. */
  readonly children: ReactNode;
  /** Below this width the drawing scrolls sideways instead of shrinking its figures past reading; 0 = it never does. */
  readonly minWidthPx?: number;
  /** Key under the drawing. */
  readonly legend?: ReactNode;
};

export function DrawingView({ label, children, minWidthPx = 620, legend }: DrawingViewProps) {
  return (
    <figure className={styles.drawing}>
      {/* A region that scrolls must be reachable by key. */}
      <section className={styles.scroll} aria-label={label} tabIndex={minWidthPx === 0 ? undefined : 0}>
        <div style={{ minInlineSize: `${minWidthPx}px` }}>{children}</div>
      </section>
      {legend ? <figcaption className={styles.legend}>{legend}</figcaption> : null}
    </figure>
  );
}
