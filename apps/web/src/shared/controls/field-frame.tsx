'use client';

import type { ReactNode } from 'react';
import { FieldError } from 'react-aria-components/FieldError';
import { Label } from 'react-aria-components/Label';
import { Text } from 'react-aria-components/Text';
import styles from './field.module.css';

export type FieldText = {
  /** What is asked, in the shop's words: "Opening, square to the way in". */
  readonly label: string;
  /** How to measure or why it matters; stays under the field. */
  readonly hint?: ReactNode;
  /** What is wrong and what would be accepted; null when nothing is. */
  readonly error?: string | null;
  readonly isOptional?: boolean;
};

export function FieldLabel({ label, isOptional }: Pick<FieldText, 'label' | 'isOptional'>) {
  return (
    <Label className={styles.label}>
      {label}
      {isOptional ? <span className={styles.optional}> · optional</span> : null}
    </Label>
  );
}

/** The lines under the cell: the error when there is one, else the hint. Both are tied to the control. */
export function FieldNotes({ hint, error }: Pick<FieldText, 'hint' | 'error'>) {
  return (
    <>
      {hint && !error ? (
        <Text slot="description" className={styles.hint}>
          {hint}
        </Text>
      ) : null}
      <FieldError className={styles.error}>{error}</FieldError>
    </>
  );
}

export type FieldGridProps = {
  readonly children: ReactNode;
  /** Narrowest cell before the grid takes one column less. */
  readonly cellMinPx?: number;
};

/** Fields side by side, as the cells of a title block. */
export function FieldGrid({ children, cellMinPx = 200 }: FieldGridProps) {
  return (
    <div className={styles.grid} style={{ '--cell-min': `${cellMinPx}px` } as React.CSSProperties}>
      {children}
    </div>
  );
}
