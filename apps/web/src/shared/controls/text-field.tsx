'use client';

import type { Ref } from 'react';
import { Input, type InputProps } from 'react-aria-components/Input';
import {
  TextField as AriaTextField,
  type TextFieldProps as AriaTextFieldProps,
} from 'react-aria-components/TextField';
import styles from './field.module.css';
import { FieldLabel, FieldNotes, type FieldText } from './field-frame.tsx';

export type TextFieldProps = FieldText &
  Omit<AriaTextFieldProps, 'className' | 'style' | 'children' | 'isInvalid' | 'validationBehavior'> & {
    readonly placeholder?: string;
    readonly enterKeyHint?: InputProps['enterKeyHint'];
    /** The input itself, for react-hook-form and for focusing the first mistake. */
    readonly inputRef?: Ref<HTMLInputElement>;
  };

export function TextField({
  label,
  hint,
  error = null,
  isOptional,
  placeholder,
  enterKeyHint,
  inputRef,
  ...rest
}: TextFieldProps) {
  return (
    <AriaTextField {...rest} className={styles.field} isInvalid={error !== null} validationBehavior="aria">
      <div className={styles.cell}>
        <FieldLabel label={label} isOptional={isOptional} />
        <Input
          className={styles.input}
          placeholder={placeholder}
          enterKeyHint={enterKeyHint}
          ref={inputRef}
        />
      </div>
      <FieldNotes hint={hint} error={error} />
    </AriaTextField>
  );
}
