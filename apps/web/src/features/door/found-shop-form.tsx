'use client';

import { type FoundShopInput, foundShopSchema } from '@gusset/contracts/shop';
import { zodResolver } from '@hookform/resolvers/zod';
import { useMutation } from '@tanstack/react-query';
import { useMemo } from 'react';
import { Controller, useForm } from 'react-hook-form';
import type { z } from 'zod';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import type { Option } from '../../shared/controls/option.ts';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { paths } from '../../shared/paths.ts';
import { DoorForm } from './door-form.tsx';

const optionsOf = (ids: readonly string[], labelOf: (id: string) => string): readonly Option[] =>
  ids.map((id) => ({ id, label: labelOf(id) }));

const currencyOptions = (locale: string): readonly Option[] => {
  const names = new Intl.DisplayNames([locale], { type: 'currency' });
  return optionsOf(Intl.supportedValuesOf('currency'), (code) => `${code} · ${names.of(code) ?? ''}`);
};

/** All zones that the browser knows; its own and UTC, which the list may leave out, first. */
const zoneOptions = (): readonly Option[] => {
  const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const zones = new Set([own, 'UTC', ...Intl.supportedValuesOf('timeZone')]);
  return optionsOf([...zones], (zone) => zone.replaceAll('_', ' '));
};

/** The few things asked once about a shop; all can be changed later. */
export function FoundShopForm({ ownerName }: { readonly ownerName: string }) {
  const trpc = useTRPC();
  const found = useMutation(trpc.shop.found.mutationOptions());
  const locale = typeof navigator === 'undefined' ? 'en-GB' : navigator.language;
  const currencies = useMemo(() => currencyOptions(locale), [locale]);
  const zones = useMemo(zoneOptions, []);
  const form = useForm<z.input<typeof foundShopSchema>, unknown, FoundShopInput>({
    resolver: zodResolver(foundShopSchema),
    defaultValues: {
      name: '',
      ownerName,
      timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      currency: '',
      locale,
      lengthUnit: 'mm',
    },
  });

  const create = form.handleSubmit(async (values) => {
    try {
      await found.mutateAsync(values);
    } catch (error) {
      const shown = shownError(error);
      for (const { path, message } of shown.fields) {
        if (path in values) form.setError(path as keyof FoundShopInput, { message });
      }
      form.setError('root', { message: shown.message });
      return;
    }
    window.location.assign(paths.today());
  });

  return (
    <DoorForm
      title="Set up the shop"
      verb="Open the shop"
      isPending={form.formState.isSubmitting}
      problem={form.formState.errors.root?.message ?? null}
      onSubmit={create}
    >
      <FormText control={form.control} name="name" label="Shop" autoComplete="organization" autoFocus />
      <Controller
        control={form.control}
        name="currency"
        render={({ field, fieldState }) => (
          <ComboBox
            label="Currency"
            options={currencies}
            value={field.value || null}
            onChange={(id) => field.onChange(id ?? '')}
            placeholder="GBP, EUR, USD …"
            noMatch="No currency by that name"
            error={fieldState.error?.message ?? null}
          />
        )}
      />
      <Controller
        control={form.control}
        name="timeZone"
        render={({ field, fieldState }) => (
          <ComboBox
            label="Time zone"
            options={zones}
            value={field.value || null}
            onChange={(id) => field.onChange(id ?? '')}
            noMatch="No zone by that name"
            error={fieldState.error?.message ?? null}
          />
        )}
      />
      <Controller
        control={form.control}
        name="lengthUnit"
        render={({ field, fieldState }) => (
          <RadioGroup
            label="The tape reads in"
            isRow
            value={field.value}
            onChange={field.onChange}
            options={[
              { id: 'mm', label: 'Millimetres' },
              { id: 'in', label: 'Inches' },
            ]}
            error={fieldState.error?.message ?? null}
          />
        )}
      />
    </DoorForm>
  );
}
