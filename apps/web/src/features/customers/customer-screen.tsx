'use client';

import { customerInputSchema } from '@gusset/contracts/records';
import { useQueryClient } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { JobRows } from '../../shared/job/job-rows.tsx';
import { paths } from '../../shared/paths.ts';
import { ArchiveButton } from '../../shared/record/archive-button.tsx';
import { FormArea } from '../../shared/record/form-fields.tsx';
import { RecordPage } from '../../shared/record/record-page.tsx';
import { useRecordForm } from '../../shared/record/use-record-form.ts';
import { wholeListKey } from '../../shared/record/use-whole-list.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { CustomerVehicles } from './customer-vehicles.tsx';

export type Customer = ApiOutputs['customer']['read'];

const LABELS = { name: 'Name', phone: 'Phone', email: 'E-mail', address: 'Address', notes: 'Notes' } as const;
const EMPTY = { name: '', phone: '', email: '', address: '', notes: '' };

/** One customer: how to reach them, what they drive, what was built. Null makes a new one. */
export function CustomerScreen({ customer }: { readonly customer: Customer | null }) {
  const client = useTRPCClient();
  const queries = useQueryClient();
  const router = useRouter();
  const { shop } = useDisplay();
  const mayEdit = useMay('customer.edit');
  const refresh = () => void queries.invalidateQueries({ queryKey: wholeListKey('customer') });
  const form = useRecordForm({
    schema: customerInputSchema,
    start: customer === null ? EMPTY : inputOf(customer),
    record: customer,
    noun: 'Customer',
    create: (key, input) => client.customer.create.mutate({ key, input }),
    change: (at, input) => client.customer.change.mutate({ ...at, input }),
    onSaved: (saved, wasNew) => {
      refresh();
      if (wasNew) router.replace(paths.customer(saved.id));
      else router.refresh();
    },
  });
  const { control, watch } = form.form;
  const name = watch('name') || 'New customer';
  return (
    <RecordPage
      kicker="Customers"
      title={customer === null ? 'New customer' : name}
      verb={customer === null ? 'Add customer' : 'Save'}
      form={form}
      mayEdit={mayEdit}
      isArchived={customer?.archived}
      labels={LABELS}
      acts={
        customer === null ? null : (
          <ArchiveButton
            name={customer.name}
            isArchived={customer.archived}
            archive={(archived) => client.customer.archive.mutate({ id: customer.id, archived })}
            onDone={(saved) => {
              form.adopt(saved);
              refresh();
              router.refresh();
            }}
          />
        )
      }
      titleBlock={[
        { caption: 'Shop', value: shop.name, span: 2 },
        { caption: 'Customer', value: name, span: 3 },
        { caption: 'Vehicles', value: customer?.vehicleCount ?? 0, isFigures: true },
        { caption: 'Jobs', value: customer?.jobCount ?? 0, isFigures: true },
      ]}
      notes={
        customer === null ? undefined : (
          <>
            <CustomerVehicles customerId={customer.id} />
            <JobRows of={{ customerId: customer.id }} />
          </>
        )
      }
    >
      <FieldGrid cellMinPx={240}>
        <FormText control={control} name="name" label={LABELS.name} isReadOnly={!mayEdit} isRequired />
        <FormText
          control={control}
          name="phone"
          label={LABELS.phone}
          type="tel"
          isOptional
          isReadOnly={!mayEdit}
        />
        <FormText
          control={control}
          name="email"
          label={LABELS.email}
          type="email"
          isOptional
          hint="Quotes are sent here"
          isReadOnly={!mayEdit}
        />
      </FieldGrid>
      <FormArea
        control={control}
        name="address"
        label={LABELS.address}
        isOptional
        rows={3}
        isReadOnly={!mayEdit}
      />
      <FormArea
        control={control}
        name="notes"
        label={LABELS.notes}
        isOptional
        rows={5}
        isReadOnly={!mayEdit}
      />
    </RecordPage>
  );
}

function inputOf({ name, phone, email, address, notes }: Customer) {
  return { name, phone, email, address, notes };
}
