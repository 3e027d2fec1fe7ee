'use client';

import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { fieldError, type ShownError } from '../../shared/data/shop-error.ts';

export type NewCustomer = { readonly name: string; readonly phone: string; readonly email: string };

export function NewCustomerFields({
  value,
  onChange,
  error,
}: {
  readonly value: NewCustomer;
  readonly onChange: (value: NewCustomer) => void;
  readonly error: ShownError | null;
}) {
  return (
    <FieldGrid cellMinPx={220}>
      <TextField
        label="Name"
        value={value.name}
        onChange={(name) => onChange({ ...value, name })}
        isRequired
        autoComplete="off"
        error={fieldError(error, 'input.name')}
      />
      <TextField
        label="Phone"
        type="tel"
        isOptional
        value={value.phone}
        onChange={(phone) => onChange({ ...value, phone })}
        error={fieldError(error, 'input.phone')}
      />
      <TextField
        label="E-mail"
        type="email"
        isOptional
        hint="The quote is sent here."
        value={value.email}
        onChange={(email) => onChange({ ...value, email })}
        error={fieldError(error, 'input.email')}
      />
    </FieldGrid>
  );
}
