'use client';

import { type VehicleModelInput, vehicleModelInputSchema } from '@gusset/contracts/records';
import { parseMass } from '@gusset/units';
import { useQueryClient } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { paths } from '../../shared/paths.ts';
import { ArchiveButton } from '../../shared/record/archive-button.tsx';
import {
  FormArea,
  FormLength,
  FormNumber,
  FormQuantity,
  FormSelect,
} from '../../shared/record/form-fields.tsx';
import { FieldSet, RecordPage } from '../../shared/record/record-page.tsx';
import { useRecordForm } from '../../shared/record/use-record-form.ts';
import { wholeListKey } from '../../shared/record/use-whole-list.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { BODY_OPTIONS, BODY_WORDS, POWERTRAIN_OPTIONS, yearsWords } from './body-words.ts';
import { ModelVehicles } from './model-vehicles.tsx';

export type VehicleModel = ApiOutputs['vehicleModel']['read'];

const LABELS = {
  make: 'Make',
  model: 'Model name',
  body: 'Body',
  yearFrom: 'First year',
  yearTo: 'Last year',
  powertrain: 'Powertrain',
  payloadKg: 'Occupants and cargo, from the placard',
  longestCabinM: 'Longest inside length of the cabin',
  notes: 'Notes',
} as const;

const EMPTY: VehicleModelInput = {
  make: '',
  model: '',
  body: 'hatch',
  yearFrom: null,
  yearTo: null,
  powertrain: 'unknown',
  payloadKg: null,
  longestCabinM: null,
  notes: '',
};

const MM_PER_M = 1000;
const kilograms = (text: string) => {
  const mass = parseMass(text, { unit: 'kg' });
  return 'refusal' in mass ? mass : mass.kg;
};

/** One model: what every car of it has in common, and its surveys. Null makes a new one. */
export function ModelScreen({ model }: { readonly model: VehicleModel | null }) {
  const client = useTRPCClient();
  const queries = useQueryClient();
  const router = useRouter();
  const { shop } = useDisplay();
  const isReadOnly = !useMay('vehicle.edit');
  const refresh = () => void queries.invalidateQueries({ queryKey: wholeListKey('vehicleModel') });
  const form = useRecordForm({
    schema: vehicleModelInputSchema,
    start: model === null ? EMPTY : inputOf(model),
    record: model,
    noun: 'Model',
    create: (key, input) => client.vehicleModel.create.mutate({ key, input }),
    change: (at, input) => client.vehicleModel.change.mutate({ ...at, input }),
    onSaved: (saved, wasNew) => {
      refresh();
      if (wasNew) router.replace(paths.vehicleModel(saved.id));
      else router.refresh();
    },
  });
  const { control, watch } = form.form;
  const [make, name, body, yearFrom, yearTo, powertrain] = watch([
    'make',
    'model',
    'body',
    'yearFrom',
    'yearTo',
    'powertrain',
  ]);
  return (
    <RecordPage
      kicker="Vehicle models"
      title={model === null ? 'New vehicle model' : `${make} ${name}`}
      verb={model === null ? 'Add model' : 'Save'}
      form={form}
      mayEdit={!isReadOnly}
      isArchived={model?.archived}
      labels={LABELS}
      acts={
        model === null ? null : (
          <ArchiveButton
            name={`${model.make} ${model.model}`}
            isArchived={model.archived}
            archive={(archived) => client.vehicleModel.archive.mutate({ id: model.id, archived })}
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
        { caption: 'Model', value: `${make} ${name}`.trim() || 'not named yet', span: 3 },
        { caption: 'Body', value: BODY_WORDS[body] },
        {
          caption: 'Years',
          value: yearsWords(yearFrom ?? null, yearTo ?? null) || 'not known',
          isFigures: true,
        },
        {
          caption: 'Surveys',
          value: model === null || model.surveyCount === 0 ? 'not measured' : model.surveyCount,
          ...(model === null || model.surveyCount === 0 ? { tone: 'pencil' as const } : {}),
        },
      ]}
      notes={
        model === null ? undefined : (
          <>
            <div>
              <Rows title="Cargo space">
                <Row label="Surveys" isWords={model.surveyCount === 0}>
                  {model.surveyCount === 0 ? 'not measured yet' : model.surveyCount}
                </Row>
              </Rows>
              <p>
                <LinkButton href={paths.modelSurveys(model.id)}>
                  {model.surveyCount === 0 ? 'Measure this model' : 'Open the surveys'}
                </LinkButton>{' '}
                <LinkButton href={paths.modelInCar(model.id)}>In this car</LinkButton>
              </p>
            </div>
            <ModelVehicles modelId={model.id} />
          </>
        )
      }
    >
      {powertrain === 'electric' || powertrain === 'hybrid' ? (
        <Caution>
          High voltage on board. Orange cables and everything they lead to are for people trained on
          high-voltage vehicles. Follow the maker’s isolation steps before any work near them.
        </Caution>
      ) : null}
      <FieldSet title="Which model">
        <FieldGrid cellMinPx={190}>
          <FormText control={control} name="make" label={LABELS.make} isRequired isReadOnly={isReadOnly} />
          <FormText control={control} name="model" label={LABELS.model} isRequired isReadOnly={isReadOnly} />
          <FormSelect
            control={control}
            name="body"
            label={LABELS.body}
            options={BODY_OPTIONS}
            isReadOnly={isReadOnly}
          />
          <FormNumber
            control={control}
            name="yearFrom"
            label={LABELS.yearFrom}
            isOptional
            min={1900}
            max={2100}
            digits={0}
            isReadOnly={isReadOnly}
          />
          <FormNumber
            control={control}
            name="yearTo"
            label={LABELS.yearTo}
            isOptional
            hint="Empty while it is still built"
            min={1900}
            max={2100}
            digits={0}
            isReadOnly={isReadOnly}
          />
          <FormSelect
            control={control}
            name="powertrain"
            label={LABELS.powertrain}
            options={POWERTRAIN_OPTIONS}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
      <FieldSet title="What it bears and holds">
        <FieldGrid cellMinPx={260}>
          <FormQuantity
            control={control}
            name="payloadKg"
            label={LABELS.payloadKg}
            isOptional
            hint="On the sticker in the driver’s door frame; the box and its gear count against it"
            unitText="kg"
            parse={kilograms}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="longestCabinM"
            label={LABELS.longestCabinM}
            isOptional
            hint="Footwell to tailgate: where the cabin begins to lift the bass"
            scale={MM_PER_M}
            minMm={500}
            maxMm={12_000}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
      <FormArea
        control={control}
        name="notes"
        label={LABELS.notes}
        isOptional
        rows={4}
        isReadOnly={isReadOnly}
      />
    </RecordPage>
  );
}

function inputOf(model: VehicleModel): VehicleModelInput {
  const { make, body, yearFrom, yearTo, powertrain, payloadKg, longestCabinM, notes } = model;
  return { make, model: model.model, body, yearFrom, yearTo, powertrain, payloadKg, longestCabinM, notes };
}
