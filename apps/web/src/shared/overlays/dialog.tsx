'use client';

import type { ReactNode } from 'react';
import { Dialog as AriaDialog, type DialogProps as AriaDialogProps } from 'react-aria-components/Dialog';
import { Heading } from 'react-aria-components/Heading';
import { Modal, ModalOverlay } from 'react-aria-components/Modal';
import { Button } from '../controls/button.tsx';
import { classNames } from '../controls/class-names.ts';
import styles from './overlay.module.css';

export type DialogProps = {
  readonly title: string;
  readonly children: ReactNode;
  /** Buttons in the closing bar; the act that goes on comes last, so it lies bottom-right. */
  readonly acts?: ReactNode;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly isWide?: boolean;
  /** False where leaving by a tap beside it would lose something that can't be kept. */
  readonly isDismissable?: boolean;
  readonly role?: AriaDialogProps['role'];
};

/** A question or a form over the page: a framed sheet; on phones it rises from the bottom. Focus returns. */
export function Dialog({
  title,
  children,
  acts,
  isOpen,
  onClose,
  isWide = false,
  isDismissable = true,
  role = 'dialog',
}: DialogProps) {
  return (
    <ModalOverlay
      className={styles.veil}
      isOpen={isOpen}
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
      isDismissable={isDismissable}
    >
      <Modal className={classNames(styles.modal, isWide && styles.wide)}>
        <AriaDialog className={styles.dialog} role={role}>
          <header className={styles.head}>
            <Heading slot="title" level={2} className={styles.title}>
              {title}
            </Heading>
            <Button look="quiet" onPress={onClose}>
              Close
            </Button>
          </header>
          <div className={styles.body}>{children}</div>
          {acts ? <footer className={styles.acts}>{acts}</footer> : null}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
