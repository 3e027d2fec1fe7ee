'use client';

import { useFormContext } from 'react-hook-form';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { FormArea } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import styles from './letterhead.module.css';
import type { ShopFormValues } from './shop-form.ts';

/** What stands on every paper that leaves the shop, and how it will look there. */
export function DetailSettings({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control, watch } = useFormContext<ShopFormValues>();
  const [name, letterhead] = watch(['name', 'settings.letterhead']);
  return (
    <>
      <figure className={styles.paper} aria-label="Letterhead as it prints">
        <div className={styles.head}>
          <strong>{name}</strong>
          <p>{letterhead.address || 'Address'}</p>
          <p>{[letterhead.phone, letterhead.email].filter(Boolean).join(' · ') || 'Phone · e-mail'}</p>
          {letterhead.taxNumber ? <p>{letterhead.taxNumber}</p> : null}
        </div>
        <div className={styles.lines} aria-hidden="true" />
      </figure>
      <FieldSet title="Shop">
        <FieldGrid cellMinPx={240}>
          <FormText control={control} name="name" label="Name" isRequired isReadOnly={isReadOnly} />
          <FormText
            control={control}
            name="settings.letterhead.phone"
            label="Phone"
            type="tel"
            isOptional
            isReadOnly={isReadOnly}
          />
          <FormText
            control={control}
            name="settings.letterhead.email"
            label="E-mail"
            type="email"
            isOptional
            isReadOnly={isReadOnly}
          />
          <FormText
            control={control}
            name="settings.letterhead.taxNumber"
            label="Tax number"
            isOptional
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
        <FormArea
          control={control}
          name="settings.letterhead.address"
          label="Address"
          isOptional
          rows={3}
          isReadOnly={isReadOnly}
        />
      </FieldSet>
    </>
  );
}
