import { randomUUID } from 'node:crypto';
import { driverFiguresSchema, PART_KINDS, partFiguresSchemas } from '@gusset/contracts/records';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { guarded, readCsv, unguarded, writeCsv } from '../src/records/csv/csv-text.ts';
import { PART_FIGURE_COLUMNS } from '../src/records/csv/kinds/part-figure-columns.ts';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
});
afterAll(() => api.close());

const BOARDS = [
  'Name,Material,Nominal thickness (mm),Length (mm),Width (in),Density (kg/m3),Buy price (EUR),Grain along',
  'Birch 18,birch-ply,18,2440,48,680,"1,062.50",length',
  'MDF 3/4,MDF,"3/4""",2440,"48 1/16",740,61.00,none',
].join('\r\n');

describe('text of a list', () => {
  it('comes back as it was, whatever the cells hold', () => {
    const cell = fc.oneof(
      fc.string(),
      fc.constantFrom('=1+1', "'=x", '-5', '+49 30', '@home', '＝A1', 'a"b', 'c,d'),
    );
    fc.assert(
      fc.property(
        fc.array(
          cell.map((text) => text.trim()),
          { minLength: 2, maxLength: 5 },
        ),
        (row) => {
          fc.pre(
            row.every((text) => !text.includes('\u0000') && !text.includes('\uFEFF')) &&
              row.some((text) => text !== ''),
          );
          const header = row.map((_, index) => `column ${index}`);
          expect(readCsv(writeCsv([header, row])).lines[1]?.cells).toEqual(row.map((text) => text.trim()));
        },
      ),
    );
  });

  it('puts an apostrophe before what a spreadsheet would run, and leaves figures alone', () => {
    for (const risky of ['=1+1', '+1 a', '-x', '@a', '\tx', '＝1', '－2', '＋3', '＠4']) {
      expect(guarded(risky)).toBe(`'${risky}`);
      expect(unguarded(guarded(risky))).toBe(risky);
    }
    expect(guarded('-12.5')).toBe('-12.5');
  });

  it('starts with the UTF-8 mark and ends its lines with CRLF', () => {
    expect(
      writeCsv([
        ['a', 'b'],
        ['1', 'x "y"'],
      ]),
    ).toBe('\uFEFFa,b\r\n1,"x ""y"""\r\n');
  });
});

describe('columns of parts', () => {
  it('name every figure of every kind', () => {
    for (const kind of PART_KINDS) {
      const paths = PART_FIGURE_COLUMNS[kind].map(({ path }) => path.replace(/^figures\./, ''));
      const fields = Object.keys(partFiguresSchemas[kind].shape).flatMap((field) =>
        field === 'dataSheet'
          ? Object.keys(driverFiguresSchema.shape.dataSheet.shape).map((figure) => `dataSheet.${figure}`)
          : [field],
      );
      expect(paths.toSorted()).toEqual(fields.toSorted());
    }
  });
});

describe('an import', () => {
  it('is shown first and writes nothing then', async () => {
    const preview = await owner.api.part.sheet.importPreview.mutate({ text: BOARDS });
    expect(preview).toMatchObject({ total: 2, problems: [], ignoredColumns: [], alikeCount: 0 });
    expect((await owner.api.part.sheet.list.query({})).total).toBe(0);
  });

  it('takes lengths as the tape says them, in the unit of the header', async () => {
    const { count } = await owner.api.part.sheet.import.mutate({ key: randomUUID(), text: BOARDS });
    expect(count).toBe(2);
    const { rows } = await owner.api.part.sheet.list.query({});
    expect(rows[0]).toMatchObject({ name: 'Birch 18', buyPriceMinor: 106_250 });
    expect(rows[0]?.figures).toMatchObject({ widthMm: 1219.2, measuredThicknessMm: null, grain: 'length' });
    expect(rows[1]?.figures).toMatchObject({
      nominalThicknessMm: 19.05,
      widthMm: 1220.7875,
      material: 'mdf',
    });
    const again = await owner.api.part.sheet.importPreview.mutate({ text: BOARDS });
    expect(again.alikeCount).toBe(2);
  });

  it('takes effect once for one key, and is undone in one step', async () => {
    const key = randomUUID();
    const text = 'Name;Phone\nA. Demo;555 0100\nB. Demo;+49 30 5550';
    const first = await owner.api.customer.import.mutate({ key, text });
    const second = await owner.api.customer.import.mutate({ key, text });
    expect(second.importId).toBe(first.importId);
    expect((await owner.api.customer.list.query({ search: 'demo' })).total).toBe(2);
    expect(await owner.api.customer.importUndo.mutate({ importId: first.importId })).toEqual({ count: 2 });
    expect(await owner.api.customer.importUndo.mutate({ importId: first.importId })).toEqual({ count: 0 });
    expect((await owner.api.customer.list.query({ search: 'demo' })).total).toBe(0);
    expect((await owner.api.customer.list.query({ search: 'demo', archived: true })).total).toBe(2);
  });

  it('names row, column and reason of every bad cell and then writes nothing', async () => {
    const text = [
      'Make,Model,Body,Placard payload (kg),First year,Last year,Sunroof',
      'Halden,Brisk,hatch,430,2021,2019,',
      'Merle,,van,lots,,,',
      'Orrin,Load,lorry,900,2020,,yes',
      '',
      'Tern,Coast,estate,9000,,,',
    ].join('\n');
    const preview = await owner.api.vehicleModel.importPreview.mutate({ text });
    expect(preview.ignoredColumns).toEqual(['Sunroof']);
    expect(preview.problems.map(({ row, column }) => [row, column])).toEqual([
      [2, 'Last year'],
      [3, 'Model'],
      [3, 'Placard payload (kg)'],
      [4, 'Body'],
      [6, 'Placard payload (kg)'],
    ]);
    expect(preview.problems[3]?.why).toContain('hatch');
    const refused = await shopErrorOf(owner.api.vehicleModel.import.mutate({ key: randomUUID(), text }));
    expect(refused).toMatchObject({ code: 'NOT_ACCEPTED' });
    expect(refused.fields[0]).toEqual({
      path: 'row 2, Last year',
      message: 'The last year cannot be before the first.',
    });
    expect((await owner.api.vehicleModel.list.query({})).total).toBe(0);
  });

  it('says which column is missing, doubled or in a unit it does not read', async () => {
    const missing = await owner.api.part.sheet.importPreview.mutate({ text: 'Name,Material\nX,mdf' });
    expect(missing.problems.map(({ column }) => column)).toContain('Nominal thickness (mm)');
    const doubled = await owner.api.customer.importPreview.mutate({ text: 'Name,Name\nA,B' });
    expect(doubled.problems[0]).toMatchObject({ row: 1, column: 'Name' });
    const unit = await owner.api.supplier.importPreview.mutate({ text: 'Name,Lead time (weeks)\nA,2' });
    expect(unit.problems[0]).toMatchObject({ row: 1, column: 'Lead time (weeks)' });
    const empty = await owner.api.customer.importPreview.mutate({ text: '\n\n' });
    expect(empty.problems[0]?.why).toBe('There is nothing in this file.');
  });

  it('finds other records by name and asks where a name is not clear', async () => {
    await owner.api.customer.import.mutate({
      key: randomUUID(),
      text: 'Name\nAdaeze Okafor\nSam Twin\nSam Twin',
    });
    await owner.api.vehicleModel.import.mutate({
      key: randomUUID(),
      text: 'Make,Model,Body,First year\nHalden,Brisk,hatch,2021',
    });
    const text = [
      'Customer,Vehicle model,Plate',
      'adaeze  okafor,Halden Brisk hatch 2021,QR 17',
      'Sam Twin,Halden Brisk hatch 2021,QR 18',
      'Nobody,Halden Brisk hatch 2021,QR 19',
    ].join('\n');
    const preview = await owner.api.vehicle.importPreview.mutate({ text });
    expect(preview.rows).toEqual([{ row: 2, name: 'QR 17', isAlike: false }]);
    expect(preview.problems.map(({ row, column }) => [row, column])).toEqual([
      [3, 'Customer'],
      [4, 'Customer'],
    ]);
  });
});

describe('an export', () => {
  it('is read back as the same records', async () => {
    const other = await api.owner('Harbour Lane Audio');
    const driver = driverFiguresSchema.parse({
      dataSheet: { fsHz: 29.5, qms: 4.6, qes: 0.52, vasLitres: 48.1, sdCm2: 340, reOhm: 3.6, coils: 2 },
      nominalInches: 10,
      overallDiaMm: 269.875,
      cutoutDiaMm: 236,
      mountingDepthMm: 141,
      sideVents: true,
    });
    const common = { code: '', unit: 'each' as const, supplierId: null, leadDays: null, stockQuantity: 2 };
    await owner.api.part.driver.create.mutate({
      key: randomUUID(),
      input: {
        ...common,
        kind: 'driver',
        maker: '=Quince',
        name: 'Q-10 "dual"',
        buyPriceMinor: 14_000,
        sellPriceMinor: 21_905,
        notes: 'two\nlines, and a comma',
        figures: driver,
      },
    });
    await owner.api.part.amplifier.create.mutate({
      key: randomUUID(),
      input: {
        ...common,
        kind: 'amplifier',
        maker: 'Medlar',
        name: 'A-4',
        buyPriceMinor: 0,
        sellPriceMinor: 0,
        notes: '',
        figures: {
          channels: 4,
          ratings: [
            { loadOhm: 4, watts: 100 },
            { loadOhm: 2, watts: 160.5 },
          ],
          minimumLoadOhm: 2,
          bridgedMinimumLoadOhm: 4,
          ratingBasis: 'CTA-2006',
          amplifierClass: 'AB',
          fuseTotalA: 60,
          lengthMm: 320,
          widthMm: 190,
          heightMm: 52,
          massKg: 2.4,
        },
      },
    });
    const drivers = await owner.api.part.driver.export.query();
    expect(drivers.fileName).toBe('parts-driver.csv');
    expect(drivers.text).toContain('Cut-out diameter (mm)');
    expect(drivers.text).toContain("'=Quince");
    await other.api.part.driver.import.mutate({ key: randomUUID(), text: drivers.text });
    const amplifiers = await owner.api.part.amplifier.export.query();
    await other.api.part.amplifier.import.mutate({ key: randomUUID(), text: amplifiers.text });
    const [copy] = (await other.api.part.driver.list.query({})).rows;
    const [original] = (await owner.api.part.driver.list.query({})).rows;
    expect({ ...copy, id: '' }).toEqual({ ...original, id: '' });
    const [amplifierCopy] = (await other.api.part.amplifier.list.query({})).rows;
    const [amplifier] = (await owner.api.part.amplifier.list.query({})).rows;
    expect(amplifierCopy?.figures).toEqual(amplifier?.figures);
  });

  it('is refused to those who see no money', async () => {
    const technician = await api.member(owner, 'technician');
    expect((await shopErrorOf(technician.api.part.driver.export.query())).code).toBe('NOT_ALLOWED');
  });

  it('holds only the own shop’s rows', async () => {
    const other = await api.owner('Third Shop');
    const { text } = await other.api.customer.export.query();
    expect(text.trim().split('\r\n')).toHaveLength(1);
  });
});
