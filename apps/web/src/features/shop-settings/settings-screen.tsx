'use client';

import { useRouter } from 'next/navigation';
import type { ReactNode } from 'react';
import { FormProvider } from 'react-hook-form';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { RecordPage } from '../../shared/record/record-page.tsx';
import { useRecordForm } from '../../shared/record/use-record-form.ts';
import { useMay } from '../../shared/shell/person.tsx';
import { ClearanceSettings } from './clearance-settings.tsx';
import { DetailSettings } from './detail-settings.tsx';
import { HourSettings } from './hour-settings.tsx';
import { RateSettings } from './rate-settings.tsx';
import { type ShopForm, type ShopFormValues, shopFormPath, shopFormSchema } from './shop-form.ts';
import { ShopSections } from './shop-sections.tsx';
import { TaxSettings } from './tax-settings.tsx';
import { TermSettings } from './term-settings.tsx';
import { UnitSettings } from './unit-settings.tsx';

export type ShopRecord = ApiOutputs['shop']['current']['shop'];

export type SettingsPage = 'details' | 'units' | 'hours' | 'rates' | 'taxes' | 'terms' | 'saw';

type Fields = (props: { readonly isReadOnly: boolean }) => ReactNode;

const PAGES: Readonly<Record<SettingsPage, { readonly title: string; readonly fields: Fields }>> = {
  details: { title: 'Details and letterhead', fields: DetailSettings },
  units: { title: 'Units and paper', fields: UnitSettings },
  hours: { title: 'Hours and closed days', fields: HourSettings },
  rates: { title: 'Rates and margins', fields: RateSettings },
  taxes: { title: 'Taxes', fields: TaxSettings },
  terms: { title: 'Terms', fields: TermSettings },
  saw: { title: 'Clearances and saw', fields: ClearanceSettings },
};

/** One page of the shop's settings; all pages are one sheet that is saved as a whole. */
export function SettingsScreen({ shop, page }: { readonly shop: ShopRecord; readonly page: SettingsPage }) {
  const client = useTRPCClient();
  const router = useRouter();
  const mayEdit = useMay('shop.edit');
  const { title, fields: PageFields } = PAGES[page];
  const form = useRecordForm<ShopFormValues, ShopForm, { id: string; version: number; archived: boolean }>({
    schema: shopFormSchema,
    start: {
      name: shop.name,
      timeZone: shop.timeZone,
      currency: shop.currency,
      locale: shop.locale,
      settings: shop.settings,
    },
    record: { id: shop.id, version: shop.version, archived: false },
    noun: 'Settings',
    pathOf: shopFormPath,
    create: () => Promise.reject(new Error('a shop is founded, never made here')),
    change: async ({ version }, input) => {
      const saved = await client.shop.change.mutate({ version, ...input });
      return { id: saved.id, version: saved.version, archived: false };
    },
    onSaved: () => router.refresh(),
  });
  return (
    <FormProvider {...form.form}>
      <RecordPage
        kicker="Shop"
        title={title}
        verb="Save"
        form={form}
        mayEdit={mayEdit}
        labels={{}}
        above={<ShopSections here={page} />}
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 3 },
          { caption: 'Sheet', value: title, span: 2 },
          { caption: 'Version', value: shop.version, isFigures: true },
        ]}
      >
        <PageFields isReadOnly={!mayEdit} />
      </RecordPage>
    </FormProvider>
  );
}
