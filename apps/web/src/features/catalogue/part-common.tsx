'use client';

import { useQuery } from '@tanstack/react-query';
import { useFormContext } from 'react-hook-form';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { FormArea, FormMoney, FormNumber, FormSelect } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { PART_LABELS as L } from './part-labels.ts';
import type { PartValues } from './part-start.ts';
import { SupplierField } from './supplier-field.tsx';

const UNITS = [
  { id: 'each', label: 'Pieces' },
  { id: 'sheet', label: 'Sheets' },
  { id: 'm', label: 'Metres' },
  { id: 'm2', label: 'Square metres' },
  { id: 'litre', label: 'Litres' },
  { id: 'kg', label: 'Kilograms' },
  { id: 'pack', label: 'Packs' },
] as const;

export type PartCommonProps = {
  readonly isReadOnly: boolean;
  readonly knownSupplier: { readonly id: string; readonly name: string } | null;
};

/** What every part has: what it is called, where it comes from, what it costs, how many there are. */
export function PartCommon({ isReadOnly, knownSupplier }: PartCommonProps) {
  const { control } = useFormContext<PartValues>();
  const trpc = useTRPC();
  const seesMoney = useMay('money.read');
  const seesSuppliers = useMay('supplier.read');
  const suppliers = useQuery({ ...trpc.supplier.list.queryOptions({ limit: 200 }), enabled: seesSuppliers });
  return (
    <>
      <FieldSet title="Which part">
        <FieldGrid cellMinPx={200}>
          <FormText control={control} name="maker" label={L.maker} isOptional isReadOnly={isReadOnly} />
          <FormText control={control} name="name" label={L.name} isRequired isReadOnly={isReadOnly} />
          <FormText control={control} name="code" label={L.code} isOptional isReadOnly={isReadOnly} />
          <FormSelect control={control} name="unit" label={L.unit} options={UNITS} isReadOnly={isReadOnly} />
        </FieldGrid>
      </FieldSet>
      <FieldSet title={seesMoney ? 'Stock, supplier and price' : 'Stock'}>
        <FieldGrid cellMinPx={150}>
          <FormNumber
            control={control}
            name="stockQuantity"
            label={L.stockQuantity}
            min={0}
            max={1_000_000}
            digits={2}
            isReadOnly={isReadOnly}
          />
          {seesSuppliers ? (
            <SupplierField
              control={control}
              suppliers={suppliers.data?.rows ?? []}
              known={knownSupplier}
              isReadOnly={isReadOnly}
            />
          ) : null}
          <FormNumber
            control={control}
            name="leadDays"
            label={L.leadDays}
            isOptional
            hint="Empty: the supplier’s own"
            min={0}
            max={365}
            digits={0}
            isReadOnly={isReadOnly}
          />
          {seesMoney ? (
            <>
              <FormMoney
                control={control}
                name="buyPriceMinor"
                label={L.buyPriceMinor}
                isReadOnly={isReadOnly}
              />
              <FormMoney
                control={control}
                name="sellPriceMinor"
                label={L.sellPriceMinor}
                isReadOnly={isReadOnly}
              />
            </>
          ) : null}
        </FieldGrid>
      </FieldSet>
    </>
  );
}

/** What no figure says; last on the sheet. */
export function PartNotes({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control } = useFormContext<PartValues>();
  return (
    <FormArea control={control} name="notes" label={L.notes} isOptional rows={3} isReadOnly={isReadOnly} />
  );
}
