'use client';

import type { ReactNode } from 'react';
import { Button } from '../controls/button.tsx';
import { Dialog } from './dialog.tsx';

export type ConfirmDialogProps = {
  /** The question: "Send quote 2417 rev C to R. Okafor?" */
  readonly title: string;
  /** What happens, and what can't be undone afterwards. */
  readonly children: ReactNode;
  /** The act's own verb, as on the button that asked: "Send quote". Never "OK". */
  readonly verb: string;
  /** What leaves things as they are: "Keep the draft". */
  readonly keep?: string;
  readonly isOpen: boolean;
  readonly onConfirm: () => void;
  readonly onClose: () => void;
  readonly isPending?: boolean;
  readonly removes?: boolean;
};

/** Only for what can't be undone; everything else acts at once and offers Undo. */
export function ConfirmDialog({
  title,
  children,
  verb,
  keep = 'Leave as it is',
  isOpen,
  onConfirm,
  onClose,
  isPending = false,
  removes = false,
}: ConfirmDialogProps) {
  return (
    <Dialog
      title={title}
      role="alertdialog"
      isOpen={isOpen}
      onClose={onClose}
      isDismissable={false}
      acts={
        <>
          <Button onPress={onClose} autoFocus>
            {keep}
          </Button>
          <Button look={removes ? 'danger' : 'primary'} onPress={onConfirm} isPending={isPending}>
            {verb}
          </Button>
        </>
      }
    >
      {children}
    </Dialog>
  );
}
