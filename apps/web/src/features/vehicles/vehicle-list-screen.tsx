'use client';

import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { paths } from '../../shared/paths.ts';
import { RecordList } from '../../shared/record/record-list.tsx';
import type { DataColumn, FilterChip } from '../../shared/table/data-column.ts';
import { VehiclesSwitch } from './vehicles-switch.tsx';

type VehicleRow = ApiOutputs['vehicle']['list']['rows'][number];

const NOUN = { one: 'vehicle', many: 'vehicles' } as const;

const COLUMNS: readonly DataColumn<VehicleRow>[] = [
  {
    id: 'plate',
    header: 'Plate',
    cell: (row) => row.plate || '–',
    sortBy: (row) => row.plate || null,
    width: '140px',
    isFigures: true,
    onCard: 'side',
  },
  {
    id: 'name',
    header: 'Vehicle',
    cell: (row) => row.name,
    sortBy: (row) => row.name,
    width: '2fr',
    onCard: 'title',
  },
  {
    id: 'customer',
    header: 'Customer',
    cell: (row) => row.customerName,
    sortBy: (row) => row.customerName,
    width: '1.4fr',
    onCard: 'line',
  },
  {
    id: 'colour',
    header: 'Colour',
    cell: (row) => row.colour,
    sortBy: (row) => row.colour || null,
    onCard: 'left-out',
  },
];

const isHighVoltage = ({ powertrain }: VehicleRow): boolean =>
  powertrain === 'electric' || powertrain === 'hybrid';

const CHIPS: readonly FilterChip<VehicleRow>[] = [
  { id: 'high-voltage', label: 'High voltage', test: isHighVoltage },
  { id: 'no-plate', label: 'No plate', test: ({ plate }) => plate === '' },
];

/** The cars that stand or stood in the bays. */
export function VehicleListScreen() {
  const client = useTRPCClient();
  return (
    <RecordList<VehicleRow>
      title="Vehicles"
      noun={NOUN}
      listName="vehicle"
      procedures={client.vehicle}
      edit="vehicle.edit"
      columns={COLUMNS}
      chips={CHIPS}
      rowName={({ name, plate }) => `${name}, ${plate || 'no plate'}`}
      hrefOf={({ id }) => paths.vehicle(id)}
      wordsOf={({ name, plate, customerName, colour }) =>
        `${name} ${plate} ${plate.replace(/[\s-]/gu, '')} ${customerName} ${colour}`
      }
      initialSort={{ columnId: 'plate', isDescending: false }}
      newHref={paths.newVehicle()}
      newWords="New vehicle"
      emptyText="A vehicle belongs to a customer and is of a model. Measurements hang on the model."
      above={<VehiclesSwitch here="vehicles" />}
    />
  );
}
