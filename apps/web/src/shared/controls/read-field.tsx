'use client';

import { Input } from 'react-aria-components/Input';
import { TextField as AriaTextField } from 'react-aria-components/TextField';
import { classNames } from './class-names.ts';
import styles from './field.module.css';
import { FieldLabel, FieldNotes, type FieldText } from './field-frame.tsx';
import { type TypedEntryOptions, useTypedEntry } from './use-typed-entry.ts';

export type ReadFieldProps<Value> = FieldText &
  TypedEntryOptions<Value> & {
    /** Printed in the field: "L", "Ω", "kg". */
    readonly unitText?: string;
    readonly inputMode?: 'decimal' | 'numeric' | 'text';
    readonly isDisabled?: boolean;
    readonly isReadOnly?: boolean;
    readonly isRequired?: boolean;
    readonly autoFocus?: boolean;
    readonly name?: string;
  };

/**
 * A field that reads what is typed with a `parse…` of @gusset/units: volumes, masses, angles, figures, money.
 * Keeps an unreadable text with its reason; Enter, Tab and blur commit, Esc restores.
 */
export function ReadField<Value>({
  label,
  hint,
  error = null,
  isOptional,
  unitText,
  inputMode = 'decimal',
  shown,
  read,
  step,
  format,
  onCommit,
  ...rest
}: ReadFieldProps<Value>) {
  const entry = useTypedEntry<Value>({ shown, read, step, format, onCommit });
  const message = entry.refusal ?? error;
  return (
    <AriaTextField
      {...rest}
      className={styles.field}
      isInvalid={message !== null}
      validationBehavior="aria"
      value={entry.text}
      onChange={entry.type}
    >
      <div className={styles.cell}>
        <FieldLabel label={label} isOptional={isOptional} />
        <Input
          {...entry.inputHandlers}
          className={classNames(styles.input, styles.figures)}
          inputMode={inputMode}
          enterKeyHint="next"
          autoComplete="off"
        />
        {unitText ? <span className={styles.unit}>{unitText}</span> : null}
      </div>
      <FieldNotes hint={entry.note ?? hint} error={message} />
    </AriaTextField>
  );
}
