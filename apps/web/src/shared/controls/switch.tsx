'use client';

import type { ReactNode } from 'react';
import { Switch as AriaSwitch, type SwitchProps as AriaSwitchProps } from 'react-aria-components/Switch';
import styles from './choice.module.css';

export type SwitchProps = Omit<AriaSwitchProps, 'className' | 'style' | 'children'> & {
  readonly children: ReactNode;
  readonly detail?: ReactNode;
};

/** On or off at once, with nothing to send. A choice that is sent with a form is a Checkbox. */
export function Switch({ children, detail, ...rest }: SwitchProps) {
  return (
    <AriaSwitch {...rest} className={styles.choice}>
      <span className={styles.track} />
      <span className={styles.words}>
        <span>{children}</span>
        {detail ? <span className={styles.detail}>{detail}</span> : null}
      </span>
    </AriaSwitch>
  );
}
