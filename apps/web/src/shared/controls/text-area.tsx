'use client';

import type { Ref } from 'react';
import { TextArea as AriaTextArea } from 'react-aria-components/TextArea';
import {
  TextField as AriaTextField,
  type TextFieldProps as AriaTextFieldProps,
} from 'react-aria-components/TextField';
import { classNames } from './class-names.ts';
import styles from './field.module.css';
import { FieldLabel, FieldNotes, type FieldText } from './field-frame.tsx';

export type TextAreaProps = FieldText &
  Omit<AriaTextFieldProps, 'className' | 'style' | 'children' | 'isInvalid' | 'validationBehavior'> & {
    readonly placeholder?: string;
    readonly rows?: number;
    readonly inputRef?: Ref<HTMLTextAreaElement>;
  };

/** Several lines of free text: notes, what the customer asked for. */
export function TextArea({
  label,
  hint,
  error = null,
  isOptional,
  placeholder,
  rows = 4,
  inputRef,
  ...rest
}: TextAreaProps) {
  return (
    <AriaTextField {...rest} className={styles.field} isInvalid={error !== null} validationBehavior="aria">
      <div className={styles.cell}>
        <FieldLabel label={label} isOptional={isOptional} />
        <AriaTextArea
          className={classNames(styles.input, styles.area)}
          dir="auto"
          placeholder={placeholder}
          rows={rows}
          ref={inputRef}
        />
      </div>
      <FieldNotes hint={hint} error={error} />
    </AriaTextField>
  );
}
