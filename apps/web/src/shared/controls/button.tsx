'use client';

import type { ReactNode, Ref } from 'react';
import { Button as AriaButton, type ButtonProps as AriaButtonProps } from 'react-aria-components/Button';
import styles from './button.module.css';
import { classNames } from './class-names.ts';

export type ButtonLook = 'primary' | 'plain' | 'danger' | 'quiet';

export type ButtonProps = Omit<AriaButtonProps, 'className' | 'style' | 'children'> & {
  /** A verb that says what happens: "Issue this sheet". */
  readonly children: ReactNode;
  /** One primary a screen; danger only for what removes. */
  readonly look?: ButtonLook;
  readonly isWide?: boolean;
  readonly ref?: Ref<HTMLButtonElement>;
};

/** `isPending` keeps the focus and the words, and says that the act is under way. */
export function Button({ look = 'plain', isWide = false, children, ...rest }: ButtonProps) {
  return (
    <AriaButton
      {...rest}
      className={classNames(styles.button, look !== 'plain' && styles[look], isWide && styles.wide)}
    >
      {({ isPending }) => (
        <>
          {isPending ? <span className={styles.pendingRule} aria-hidden="true" /> : null}
          {children}
        </>
      )}
    </AriaButton>
  );
}
