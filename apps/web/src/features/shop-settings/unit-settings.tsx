'use client';

import { useMemo } from 'react';
import { useFormContext } from 'react-hook-form';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { FormCombo, FormSelect } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import type { ShopFormValues } from './shop-form.ts';

const LENGTHS = [
  { id: 'mm', label: 'Millimetres' },
  { id: 'in', label: 'Inches' },
] as const;
const VOLUMES = [
  { id: 'litres', label: 'Litres' },
  { id: 'cubic-feet', label: 'Cubic feet' },
  { id: 'both', label: 'Both' },
] as const;
const PAPERS = (['A4', 'A3', 'Letter', 'Tabloid'] as const).map((id) => ({ id, label: id }));
const DENOMINATORS = (['8', '16', '32', '64'] as const).map((id) => ({ id, label: `1/${id} inch` }));
const DENOMINATOR_OF = { '8': 8, '16': 16, '32': 32, '64': 64 } as const;

/** How lengths, money, days and papers are written. */
export function UnitSettings({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control, watch, setValue } = useFormContext<ShopFormValues>();
  const [denominator, locale] = watch(['settings.inchDenominator', 'locale']);
  const currencies = useMemo(() => currencyOptions(locale), [locale]);
  const zones = useMemo(
    () => Intl.supportedValuesOf('timeZone').map((id) => ({ id, label: id.replaceAll('_', ' ') })),
    [],
  );
  return (
    <>
      <FieldSet title="Units">
        <FieldGrid cellMinPx={200}>
          <FormSelect
            control={control}
            name="settings.lengthUnit"
            label="The tape reads in"
            options={LENGTHS}
            isReadOnly={isReadOnly}
          />
          <Select
            label="Finest division of the inch"
            options={DENOMINATORS}
            value={DENOMINATORS.find(({ id }) => DENOMINATOR_OF[id] === denominator)?.id ?? '16'}
            onChange={(id) => setValue('settings.inchDenominator', DENOMINATOR_OF[id], { shouldDirty: true })}
            isDisabled={isReadOnly}
          />
          <FormSelect
            control={control}
            name="settings.volumeUnits"
            label="Volumes in"
            options={VOLUMES}
            isReadOnly={isReadOnly}
          />
          <FormSelect
            control={control}
            name="settings.paper"
            label="Paper in the printer"
            options={PAPERS}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
      <FieldSet title="Money, days and signs">
        <FieldGrid cellMinPx={240}>
          <FormCombo
            control={control}
            name="currency"
            label="Currency"
            hint="Prices keep their figures; they are not converted"
            options={currencies}
            isReadOnly={isReadOnly}
          />
          <FormCombo
            control={control}
            name="timeZone"
            label="Time zone"
            options={zones}
            isReadOnly={isReadOnly}
          />
          <FormText
            control={control}
            name="locale"
            label="Way of writing"
            hint={sample(locale)}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
    </>
  );
}

function currencyOptions(locale: string) {
  const names = new Intl.DisplayNames([knownLocale(locale)], { type: 'currency' });
  return Intl.supportedValuesOf('currency').map((id) => ({ id, label: `${id} · ${names.of(id) ?? ''}` }));
}

function knownLocale(locale: string): string {
  try {
    return Intl.getCanonicalLocales(locale)[0] ?? 'en-GB';
  } catch {
    return 'en-GB'; // RangeError: a tag that is still being typed
  }
}

/** What the tag means, by example. */
function sample(locale: string): string {
  const known = knownLocale(locale);
  const day = new Date(Date.UTC(2026, 11, 24, 12));
  return `A tag such as en-GB or de-DE: ${(1234.5).toLocaleString(known)}, ${day.toLocaleDateString(known)}`;
}
