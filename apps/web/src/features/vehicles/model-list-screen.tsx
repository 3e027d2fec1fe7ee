'use client';

import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { paths } from '../../shared/paths.ts';
import { RecordList } from '../../shared/record/record-list.tsx';
import type { DataColumn, FilterChip } from '../../shared/table/data-column.ts';
import { BODY_WORDS, POWERTRAIN_WORDS, yearsWords } from './body-words.ts';
import { VehiclesSwitch } from './vehicles-switch.tsx';

type ModelRow = ApiOutputs['vehicleModel']['list']['rows'][number];

const NOUN = { one: 'vehicle model', many: 'vehicle models' } as const;
const nameOf = ({ make, model }: ModelRow): string => `${make} ${model}`;

const COLUMNS: readonly DataColumn<ModelRow>[] = [
  { id: 'name', header: 'Model', cell: nameOf, sortBy: nameOf, width: '2fr', onCard: 'title' },
  {
    id: 'body',
    header: 'Body',
    cell: (row) => BODY_WORDS[row.body],
    sortBy: (row) => BODY_WORDS[row.body],
    onCard: 'line',
  },
  {
    id: 'years',
    header: 'Years',
    cell: (row) => yearsWords(row.yearFrom, row.yearTo),
    sortBy: (row) => row.yearFrom,
    isFigures: true,
    onCard: 'side',
  },
  {
    id: 'powertrain',
    header: 'Powertrain',
    cell: (row) => POWERTRAIN_WORDS[row.powertrain],
    sortBy: (row) => POWERTRAIN_WORDS[row.powertrain],
    onCard: 'left-out',
  },
  {
    id: 'surveys',
    header: 'Surveys',
    cell: (row) => (row.surveyCount === 0 ? 'not measured' : row.surveyCount),
    sortBy: (row) => row.surveyCount,
    isFigures: true,
    onCard: 'left-out',
  },
  {
    id: 'vehicles',
    header: 'Vehicles',
    cell: (row) => row.vehicleCount,
    sortBy: (row) => row.vehicleCount,
    isFigures: true,
    width: '100px',
    onCard: 'left-out',
  },
];

const CHIPS: readonly FilterChip<ModelRow>[] = [
  { id: 'unmeasured', label: 'Not measured', test: ({ surveyCount }) => surveyCount === 0 },
  {
    id: 'high-voltage',
    label: 'High voltage',
    test: ({ powertrain }) => powertrain === 'electric' || powertrain === 'hybrid',
  },
];

/** Models: measured once, they serve every later car of their kind. */
export function ModelListScreen() {
  const client = useTRPCClient();
  return (
    <RecordList<ModelRow>
      title="Vehicle models"
      noun={NOUN}
      listName="vehicleModel"
      procedures={client.vehicleModel}
      edit="vehicle.edit"
      columns={COLUMNS}
      chips={CHIPS}
      rowName={nameOf}
      hrefOf={({ id }) => paths.vehicleModel(id)}
      wordsOf={(row) => `${nameOf(row)} ${BODY_WORDS[row.body]} ${yearsWords(row.yearFrom, row.yearTo)}`}
      initialSort={{ columnId: 'name', isDescending: false }}
      newHref={paths.newVehicleModel()}
      newWords="New model"
      emptyText="Measure a model once and every later job on one like it starts with the survey done."
      above={<VehiclesSwitch here="models" />}
    />
  );
}
