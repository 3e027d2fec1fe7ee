'use client';

import { type Control, useController } from 'react-hook-form';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { PART_LABELS as L } from './part-labels.ts';
import type { PartValues } from './part-start.ts';

export type SupplierFieldProps = {
  readonly control: Control<PartValues>;
  readonly suppliers: readonly { readonly id: string; readonly name: string; readonly leadDays: number }[];
  /** The one that is set, which may be archived by now. */
  readonly known: { readonly id: string; readonly name: string } | null;
  readonly isReadOnly: boolean;
};

export function SupplierField({ control, suppliers, known, isReadOnly }: SupplierFieldProps) {
  const { field, fieldState } = useController({ control, name: 'supplierId' });
  const listed = suppliers.map(({ id, name, leadDays }) => ({ id, label: name, detail: `${leadDays} days` }));
  const options =
    known === null || listed.some(({ id }) => id === known.id)
      ? listed
      : [{ id: known.id, label: known.name, detail: 'archived' }, ...listed];
  return (
    <ComboBox
      // The list comes after the form; the field then finds the name of what is set.
      key={listed.length}
      label={L.supplierId}
      isOptional
      options={options}
      value={field.value ?? null}
      onChange={field.onChange}
      noMatch="No supplier by that name"
      isDisabled={isReadOnly}
      error={fieldState.error?.message ?? null}
    />
  );
}
