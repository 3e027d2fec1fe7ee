// Opens a job with whatever had to be made on the way. Each step has a key of its own that follows from the form's,
// so that sending again after a lost answer makes nothing twice.

import type { useTRPCClient } from '../../shared/data/api-client.ts';
import type { NewCustomer } from './new-customer-fields.tsx';
import type { NewVehicle } from './new-vehicle-fields.tsx';
import { stepKeyOf } from './step-key.ts';

type Client = ReturnType<typeof useTRPCClient>;
type Known = { readonly kind: 'known'; readonly id: string };

export type NewJob = {
  readonly key: string;
  readonly title: string;
  readonly wishedOn: string | null;
  readonly customer: Known | ({ readonly kind: 'new' } & NewCustomer);
  readonly vehicle: Known | ({ readonly kind: 'new' } & NewVehicle) | null;
};

/** The new job's number. Throws what the API refuses, with the fields it names. */
export async function openJobWith(client: Client, job: NewJob): Promise<number> {
  const customerId = await customerOf(client, job);
  const vehicleId = await vehicleOf(client, job, customerId);
  const opened = await client.job.open.mutate({
    key: job.key,
    job: { title: job.title, customerId, vehicleId, wishedOn: job.wishedOn },
  });
  return opened.number;
}

async function customerOf(client: Client, { key, customer }: NewJob): Promise<string> {
  if (customer.kind === 'known') return customer.id;
  const { name, phone, email } = customer;
  const input = { name, phone, email, address: '', notes: '' };
  const made = await client.customer.create.mutate({
    key: await stepKeyOf(key, `customer ${JSON.stringify(input)}`),
    input,
  });
  return made.id;
}

async function vehicleOf(
  client: Client,
  { key, vehicle }: NewJob,
  customerId: string,
): Promise<string | null> {
  if (vehicle === null) return null;
  if (vehicle.kind === 'known') return vehicle.id;
  const modelId = vehicle.modelId ?? (await modelOf(client, key, vehicle));
  const input = { customerId, modelId, plate: vehicle.plate, year: vehicle.year, colour: '', notes: '' };
  const made = await client.vehicle.create.mutate({
    key: await stepKeyOf(key, `vehicle ${JSON.stringify(input)}`),
    input,
  });
  return made.id;
}

async function modelOf(
  client: Client,
  key: string,
  { make, model, body, year }: NewVehicle,
): Promise<string> {
  const input = {
    make,
    model,
    body,
    yearFrom: year,
    yearTo: null,
    powertrain: 'unknown' as const,
    payloadKg: null,
    longestCabinM: null,
    notes: '',
  };
  const made = await client.vehicleModel.create.mutate({
    key: await stepKeyOf(key, `model ${JSON.stringify(input)}`),
    input,
  });
  return made.id;
}
