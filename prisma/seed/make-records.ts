// Suppliers, catalogue, vehicle models, customers and their vehicles, through the API. Answers the ids by name.
import { CUSTOMERS, type DemoCustomer } from './customers.ts';
import type { DemoCalendar } from './demo-calendar.ts';
import { formKey } from './form-key.ts';
import { FINISHES, SHEETS } from './parts/boards-and-finishes.ts';
import type { CatalogueEntry } from './parts/catalogue-entry.ts';
import { DRIVERS } from './parts/drivers.ts';
import { AMPLIFIERS, PROCESSORS, SOURCES } from './parts/electronics.ts';
import { HARDWARE, SUPPLIES } from './parts/hardware-and-supplies.ts';
import type { DemoStaff } from './set-up-shop.ts';
import { SUPPLIERS, sponsorTerms } from './suppliers.ts';
import { type ModelName, VEHICLE_MODELS } from './vehicle-models.ts';

export type Ids = {
  of(name: string): string;
};

export type DemoRecords = {
  readonly suppliers: Ids;
  /** By the part's code. */
  readonly parts: Ids;
  /** The supplier of each part, by the part's code. */
  readonly partSuppliers: Ids;
  /** Codes of the parts that lie on the shelf. */
  readonly stocked: ReadonlySet<string>;
  readonly models: Ids;
  readonly customers: Ids;
  /** By number plate. */
  readonly vehicles: Ids;
};

export async function makeRecords(staff: DemoStaff, calendar: DemoCalendar): Promise<DemoRecords> {
  const suppliers = await makeSuppliers(staff, calendar);
  const parts = await makeCatalogue(staff, suppliers);
  const models = await makeModels(staff);
  const catalogue = [...DRIVERS, ...AMPLIFIERS, ...PROCESSORS, ...SOURCES, ...SHEETS, ...FINISHES];
  const everything: readonly CatalogueEntry[] = [...catalogue, ...HARDWARE, ...SUPPLIES];
  return {
    suppliers,
    parts,
    partSuppliers: idsIn(
      'part',
      new Map(everything.map(({ code, supplier }) => [code, suppliers.of(supplier)])),
    ),
    stocked: new Set(everything.filter(({ stockQuantity }) => stockQuantity > 0).map(({ code }) => code)),
    models,
    ...(await makeCustomers(staff, models)),
  };
}

async function makeSuppliers({ ines }: DemoStaff, calendar: DemoCalendar): Promise<Ids> {
  const year = calendar.day(0).slice(0, 4);
  const ids = new Map<string, string>();
  for (const supplier of SUPPLIERS) {
    const input = { ...supplier, terms: sponsorTerms(supplier.name, year) };
    const { id } = await ines.supplier.create({ key: formKey(`supplier ${supplier.name}`), input });
    ids.set(supplier.name, id);
  }
  return idsIn('supplier', ids);
}

async function makeCatalogue({ daniel, ines }: DemoStaff, suppliers: Ids): Promise<Ids> {
  const ids = new Map<string, string>();
  const common = ({ supplier, ...entry }: CatalogueEntry) => ({
    ...entry,
    supplierId: suppliers.of(supplier),
  });
  const form = ({ code }: CatalogueEntry) => formKey(`part ${code}`);
  const keep = async ({ code }: CatalogueEntry, made: Promise<{ id: string }>) => {
    ids.set(code, (await made).id);
  };
  const { part } = daniel;
  for (const entry of DRIVERS) {
    const input = { ...common(entry), kind: 'driver', figures: entry.figures } as const;
    await keep(entry, part.driver.create({ key: form(entry), input }));
  }
  for (const entry of AMPLIFIERS) {
    const input = { ...common(entry), kind: 'amplifier', figures: entry.figures } as const;
    await keep(entry, part.amplifier.create({ key: form(entry), input }));
  }
  for (const entry of PROCESSORS) {
    const input = { ...common(entry), kind: 'processor', figures: entry.figures } as const;
    await keep(entry, part.processor.create({ key: form(entry), input }));
  }
  for (const entry of SOURCES) {
    const input = { ...common(entry), kind: 'source', figures: entry.figures } as const;
    await keep(entry, part.source.create({ key: form(entry), input }));
  }
  for (const entry of SHEETS) {
    const input = { ...common(entry), kind: 'sheet', figures: entry.figures } as const;
    await keep(entry, ines.part.sheet.create({ key: form(entry), input }));
  }
  for (const entry of FINISHES) {
    const input = { ...common(entry), kind: 'finish', figures: entry.figures } as const;
    await keep(entry, ines.part.finish.create({ key: form(entry), input }));
  }
  for (const entry of HARDWARE) {
    const input = { ...common(entry), kind: 'hardware', figures: entry.figures } as const;
    await keep(entry, ines.part.hardware.create({ key: form(entry), input }));
  }
  for (const entry of SUPPLIES) {
    const input = { ...common(entry), kind: 'supply', figures: entry.figures } as const;
    await keep(entry, ines.part.supply.create({ key: form(entry), input }));
  }
  return idsIn('part', ids);
}

async function makeModels({ tomas }: DemoStaff): Promise<Ids> {
  const ids = new Map<string, string>();
  for (const [name, input] of Object.entries(VEHICLE_MODELS)) {
    const { id } = await tomas.vehicleModel.create({ key: formKey(`model ${name}`), input });
    ids.set(name, id);
  }
  return idsIn('vehicle model', ids);
}

async function makeCustomers(
  { ines }: DemoStaff,
  models: Ids,
): Promise<Pick<DemoRecords, 'customers' | 'vehicles'>> {
  const customers = new Map<string, string>();
  const vehicles = new Map<string, string>();
  for (const customer of CUSTOMERS) {
    const input = customerInput(customer);
    const { id } = await ines.customer.create({ key: formKey(`customer ${customer.name}`), input });
    customers.set(customer.name, id);
    for (const { model, ...vehicle } of customer.vehicles) {
      const modelId = models.of(model satisfies ModelName);
      const made = await ines.vehicle.create({
        key: formKey(`vehicle ${vehicle.plate}`),
        input: { ...vehicle, customerId: id, modelId },
      });
      vehicles.set(vehicle.plate, made.id);
    }
  }
  return { customers: idsIn('customer', customers), vehicles: idsIn('vehicle', vehicles) };
}

function customerInput({ name, phone, email, address = '', notes = '' }: DemoCustomer) {
  return { name, phone, email, address, notes };
}

/** Throws for a name that the demo has not made. */
export function idsIn(what: string, ids: ReadonlyMap<string, string>): Ids {
  return {
    of(name) {
      const id = ids.get(name);
      if (id === undefined) throw new Error(`the demo has no ${what} "${name}"`);
      return id;
    },
  };
}
