'use client';

import type { SheetChange } from '@gusset/contracts/sheet';
import { Button } from 'react-aria-components/Button';
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog';
import { Heading } from 'react-aria-components/Heading';
import { Popover } from 'react-aria-components/Popover';
import { ChangeList } from './change-list.tsx';
import styles from './delta-button.module.css';
import { DeltaMark } from './sheet-mark.tsx';

export type DeltaButtonProps = {
  readonly sheetName: string;
  readonly changes: readonly SheetChange[];
};

/** The red triangle; pressed, it lists what changed since the sheet was issued. */
export function DeltaButton({ sheetName, changes }: DeltaButtonProps) {
  const count = changes.length === 1 ? '1 change' : `${changes.length} changes`;
  return (
    <DialogTrigger>
      <Button className={styles.button} aria-label={`${sheetName}: ${count} since issue`}>
        <DeltaMark />
      </Button>
      <Popover className={styles.popover} placement="end top" offset={4}>
        <Dialog className={styles.dialog}>
          <Heading slot="title" level={3} className={styles.title}>
            {sheetName}: changed since issue
          </Heading>
          <ChangeList changes={changes} />
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}
