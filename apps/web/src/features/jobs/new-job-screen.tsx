'use client';

import { useQuery } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import { fieldError, type ShownError, shownError } from '../../shared/data/shop-error.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { type NewCustomer, NewCustomerFields } from './new-customer-fields.tsx';
import styles from './new-job-screen.module.css';
import { type NewVehicle, NewVehicleFields } from './new-vehicle-fields.tsx';
import { openJobWith } from './open-job-with.ts';

const NEW = 'new';

/** One form from a phone call to a job: customer and vehicle found or made on the way. */
export function NewJobScreen() {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const router = useRouter();
  const { shop } = useDisplay();
  // Made when the form opens: pressing twice opens one job.
  const [key] = useState(() => crypto.randomUUID());
  const [title, setTitle] = useState('');
  const [customerId, setCustomerId] = useState<string | null>(null);
  const [customer, setCustomer] = useState<NewCustomer>({ name: '', phone: '', email: '' });
  const [vehicleId, setVehicleId] = useState<string>('none');
  const [vehicle, setVehicle] = useState<NewVehicle>({
    modelId: null,
    make: '',
    model: '',
    body: 'hatch',
    year: null,
    plate: '',
  });
  const [wishedOn, setWishedOn] = useState<string | null>(null);
  const [search, setSearch] = useState('');
  const [isBusy, setIsBusy] = useState(false);
  const [error, setError] = useState<ShownError | null>(null);

  const customers = useQuery(trpc.customer.list.queryOptions({ search, limit: 20 }));
  const vehicles = useQuery(trpc.vehicle.list.queryOptions({ limit: 200 }));
  const own = (vehicles.data?.rows ?? []).filter((row) => row.customerId === customerId);

  const open = async () => {
    setIsBusy(true);
    setError(null);
    try {
      const number = await openJobWith(client, {
        key,
        title,
        wishedOn,
        customer:
          customerId === NEW || customerId === null
            ? { kind: 'new', ...customer }
            : { kind: 'known', id: customerId },
        vehicle:
          vehicleId === 'none'
            ? null
            : vehicleId === NEW
              ? { kind: 'new', ...vehicle }
              : { kind: 'known', id: vehicleId },
      });
      router.push(paths.job(number, 'brief'));
    } catch (failure) {
      setError(shownError(failure));
      setIsBusy(false);
    }
  };

  return (
    <Page>
      <PageHeader
        kicker="Jobs"
        title="Open a job"
        acts={
          <Button look="primary" isPending={isBusy} onPress={() => void open()}>
            Open the job
          </Button>
        }
      />
      {error === null ? null : <Verdict tone="fail" words={error.message} />}
      <SheetFrame
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 2 },
          { caption: 'Job', value: 'next number' },
          { caption: 'Customer', value: customerId === NEW ? customer.name : '', span: 2 },
        ]}
      >
        <div className={styles.form}>
          <FieldGrid cellMinPx={280}>
            <TextField
              label="Work, in a few words"
              hint="For instance: bass box behind the rear seat"
              value={title}
              onChange={setTitle}
              isRequired
              autoFocus
              error={fieldError(error, 'job.title')}
            />
            <DateField
              label="Wished for"
              isOptional
              value={wishedOn}
              onChange={setWishedOn}
              error={fieldError(error, 'job.wishedOn')}
            />
          </FieldGrid>
          <h2>Customer</h2>
          <ComboBox
            label="Customer"
            hint="Type a name, a phone number or an address; or take a new one."
            options={[
              { id: NEW, label: 'A new customer', detail: 'type the name below' },
              ...(customers.data?.rows ?? []).map((row) => ({
                id: row.id,
                label: row.name,
                detail: row.phone || row.email,
              })),
            ]}
            value={customerId}
            onChange={(id) => {
              setCustomerId(id);
              setVehicleId('none');
            }}
            onSearch={setSearch}
            isSearching={customers.isFetching}
            isRequired
            error={fieldError(error, 'job.customerId')}
          />
          {customerId === NEW ? (
            <NewCustomerFields value={customer} onChange={setCustomer} error={error} />
          ) : null}
          {customerId === null ? null : (
            <>
              <h2>Vehicle</h2>
              <Select
                label="Vehicle"
                options={[
                  { id: 'none', label: 'Not known yet' },
                  ...own.map((row) => ({ id: row.id, label: row.name, detail: row.plate })),
                  { id: NEW, label: 'Another vehicle' },
                ]}
                value={vehicleId}
                onChange={setVehicleId}
                error={fieldError(error, 'job.vehicleId')}
              />
              {vehicleId === NEW ? (
                <NewVehicleFields value={vehicle} onChange={setVehicle} error={error} />
              ) : null}
            </>
          )}
        </div>
      </SheetFrame>
    </Page>
  );
}
