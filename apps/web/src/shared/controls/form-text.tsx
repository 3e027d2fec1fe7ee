'use client';

import { type Control, type FieldPath, type FieldValues, useController } from 'react-hook-form';
import { TextField, type TextFieldProps } from './text-field.tsx';

export type FormTextProps<Values extends FieldValues> = Omit<
  TextFieldProps,
  'value' | 'onChange' | 'onBlur' | 'error' | 'name' | 'inputRef' | 'defaultValue'
> & {
  readonly control: Control<Values>;
  readonly name: FieldPath<Values>;
};

/** A TextField in a react-hook-form: its error comes from the form's schema, the first mistake gets the focus. */
export function FormText<Values extends FieldValues>({ control, name, ...rest }: FormTextProps<Values>) {
  const { field, fieldState } = useController({ control, name });
  return (
    <TextField
      {...rest}
      name={field.name}
      value={field.value ?? ''}
      onChange={field.onChange}
      onBlur={field.onBlur}
      inputRef={field.ref}
      error={fieldState.error?.message ?? null}
    />
  );
}
