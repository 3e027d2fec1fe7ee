import type { ReactNode } from 'react';
import { classNames } from '../controls/class-names.ts';
import styles from './title-block.module.css';

export type TitleCell = {
  readonly caption: string;
  readonly value: ReactNode;
  /** Share of the width beside the other cells; 1 where nothing is said. */
  readonly span?: 1 | 2 | 3;
  /** Pencil: missing or failing. Brass: check it. */
  readonly tone?: 'pencil' | 'brass';
  readonly isFigures?: boolean;
};

export type JobTitle = {
  readonly shopName: string;
  readonly vehicle: string;
  readonly customer: string;
  readonly jobNumber: string;
  /** A, B, C …; null before the first issue. */
  readonly revision: string | null;
  readonly drawnBy: string;
  readonly checkedBy: string | null;
  readonly units: 'mm' | 'in';
  /** "1:8"; null where nothing is drawn to scale. */
  readonly scale: string | null;
  /** `04` of `09`: its number and the last one of the set. */
  readonly sheet: { readonly number: string; readonly of: string };
};

/** The cells every job sheet closes with, in the order of the shop's paper. */
export function jobTitleCells(title: JobTitle): readonly TitleCell[] {
  return [
    { caption: 'Shop', value: title.shopName, span: 2 },
    { caption: 'Vehicle', value: title.vehicle, span: 3 },
    { caption: 'Customer', value: title.customer, span: 2 },
    { caption: 'Job', value: title.jobNumber, isFigures: true },
    { caption: 'Rev', value: title.revision ?? 'draft', isFigures: title.revision !== null },
    { caption: 'Drawn', value: title.drawnBy },
    {
      caption: 'Checked',
      value: title.checkedBy ?? 'not yet',
      ...(title.checkedBy ? {} : { tone: 'pencil' }),
    },
    { caption: 'Units', value: title.units },
    { caption: 'Scale', value: title.scale ?? 'none', isFigures: title.scale !== null },
    { caption: 'Sheet', value: `${title.sheet.number}/${title.sheet.of}`, isFigures: true },
  ];
}

/** Closes every sheet, on screen and on paper: what it shows, for whom, who stands for it. */
export function TitleBlock({ cells }: { readonly cells: readonly TitleCell[] }) {
  return (
    <dl className={styles.block} aria-label="Title block">
      {cells.map(({ caption, value, span = 1, tone, isFigures }) => (
        <div key={caption} className={styles.cell} data-span={span}>
          <dt className="caption">{caption}</dt>
          <dd className={classNames(isFigures && 'figures', tone && styles[tone])}>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
