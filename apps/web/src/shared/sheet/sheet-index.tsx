'use client';

import type { SheetKind } from '@gusset/contracts/sheet';
import Link from 'next/link';
import { useState } from 'react';
import { Button } from 'react-aria-components/Button';
import { classNames } from '../controls/class-names.ts';
import { Dialog } from '../overlays/dialog.tsx';
import { DeltaButton } from './delta-button.tsx';
import styles from './sheet-index.module.css';
import { SheetMark } from './sheet-mark.tsx';
import { type IndexedSheet, neighbours } from './sheet-state.ts';

export type SheetIndexProps = {
  /** "Job 2417" */
  readonly title: string;
  /** What it is: "Brisk hatch, R. Okafor". */
  readonly subtitle?: string;
  readonly sheets: readonly IndexedSheet[];
  readonly current: SheetKind;
};

/** The set of sheets: a list at the left, a bar at the bottom of a phone. */
export function SheetIndex({ title, subtitle, sheets, current }: SheetIndexProps) {
  return (
    <>
      <nav className={styles.index} aria-label="Sheets" data-screen-only="">
        <div className={styles.title}>
          <h2>{title}</h2>
          {subtitle ? <p>{subtitle}</p> : null}
        </div>
        <SheetList sheets={sheets} current={current} />
      </nav>
      <SheetBar title={title} sheets={sheets} current={current} />
    </>
  );
}

type SheetListProps = Pick<SheetIndexProps, 'sheets' | 'current'> & { readonly onGo?: () => void };

function SheetList({ sheets, current, onGo }: SheetListProps) {
  return (
    <ol className={styles.sheets}>
      {sheets.map((sheet) => (
        <li key={sheet.kind} className={classNames(styles.sheet, sheet.kind === current && styles.isCurrent)}>
          <Link
            prefetch={false}
            href={sheet.href}
            className={styles.link}
            aria-current={sheet.kind === current ? 'page' : undefined}
            onClick={onGo}
          >
            <span className={styles.number}>{sheet.number}</span>
            <span className={styles.name}>{sheet.title}</span>
            {sheet.changes.length === 0 ? <SheetMark state={sheet.mark} /> : null}
          </Link>
          {sheet.changes.length > 0 ? <DeltaButton sheetName={sheet.title} changes={sheet.changes} /> : null}
        </li>
      ))}
    </ol>
  );
}

function SheetBar({ title, sheets, current }: Pick<SheetIndexProps, 'title' | 'sheets' | 'current'>) {
  const [isOpen, setIsOpen] = useState(false);
  const { before, after } = neighbours(sheets, current);
  const open = sheets.find((sheet) => sheet.kind === current);
  const changed = sheets.filter((sheet) => sheet.changes.length > 0).length;
  return (
    <nav className={styles.bar} aria-label="Sheets" data-screen-only="">
      <BarLink to={before} words="‹" name="Sheet before" />
      <Button className={styles.barButton} onPress={() => setIsOpen(true)}>
        <span className={styles.number}>{open?.number ?? '--'}</span>
        <span className={styles.name}>{open?.title ?? 'Sheets'}</span>
        {open ? <SheetMark state={open.mark} /> : null}
        {changed > 0 ? <span className={styles.changed}>{changed} changed</span> : null}
      </Button>
      <BarLink to={after} words="›" name="Next sheet" />
      <Dialog title={`${title}: sheets`} isOpen={isOpen} onClose={() => setIsOpen(false)}>
        <SheetList sheets={sheets} current={current} onGo={() => setIsOpen(false)} />
      </Dialog>
    </nav>
  );
}

type BarLinkProps = { readonly to: IndexedSheet | null; readonly words: string; readonly name: string };

function BarLink({ to, words, name }: BarLinkProps) {
  if (to === null) return <span className={styles.barEnd} />;
  return (
    <Link prefetch={false} className={styles.barLink} href={to.href} aria-label={`${name}: ${to.title}`}>
      {words}
    </Link>
  );
}
