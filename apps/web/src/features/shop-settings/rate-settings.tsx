'use client';

import { SKILL_NAME, SKILLS, type Skill } from '@gusset/contracts/shop';
import { useFormContext } from 'react-hook-form';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { MoneyField } from '../../shared/controls/money-field.tsx';
import { FormMoney, FormPercent } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import type { ShopFormValues } from './shop-form.ts';

/** What an hour and a board cost the customer, and below which margin a quote is held up. */
export function RateSettings({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control } = useFormContext<ShopFormValues>();
  return (
    <>
      <FieldSet title="An hour of work">
        <FieldGrid cellMinPx={200}>
          <FormMoney
            control={control}
            name="settings.labourRateMinor"
            label="Usual rate an hour"
            isReadOnly={isReadOnly}
          />
          {SKILLS.filter((skill) => skill !== 'any').map((skill) => (
            <SkillRate key={skill} skill={skill} isReadOnly={isReadOnly} />
          ))}
        </FieldGrid>
      </FieldSet>
      <FieldSet title="Added to what the shop buys">
        <FieldGrid cellMinPx={200}>
          <FormPercent
            control={control}
            name="settings.materialMarkupBasisPoints"
            label="On boards and materials"
            isReadOnly={isReadOnly}
          />
          <FormPercent
            control={control}
            name="settings.partMarkupBasisPoints"
            label="On parts"
            isReadOnly={isReadOnly}
          />
          <FormMoney
            control={control}
            name="settings.customerPartFeeMinor"
            label="Fitting a brought part"
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
      <FieldSet title="Supplies and margin">
        <FieldGrid cellMinPx={200}>
          <FormPercent
            control={control}
            name="settings.suppliesPercentOfLabourBasisPoints"
            label="Supplies, of labour"
            maxPercent={100}
            isReadOnly={isReadOnly}
          />
          <FormMoney
            control={control}
            name="settings.suppliesCapMinor"
            label="Supplies, at most"
            isReadOnly={isReadOnly}
          />
          <FormPercent
            control={control}
            name="settings.marginFloorBasisPoints"
            label="Lowest margin"
            hint="A quote below it is pointed out before it is sent"
            maxPercent={100}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
    </>
  );
}

/** A rate of its own for one skill; empty takes the usual one. */
function SkillRate({ skill, isReadOnly }: { readonly skill: Skill; readonly isReadOnly: boolean }) {
  const { watch, setValue } = useFormContext<ShopFormValues>();
  const { shop } = useDisplay();
  const rates = watch('settings.labourRateBySkillMinor');
  const minor = rates[skill];
  return (
    <MoneyField
      label={SKILL_NAME[skill]}
      isOptional
      isReadOnly={isReadOnly}
      value={minor === undefined ? null : { minor, currency: shop.currency }}
      onCommit={(amount) => {
        const { [skill]: _, ...others } = rates;
        const next = amount === null ? others : { ...others, [skill]: amount.minor };
        setValue('settings.labourRateBySkillMinor', next, { shouldDirty: true });
      }}
    />
  );
}
