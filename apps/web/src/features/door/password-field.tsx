'use client';

import { useState } from 'react';
import type { FieldValues } from 'react-hook-form';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { FormText, type FormTextProps } from '../../shared/controls/form-text.tsx';

export type PasswordFieldProps<Values extends FieldValues> = Pick<
  FormTextProps<Values>,
  'control' | 'name' | 'label' | 'hint'
> & {
  /** Tells password managers whether to fill or to offer a new one. Pasting is always allowed. */
  readonly isNew: boolean;
};

export function PasswordField<Values extends FieldValues>({ isNew, ...rest }: PasswordFieldProps<Values>) {
  const [isShown, setIsShown] = useState(false);
  return (
    <div>
      <FormText
        {...rest}
        type={isShown ? 'text' : 'password'}
        autoComplete={isNew ? 'new-password' : 'current-password'}
        spellCheck="false"
      />
      <Checkbox isSelected={isShown} onChange={setIsShown}>
        Show what I type
      </Checkbox>
    </div>
  );
}
