'use client';

import type { ReactNode } from 'react';
import {
  Checkbox as AriaCheckbox,
  type CheckboxProps as AriaCheckboxProps,
} from 'react-aria-components/Checkbox';
import styles from './choice.module.css';

export type CheckboxProps = Omit<AriaCheckboxProps, 'className' | 'style' | 'children'> & {
  readonly children: ReactNode;
  readonly detail?: ReactNode;
};

export function Checkbox({ children, detail, ...rest }: CheckboxProps) {
  return (
    <AriaCheckbox {...rest} className={styles.choice}>
      {({ isSelected, isIndeterminate }) => (
        <>
          <span className={styles.mark}>
            <svg className={styles.tick} viewBox="0 0 14 14" aria-hidden="true">
              {isIndeterminate ? <path d="M2 7h10" /> : isSelected ? <path d="M1.5 7.5l4 4 7-9" /> : null}
            </svg>
          </span>
          <span className={styles.words}>
            <span>{children}</span>
            {detail ? <span className={styles.detail}>{detail}</span> : null}
          </span>
        </>
      )}
    </AriaCheckbox>
  );
}
