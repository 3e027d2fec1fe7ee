'use client';

import { useFormContext } from 'react-hook-form';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormArea, FormNumber, FormPercent } from '../../shared/record/form-fields.tsx';
import type { ShopFormValues } from './shop-form.ts';

/** What every quote says under the price. */
export function TermSettings({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control } = useFormContext<ShopFormValues>();
  return (
    <>
      <FieldGrid cellMinPx={220}>
        <FormPercent
          control={control}
          name="settings.depositBasisPoints"
          label="Deposit"
          hint="Of the total, due with the approval"
          maxPercent={100}
          isReadOnly={isReadOnly}
        />
        <FormNumber
          control={control}
          name="settings.quoteValidDays"
          label="A quote holds, days"
          min={1}
          max={365}
          digits={0}
          isReadOnly={isReadOnly}
        />
      </FieldGrid>
      <FormArea
        control={control}
        name="settings.quoteTerms"
        label="Terms"
        hint="Printed on every quote as they stand here"
        rows={8}
        isReadOnly={isReadOnly}
      />
    </>
  );
}
