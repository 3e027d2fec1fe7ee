'use client';

import { useFieldArray, useFormContext } from 'react-hook-form';
import { Button } from '../../shared/controls/button.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { FormCheckbox, FormPercent, FormSelect } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import type { ShopFormValues } from './shop-form.ts';
import styles from './tax-settings.module.css';

const MOST_CODES = 12;
const NOT_TAXED = 'none';

const LINE_KINDS = [
  { kind: 'material', label: 'Boards and materials' },
  { kind: 'part', label: 'Parts' },
  { kind: 'labour', label: 'Labour' },
  { kind: 'supplies', label: 'Supplies' },
  { kind: 'subcontract', label: 'Work given out' },
  { kind: 'other', label: 'Anything else' },
] as const;

const ROUNDINGS = [
  { id: 'per-line', label: 'Each line' },
  { id: 'per-document', label: 'The whole paper' },
] as const;

/** Taxes as the shop's papers state them. */
export function TaxSettings({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control, watch } = useFormContext<ShopFormValues>();
  const codes = useFieldArray({ control, name: 'settings.taxCodes' });
  const named = watch('settings.taxCodes');
  return (
    <>
      <p>Rates and rules are the shop’s to settle with its tax adviser. The program only multiplies.</p>
      <FieldSet title="Rates">
        {codes.fields.map((code, index) => (
          <div key={code.id} className={styles.code}>
            <FormText
              control={control}
              name={`settings.taxCodes.${index}.code`}
              label="Short name"
              isReadOnly={isReadOnly}
            />
            <FormText
              control={control}
              name={`settings.taxCodes.${index}.name`}
              label="On paper"
              isReadOnly={isReadOnly}
            />
            <FormPercent
              control={control}
              name={`settings.taxCodes.${index}.rateBasisPoints`}
              label="Rate"
              maxPercent={100}
              isReadOnly={isReadOnly}
            />
            {isReadOnly || codes.fields.length === 1 ? null : (
              <Button look="quiet" onPress={() => codes.remove(index)}>
                Remove
              </Button>
            )}
          </div>
        ))}
        {isReadOnly || codes.fields.length >= MOST_CODES ? null : (
          <div>
            <Button onPress={() => codes.append({ code: '', name: '', rateBasisPoints: 0 })}>
              Add a rate
            </Button>
          </div>
        )}
      </FieldSet>
      <FieldSet title="Which rate each kind of line takes">
        <FieldGrid cellMinPx={200}>
          {LINE_KINDS.map(({ kind, label }) => (
            <TaxOfKind key={kind} kind={kind} label={label} codes={named} isReadOnly={isReadOnly} />
          ))}
        </FieldGrid>
      </FieldSet>
      <FieldSet title="On paper">
        <FieldGrid cellMinPx={240}>
          <FormCheckbox
            control={control}
            name="settings.pricesIncludeTax"
            label="Prices are typed with tax in them"
            isReadOnly={isReadOnly}
          />
          <FormSelect
            control={control}
            name="settings.taxRounding"
            label="Cents are rounded for"
            options={ROUNDINGS}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
    </>
  );
}

type TaxOfKindProps = {
  readonly kind: (typeof LINE_KINDS)[number]['kind'];
  readonly label: string;
  readonly codes: ShopFormValues['settings']['taxCodes'];
  readonly isReadOnly: boolean;
};

function TaxOfKind({ kind, label, codes, isReadOnly }: TaxOfKindProps) {
  const { watch, setValue } = useFormContext<ShopFormValues>();
  const chosen = watch(`settings.taxCodeByKind.${kind}`);
  const isGone = chosen !== null && !codes.some(({ code }) => code === chosen);
  return (
    <Select
      label={label}
      options={[
        ...codes
          .filter(({ code }) => code !== '')
          .map(({ code, name }) => ({ id: code, label: code, detail: name })),
        { id: NOT_TAXED, label: 'Not taxed' },
      ]}
      value={isGone ? null : (chosen ?? NOT_TAXED)}
      onChange={(id) =>
        setValue(`settings.taxCodeByKind.${kind}`, id === NOT_TAXED ? null : id, { shouldDirty: true })
      }
      isDisabled={isReadOnly}
      error={isGone ? `There is no rate ${chosen} any more. Choose one.` : null}
    />
  );
}
