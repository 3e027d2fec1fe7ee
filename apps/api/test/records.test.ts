import { randomUUID } from 'node:crypto';
import { driverFiguresSchema } from '@gusset/contracts/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;
let technician: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
  technician = await api.member(owner, 'technician');
});
afterAll(() => api.close());

const customer = (name: string) => ({ name, phone: '', email: '', address: '', notes: '' });

/** Quince Q-10, an invented ten-inch driver. */
const quinceFigures = driverFiguresSchema.parse({
  dataSheet: {
    fsHz: 29.5,
    qms: 4.6,
    qes: 0.52,
    vasLitres: 48,
    sdCm2: 340,
    reOhm: 3.6,
    leMh: 0,
    xmaxMm: 11,
    peWatts: 300,
  },
  overallDiaMm: 269,
  cutoutDiaMm: 236,
  mountingDepthMm: 141,
});

describe('a record', () => {
  it('is made once for one key, listed, changed, archived and restored', async () => {
    const key = randomUUID();
    const made = await owner.api.customer.create.mutate({ key, input: customer('Adaeze Okafor') });
    const again = await owner.api.customer.create.mutate({ key, input: customer('Adaeze Okafor') });
    expect(again.id).toBe(made.id);
    const changed = await owner.api.customer.change.mutate({
      id: made.id,
      version: made.version,
      input: { ...customer('Adaeze Okafor'), phone: '555 0100' },
    });
    expect(changed).toMatchObject({ version: 2, phone: '555 0100' });
    await owner.api.customer.archive.mutate({ id: made.id, archived: true });
    expect((await owner.api.customer.list.query({ search: 'okaf' })).total).toBe(0);
    expect((await owner.api.customer.list.query({ search: 'okaf', archived: true })).total).toBe(1);
    await owner.api.customer.archive.mutate({ id: made.id, archived: false });
    expect((await owner.api.customer.list.query({ search: 'OKAF' })).rows[0]?.id).toBe(made.id);
  });

  it('tells the second of two savers both values', async () => {
    const made = await owner.api.customer.create.mutate({ key: randomUUID(), input: customer('Before') });
    await owner.api.customer.change.mutate({ id: made.id, version: 1, input: customer('Mine') });
    const refused = await shopErrorOf(
      owner.api.customer.change.mutate({ id: made.id, version: 1, input: customer('Yours') }),
    );
    expect(refused.conflict?.differences).toEqual([{ field: 'name', yours: 'Yours', theirs: 'Mine' }]);
  });

  it('of another shop is not there, and cannot be pointed at', async () => {
    const other = await api.owner('Harbour Lane Audio');
    const theirs = await other.api.customer.create.mutate({ key: randomUUID(), input: customer('Theirs') });
    const model = await owner.api.vehicleModel.create.mutate({
      key: randomUUID(),
      input: {
        make: 'Halden',
        model: 'Brisk',
        body: 'hatch',
        yearFrom: 2021,
        yearTo: null,
        powertrain: 'combustion',
        payloadKg: 430,
        longestCabinM: 2.5,
        notes: '',
      },
    });
    expect((await shopErrorOf(owner.api.customer.read.query({ id: theirs.id }))).code).toBe('NOT_FOUND');
    const pointing = owner.api.vehicle.create.mutate({
      key: randomUUID(),
      input: { customerId: theirs.id, modelId: model.id, plate: 'QR 1', year: 2021, colour: '', notes: '' },
    });
    expect((await shopErrorOf(pointing)).code).toBe('NOT_ACCEPTED');
  });

  it('names the field that cannot be', async () => {
    const bad = owner.api.customer.create.mutate({
      key: randomUUID(),
      input: { ...customer('X'), email: 'not an address' },
    });
    expect(await shopErrorOf(bad)).toMatchObject({ code: 'NOT_ACCEPTED', fields: [{ path: 'input.email' }] });
  });
});

describe('the catalogue', () => {
  it('keeps a driver’s figures and hides prices from technicians', async () => {
    const made = await owner.api.part.driver.create.mutate({
      key: randomUUID(),
      input: {
        kind: 'driver',
        maker: 'Quince',
        name: 'Q-10',
        code: '',
        unit: 'each',
        supplierId: null,
        buyPriceMinor: 14_000,
        sellPriceMinor: 21_900,
        stockQuantity: 2,
        leadDays: null,
        notes: '',
        figures: quinceFigures,
      },
    });
    expect(made.figures.dataSheet.fsHz).toBe(29.5);
    const seen = await technician.api.part.driver.read.query({ id: made.id });
    expect(seen).toMatchObject({ buyPriceMinor: null, sellPriceMinor: null, name: 'Q-10' });
  });

  it('keeps kinds apart', async () => {
    const made = await owner.api.part.driver.create.mutate({
      key: randomUUID(),
      input: {
        kind: 'driver',
        maker: 'Medlar',
        name: 'M-12',
        code: '',
        unit: 'each',
        supplierId: null,
        buyPriceMinor: 0,
        sellPriceMinor: 0,
        stockQuantity: 0,
        leadDays: null,
        notes: '',
        figures: quinceFigures,
      },
    });
    expect((await shopErrorOf(owner.api.part.sheet.read.query({ id: made.id }))).code).toBe('NOT_FOUND');
  });
});

describe('rights', () => {
  it('let a technician read people without their cost and change nothing', async () => {
    const people = await technician.api.person.list.query({});
    expect(people.rows[0]).toMatchObject({ name: 'Mira Ilves', hourlyCostMinor: null });
    const refused = technician.api.customer.create.mutate({ key: randomUUID(), input: customer('No') });
    expect((await shopErrorOf(refused)).code).toBe('NOT_ALLOWED');
  });
});
