'use client';

import { useState } from 'react';
import { Button } from '../controls/button.tsx';
import { RadioGroup } from '../controls/radio-group.tsx';
import styles from './conflict-dialog.module.css';
import { Dialog } from './dialog.tsx';

export type ConflictField = {
  readonly field: string;
  /** "Opening, square to the way in" */
  readonly label: string;
  /** As shown on this screen, with unit. */
  readonly mine: string;
  readonly theirs: string;
};

export type Keep = 'mine' | 'theirs';

export type ConflictDialogProps = {
  /** Who saved in between: "M. Ilves at 14:02". */
  readonly otherPerson: string;
  readonly fields: readonly ConflictField[];
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** For each field, whose value stays. */
  readonly onResolve: (choice: Readonly<Record<string, Keep>>) => void;
};

/** Two people changed the same thing: both values of each field, and a choice; nothing is lost unseen. */
export function ConflictDialog({ otherPerson, fields, isOpen, onClose, onResolve }: ConflictDialogProps) {
  const [choice, setChoice] = useState<Readonly<Record<string, Keep>>>({});
  const open = fields.filter(({ field }) => choice[field] === undefined).length;
  return (
    <Dialog
      title="Both of you changed this"
      isOpen={isOpen}
      onClose={onClose}
      isDismissable={false}
      acts={
        <Button look="primary" isDisabled={open > 0} onPress={() => onResolve(choice)}>
          {open > 0 ? `Choose for ${open} more` : 'Keep these values'}
        </Button>
      }
    >
      <p>{otherPerson} saved while you were typing. Your values are kept on this device until you choose.</p>
      <ul className={styles.fields}>
        {fields.map(({ field, label, mine, theirs }) => (
          <li key={field}>
            <RadioGroup
              label={label}
              isRow
              value={choice[field] ?? null}
              onChange={(keep: Keep) => setChoice((chosen) => ({ ...chosen, [field]: keep }))}
              options={[
                { id: 'mine', label: mine, detail: 'yours' },
                { id: 'theirs', label: theirs, detail: otherPerson },
              ]}
            />
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
