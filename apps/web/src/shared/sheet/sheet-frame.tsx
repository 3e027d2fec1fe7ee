import type { ReactNode } from 'react';
import { classNames } from '../controls/class-names.ts';
import styles from './sheet-frame.module.css';
import { TitleBlock, type TitleCell } from './title-block.tsx';

/** Zones along the edges, as on a drawing (ISO 5457): a place on the sheet can be named over the phone, "C4". */
const COLUMNS = ['1', '2', '3', '4', '5', '6', '7', '8'] as const;
const LINES = ['A', 'B', 'C', 'D', 'E'] as const;

export type SheetFrameProps = {
  /** What the view shows and in which unit: "Side section on centre line · mm". */
  readonly viewCaption?: string;
  /** The drawing, table or form. */
  readonly children: ReactNode;
  /** Verdict, schedules, cautions; beside the view, under it on narrow screens. */
  readonly notes?: ReactNode;
  /** Of a list: where notes don't fit beside it, on narrow screens and on paper, they stand above. */
  readonly notesFirst?: boolean;
  readonly titleBlock: readonly TitleCell[];
  /** True while a new result is being worked out: the old one stays and dims. */
  readonly isStale?: boolean;
};

/** A drawing sheet: trimmed edge with zones, frame, view, notes column, title block. Prints as paper. */
export function SheetFrame({
  viewCaption,
  children,
  notes,
  notesFirst = false,
  titleBlock,
  isStale = false,
}: SheetFrameProps) {
  const aside =
    notes == null ? null : (
      <aside className={styles.notes} aria-label="Notes" data-first={notesFirst} data-stale={isStale}>
        {notes}
      </aside>
    );
  return (
    <div className={styles.paper}>
      <Zones names={COLUMNS} className={styles.zonesAcross} />
      <Zones names={LINES} className={styles.zonesDown} />
      <div className={classNames(styles.frame, aside !== null && styles.hasNotes)}>
        {notesFirst ? aside : null}
        <section className={styles.view} aria-busy={isStale} data-stale={isStale}>
          {viewCaption ? <p className={classNames('caption', styles.viewCaption)}>{viewCaption}</p> : null}
          {children}
        </section>
        {notesFirst ? null : aside}
        <footer className={styles.foot}>
          <TitleBlock cells={titleBlock} />
        </footer>
      </div>
    </div>
  );
}

function Zones({
  names,
  className,
}: {
  readonly names: readonly string[];
  readonly className: string | undefined;
}) {
  return (
    <div className={classNames(styles.zones, className)} aria-hidden="true">
      {names.map((name) => (
        <span key={name}>{name}</span>
      ))}
    </div>
  );
}
