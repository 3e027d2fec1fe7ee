'use client';

import { vehicleInputSchema } from '@gusset/contracts/records';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { JobRows } from '../../shared/job/job-rows.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { paths } from '../../shared/paths.ts';
import { ArchiveButton } from '../../shared/record/archive-button.tsx';
import { FormArea, FormCombo, FormNumber } from '../../shared/record/form-fields.tsx';
import { RecordPage } from '../../shared/record/record-page.tsx';
import { useRecordForm } from '../../shared/record/use-record-form.ts';
import { wholeListKey } from '../../shared/record/use-whole-list.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { BODY_WORDS, yearsWords } from './body-words.ts';

export type Vehicle = ApiOutputs['vehicle']['read'];

const LABELS = {
  customerId: 'Customer',
  modelId: 'Model',
  plate: 'Plate',
  year: 'Year',
  colour: 'Colour',
  notes: 'Notes',
} as const;

export type VehicleScreenProps = {
  /** Null makes a new one. */
  readonly vehicle: Vehicle | null;
  /** Whose new vehicle it is, where the page was opened from a customer. */
  readonly customerId?: string;
};

/** One car: whose, which model, which plate. */
export function VehicleScreen({ vehicle, customerId = '' }: VehicleScreenProps) {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const queries = useQueryClient();
  const router = useRouter();
  const { shop } = useDisplay();
  const isReadOnly = !useMay('vehicle.edit');
  const [customerSearch, setCustomerSearch] = useState('');
  const [modelSearch, setModelSearch] = useState('');
  const customers = useQuery(trpc.customer.list.queryOptions({ search: customerSearch, limit: 30 }));
  const models = useQuery(trpc.vehicleModel.list.queryOptions({ search: modelSearch, limit: 30 }));
  const chosenId = vehicle?.customerId ?? customerId;
  const chosen = useQuery({
    ...trpc.customer.read.queryOptions({ id: chosenId }),
    enabled: vehicle === null && customerId !== '',
  });
  const refresh = () => {
    void queries.invalidateQueries({ queryKey: wholeListKey('vehicle') });
    void queries.invalidateQueries({ queryKey: trpc.vehicle.pathKey() });
  };
  const form = useRecordForm({
    schema: vehicleInputSchema,
    start:
      vehicle === null
        ? { customerId, modelId: '', plate: '', year: null, colour: '', notes: '' }
        : inputOf(vehicle),
    record: vehicle,
    noun: 'Vehicle',
    create: (key, input) => client.vehicle.create.mutate({ key, input }),
    change: (at, input) => client.vehicle.change.mutate({ ...at, input }),
    onSaved: (saved, wasNew) => {
      refresh();
      if (wasNew) router.replace(paths.vehicle(saved.id));
      else router.refresh();
    },
  });
  const { control, watch } = form.form;
  const plate = watch('plate');
  // The one that is chosen stays among the choices, whatever is searched for.
  const known =
    vehicle === null ? (chosen.data ?? null) : { id: vehicle.customerId, name: vehicle.customerName };
  const customerOptions = [
    ...(known === null ? [] : [{ id: known.id, label: known.name }]),
    ...(customers.data?.rows ?? [])
      .filter(({ id }) => id !== known?.id)
      .map((row) => ({ id: row.id, label: row.name, detail: row.phone || row.email })),
  ];
  const modelOptions = [
    ...(vehicle === null ? [] : [{ id: vehicle.modelId, label: vehicle.name }]),
    ...(models.data?.rows ?? [])
      .filter(({ id }) => id !== vehicle?.modelId)
      .map((row) => ({
        id: row.id,
        label: `${row.make} ${row.model}`,
        detail: [BODY_WORDS[row.body], yearsWords(row.yearFrom, row.yearTo)].filter(Boolean).join(', '),
      })),
  ];
  return (
    <RecordPage
      kicker="Vehicles"
      title={vehicle === null ? 'New vehicle' : `${vehicle.name}${plate ? `, ${plate}` : ''}`}
      verb={vehicle === null ? 'Add vehicle' : 'Save'}
      form={form}
      mayEdit={!isReadOnly}
      isArchived={vehicle?.archived}
      labels={LABELS}
      showValue={(path, value) => {
        const options = path === 'customerId' ? customerOptions : path === 'modelId' ? modelOptions : [];
        return options.find(({ id }) => id === value)?.label ?? null;
      }}
      acts={
        vehicle === null ? null : (
          <ArchiveButton
            name={vehicle.plate || vehicle.name}
            isArchived={vehicle.archived}
            archive={(archived) => client.vehicle.archive.mutate({ id: vehicle.id, archived })}
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
        { caption: 'Vehicle', value: vehicle?.name ?? 'not chosen yet', span: 3 },
        { caption: 'Customer', value: known?.name ?? 'not chosen yet', span: 2 },
        { caption: 'Plate', value: plate || 'none', isFigures: true },
      ]}
      notes={
        vehicle === null ? undefined : (
          <>
            <Rows title="Belongs to">
              <Row label="Customer" isWords>
                <Link href={paths.customer(vehicle.customerId)}>{vehicle.customerName}</Link>
              </Row>
              <Row label="Model" isWords>
                <Link href={paths.vehicleModel(vehicle.modelId)}>{vehicle.name}</Link>
              </Row>
            </Rows>
            <JobRows of={{ vehicleId: vehicle.id }} />
          </>
        )
      }
    >
      <FieldGrid cellMinPx={260}>
        <FormCombo
          control={control}
          name="customerId"
          label={LABELS.customerId}
          options={customerOptions}
          onSearch={setCustomerSearch}
          isSearching={customers.isFetching}
          noMatch="No customer by that name"
          isReadOnly={isReadOnly}
        />
        <FormCombo
          control={control}
          name="modelId"
          label={LABELS.modelId}
          options={modelOptions}
          onSearch={setModelSearch}
          isSearching={models.isFetching}
          noMatch="No model by that name; add it under Models"
          isReadOnly={isReadOnly}
        />
      </FieldGrid>
      <FieldGrid cellMinPx={180}>
        <FormText
          control={control}
          name="plate"
          label={LABELS.plate}
          isOptional
          hint="As it stands on the car"
          isReadOnly={isReadOnly}
        />
        <FormNumber
          control={control}
          name="year"
          label={LABELS.year}
          isOptional
          min={1900}
          max={2100}
          digits={0}
          isReadOnly={isReadOnly}
        />
        <FormText control={control} name="colour" label={LABELS.colour} isOptional isReadOnly={isReadOnly} />
      </FieldGrid>
      <FormArea
        control={control}
        name="notes"
        label={LABELS.notes}
        hint="Scratches on arrival, wheel lock, who else drives it"
        isOptional
        rows={4}
        isReadOnly={isReadOnly}
      />
    </RecordPage>
  );
}

function inputOf({ customerId, modelId, plate, year, colour, notes }: Vehicle) {
  return { customerId, modelId, plate, year, colour, notes };
}
