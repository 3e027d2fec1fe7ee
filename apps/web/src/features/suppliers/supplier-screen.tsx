'use client';

import { supplierInputSchema } from '@gusset/contracts/records';
import { useQueryClient } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { paths } from '../../shared/paths.ts';
import { ArchiveButton } from '../../shared/record/archive-button.tsx';
import { FormArea, FormNumber, FormSelect } from '../../shared/record/form-fields.tsx';
import { RecordPage } from '../../shared/record/record-page.tsx';
import { useRecordForm } from '../../shared/record/use-record-form.ts';
import { wholeListKey } from '../../shared/record/use-whole-list.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';

export type Supplier = ApiOutputs['supplier']['read'];

const LABELS = {
  name: 'Name',
  kind: 'Kind',
  contact: 'Contact',
  email: 'E-mail',
  phone: 'Phone',
  leadDays: 'Lead time',
  terms: 'Terms',
} as const;

const KINDS = [
  { id: 'supplier', label: 'Supplier', detail: 'sells to the shop' },
  { id: 'sponsor', label: 'Sponsor', detail: 'gives, for something in return' },
] as const;

const EMPTY = {
  name: '',
  kind: 'supplier' as const,
  contact: '',
  email: '',
  phone: '',
  leadDays: 3,
  terms: '',
};

/** One supplier or sponsor. Null makes a new one. */
export function SupplierScreen({ supplier }: { readonly supplier: Supplier | null }) {
  const client = useTRPCClient();
  const queries = useQueryClient();
  const router = useRouter();
  const { shop } = useDisplay();
  const isReadOnly = !useMay('supplier.edit');
  const refresh = () => void queries.invalidateQueries({ queryKey: wholeListKey('supplier') });
  const form = useRecordForm({
    schema: supplierInputSchema,
    start: supplier === null ? EMPTY : inputOf(supplier),
    record: supplier,
    noun: 'Supplier',
    create: (key, input) => client.supplier.create.mutate({ key, input }),
    change: (at, input) => client.supplier.change.mutate({ ...at, input }),
    onSaved: (saved, wasNew) => {
      refresh();
      if (wasNew) router.replace(paths.supplier(saved.id));
      else router.refresh();
    },
  });
  const { control, watch } = form.form;
  const [name, kind, leadDays] = watch(['name', 'kind', 'leadDays']);
  return (
    <RecordPage
      kicker="Suppliers"
      title={supplier === null ? 'New supplier' : name}
      verb={supplier === null ? 'Add supplier' : 'Save'}
      form={form}
      mayEdit={!isReadOnly}
      isArchived={supplier?.archived}
      labels={LABELS}
      acts={
        supplier === null ? null : (
          <ArchiveButton
            name={supplier.name}
            isArchived={supplier.archived}
            archive={(archived) => client.supplier.archive.mutate({ id: supplier.id, archived })}
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
        { caption: kind === 'sponsor' ? 'Sponsor' : 'Supplier', value: name || 'not named yet', span: 3 },
        { caption: 'Lead time', value: `${leadDays ?? 0} days`, isFigures: true },
        { caption: 'Parts', value: supplier?.partCount ?? 0, isFigures: true },
      ]}
    >
      <FieldGrid cellMinPx={220}>
        <FormText control={control} name="name" label={LABELS.name} isRequired isReadOnly={isReadOnly} />
        <FormSelect
          control={control}
          name="kind"
          label={LABELS.kind}
          options={KINDS}
          isReadOnly={isReadOnly}
        />
        <FormNumber
          control={control}
          name="leadDays"
          label="Lead time, days"
          hint="From the order to the shop’s door"
          min={0}
          max={365}
          digits={0}
          isReadOnly={isReadOnly}
        />
        <FormText
          control={control}
          name="contact"
          label={LABELS.contact}
          isOptional
          isReadOnly={isReadOnly}
        />
        <FormText
          control={control}
          name="email"
          label={LABELS.email}
          type="email"
          isOptional
          isReadOnly={isReadOnly}
        />
        <FormText
          control={control}
          name="phone"
          label={LABELS.phone}
          type="tel"
          isOptional
          isReadOnly={isReadOnly}
        />
      </FieldGrid>
      <FormArea
        control={control}
        name="terms"
        label={LABELS.terms}
        hint={
          kind === 'sponsor' ? 'What was agreed, and until when' : 'Payment, minimum order, what can go back'
        }
        isOptional
        rows={5}
        isReadOnly={isReadOnly}
      />
    </RecordPage>
  );
}

function inputOf({ name, kind, contact, email, phone, leadDays, terms }: Supplier) {
  return { name, kind, contact, email, phone, leadDays, terms };
}
