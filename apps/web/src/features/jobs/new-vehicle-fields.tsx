'use client';

import { BODY_STYLES } from '@gusset/contracts/records';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { fieldError, type ShownError } from '../../shared/data/shop-error.ts';

export type NewVehicle = {
  /** A model that the shop knows; null = a new one by make and model. */
  readonly modelId: string | null;
  readonly make: string;
  readonly model: string;
  readonly body: (typeof BODY_STYLES)[number];
  readonly year: number | null;
  readonly plate: string;
};

const NEW_MODEL = 'new';
const BODY_WORDS: Readonly<Record<(typeof BODY_STYLES)[number], string>> = {
  saloon: 'Saloon',
  hatch: 'Hatchback',
  estate: 'Estate',
  coupe: 'Coupe',
  van: 'Van',
  pickup: 'Pickup',
  suv: 'Off-roader',
};

export function NewVehicleFields({
  value,
  onChange,
  error,
}: {
  readonly value: NewVehicle;
  readonly onChange: (value: NewVehicle) => void;
  readonly error: ShownError | null;
}) {
  const trpc = useTRPC();
  const [search, setSearch] = useState('');
  const models = useQuery(trpc.vehicleModel.list.queryOptions({ search, limit: 20 }));
  const known = (models.data?.rows ?? []).map((row) => ({
    id: row.id,
    label: `${row.make} ${row.model}`,
    detail: [
      BODY_WORDS[row.body],
      row.surveyCount > 0 ? `measured ${row.surveyCount} times` : 'not measured yet',
    ].join(' · '),
  }));
  return (
    <FieldGrid cellMinPx={220}>
      <ComboBox
        label="Model"
        hint="Measured once, a model serves every later job."
        options={[{ id: NEW_MODEL, label: 'A new model', detail: 'make and model below' }, ...known]}
        value={value.modelId ?? NEW_MODEL}
        onChange={(id) => onChange({ ...value, modelId: id === NEW_MODEL ? null : id })}
        onSearch={setSearch}
        isSearching={models.isFetching}
      />
      {value.modelId === null ? (
        <>
          <TextField
            label="Make"
            value={value.make}
            onChange={(make) => onChange({ ...value, make })}
            isRequired
            error={fieldError(error, 'input.make')}
          />
          <TextField
            label="Model name"
            value={value.model}
            onChange={(model) => onChange({ ...value, model })}
            isRequired
            error={fieldError(error, 'input.model')}
          />
          <Select
            label="Body"
            options={BODY_STYLES.map((body) => ({ id: body, label: BODY_WORDS[body] }))}
            value={value.body}
            onChange={(body) => onChange({ ...value, body })}
          />
        </>
      ) : null}
      <NumberField
        label="Year"
        isOptional
        min={1900}
        max={2100}
        digits={0}
        value={value.year}
        onCommit={(figure) => onChange({ ...value, year: figure === null ? null : Math.round(figure.value) })}
        error={fieldError(error, 'input.year')}
      />
      <TextField
        label="Plate"
        isOptional
        value={value.plate}
        onChange={(plate) => onChange({ ...value, plate })}
        error={fieldError(error, 'input.plate')}
      />
    </FieldGrid>
  );
}
