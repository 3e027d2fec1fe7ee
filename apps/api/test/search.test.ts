import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
  const key = () => randomUUID();
  await owner.api.customer.import.mutate({
    key: key(),
    text: 'Name,Phone\nAdaeze Okafor,555 0100\nPer Lind,\nOcafor Ltd,',
  });
  await owner.api.vehicleModel.import.mutate({
    key: key(),
    text: 'Make,Model,Body,First year\nHalden,Brisk,hatch,2021\nMerle,100% Electric,van,2024',
  });
  await owner.api.vehicle.import.mutate({
    key: key(),
    text: 'Customer,Vehicle model,Plate,Year\nAdaeze Okafor,Halden Brisk hatch 2021,QR-17 AB,2022',
  });
  await owner.api.part.supply.import.mutate({
    key: key(),
    text: 'Maker,Name,Order code,Use\nMedlar,Wood glue D3,MG-771,glue\nQuince,Contact glue,QC-9,contact-adhesive',
  });
  const [customer] = (await owner.api.customer.list.query({ search: 'Adaeze' })).rows;
  for (const title of ['Bass box behind the seat', 'Door panels']) {
    await owner.api.job.open.mutate({ key: key(), job: { title, customerId: customer?.id ?? '' } });
  }
});
afterAll(() => api.close());

const find = (text: string, person = owner) => person.api.search.everything.query({ text });

describe('the search box', () => {
  it('finds a job by number, with or without its sign, and by words in any order', async () => {
    expect((await find('2402')).jobs).toMatchObject([{ number: 2402, title: 'Door panels' }]);
    expect((await find('#2401')).jobs[0]).toMatchObject({ number: 2401, detail: 'Adaeze Okafor' });
    expect((await find('seat bass')).jobs.map(({ number }) => number)).toEqual([2401]);
  });

  it('finds a plate however its gaps are typed', async () => {
    for (const typed of ['qr17', 'QR-17 AB', '17a', 'qr 17ab']) {
      expect((await find(typed)).vehicles).toMatchObject([
        { title: 'QR-17 AB', detail: 'Halden Brisk 2022 · Adaeze Okafor' },
      ]);
    }
  });

  it('forgives a wrong letter, the right name first', async () => {
    expect((await find('Okafor')).customers.map(({ title }) => title)).toEqual([
      'Adaeze Okafor',
      'Ocafor Ltd',
    ]);
    expect((await find('okaffor')).customers[0]?.title).toBe('Adaeze Okafor');
    expect((await find('haldn brisk')).models[0]?.title).toBe('Halden Brisk');
  });

  it('finds parts by maker, name and order code and says which kind they are', async () => {
    expect((await find('mg-771')).parts).toMatchObject([{ title: 'Medlar Wood glue D3', kind: 'supply' }]);
    expect((await find('glue quince')).parts[0]?.detail).toBe('QC-9');
  });

  it('takes pattern signs as they are', async () => {
    expect((await find('100%')).models.map(({ title }) => title)).toEqual(['Merle 100% Electric']);
    expect(await find('%')).toMatchObject({ customers: [], jobs: [], parts: [] });
    expect(await find("'; DROP TABLE job; --")).toMatchObject({ jobs: [], customers: [] });
  });

  it('leaves out what is archived and what other shops keep', async () => {
    const [per] = (await owner.api.customer.list.query({ search: 'Per Lind' })).rows;
    expect((await find('lind')).customers).toHaveLength(1);
    await owner.api.customer.archive.mutate({ id: per?.id ?? '', archived: true });
    expect((await find('lind')).customers).toHaveLength(0);
    const other = await api.owner('Harbour Lane Audio');
    expect(await find('okafor', other)).toEqual({
      jobs: [],
      customers: [],
      vehicles: [],
      models: [],
      parts: [],
    });
  });

  it('answers nothing to blanks', async () => {
    expect((await find('   ')).jobs).toEqual([]);
  });

  it('gives six of a kind at most', async () => {
    const text = ['Name', ...Array.from({ length: 9 }, (_, index) => `Sample Person ${index}`)].join('\n');
    await owner.api.customer.import.mutate({ key: randomUUID(), text });
    expect((await find('sample')).customers).toHaveLength(6);
  });
});
