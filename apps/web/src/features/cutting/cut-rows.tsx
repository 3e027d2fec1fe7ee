'use client';

import type { HandOffcut } from '@gusset/contracts/cutting-sheet';
import type { ReactNode } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { keptLength } from '../../shared/job/length-rule.ts';
import styles from './cutting-screen.module.css';

const SHORTEST_MM = 0.1;
const LONGEST_MM = 5_000;

export type CutRowsProps<Row extends { readonly key: string }> = {
  readonly rows: readonly Row[];
  /** Most rows that a draft takes. */
  readonly most: number;
  /** `X1`, `offcut 1`. */
  readonly nameOf: (index: number) => string;
  readonly addWords: string;
  readonly isReadOnly: boolean;
  readonly make: () => Row;
  readonly onChange: (rows: Row[]) => void;
  /** The fields of one row. */
  readonly children: (row: Row, index: number) => ReactNode;
};

/** Rows typed by hand: a line of fields each, one more, or one taken out. */
export function CutRows<Row extends { readonly key: string }>({
  rows,
  most,
  nameOf,
  addWords,
  isReadOnly,
  make,
  onChange,
  children,
}: CutRowsProps<Row>) {
  return (
    <>
      {rows.map((row, index) => (
        <div key={row.key} className={styles.row}>
          {children(row, index)}
          {isReadOnly ? null : (
            <Button
              look="quiet"
              aria-label={`Take out ${nameOf(index)}`}
              onPress={() => onChange(rows.filter(({ key }) => key !== row.key))}
            >
              Take out
            </Button>
          )}
        </div>
      ))}
      {isReadOnly || rows.length >= most ? null : (
        <div>
          <Button onPress={() => onChange([...rows, make()])}>{addWords}</Button>
        </div>
      )}
    </>
  );
}

/** The rows with one of them changed. */
export function withRow<Row extends { readonly key: string }>(
  rows: readonly Row[],
  key: string,
  changes: Partial<Row>,
): Row[] {
  return rows.map((row) => (row.key === key ? { ...row, ...changes } : row));
}

export type SizeFieldsProps = {
  readonly length: HandOffcut['length'];
  readonly width: HandOffcut['width'];
  readonly count: number;
  readonly mostOf: number;
  readonly isReadOnly: boolean;
  readonly errorOf: (field: 'length' | 'width') => string | null;
  readonly onLength: (length: HandOffcut['length']) => void;
  readonly onWidth: (width: HandOffcut['width']) => void;
  readonly onCount: (count: number) => void;
};

/** How long, how wide, how many. */
export function SizeFields({ length, width, count, mostOf, isReadOnly, errorOf, ...on }: SizeFieldsProps) {
  const limits = { minMm: SHORTEST_MM, maxMm: LONGEST_MM, isReadOnly };
  return (
    <>
      <LengthField
        label="Length"
        value={length}
        onCommit={(typed) => on.onLength(keptLength(typed))}
        error={errorOf('length')}
        {...limits}
      />
      <LengthField
        label="Width"
        value={width}
        onCommit={(typed) => on.onWidth(keptLength(typed))}
        error={errorOf('width')}
        {...limits}
      />
      <NumberField
        label="How many"
        value={count}
        min={1}
        max={mostOf}
        digits={0}
        onCommit={(figure) => on.onCount(Math.round(figure?.value ?? 1))}
        isDisabled={isReadOnly}
      />
    </>
  );
}
