import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { firstRefusal } from './first-refusal.ts';
import { solveResponseRequestSchema } from './solve-response.ts';
import { soundSystemSchema } from './system.ts';

const driver = {
  fsHz: 29.5,
  qms: 4.6,
  qes: 0.52,
  vasLitres: 48,
  sdCm2: 340,
  reOhm: 3.6,
  leMh: 0,
  l2Mh: null,
  r2Ohm: null,
  coils: 1,
  xmaxMm: 11,
  peWatts: 300,
  displacementLitres: 2,
};
const system = {
  frequenciesHz: [40],
  source: { voltageVrms: 10 },
  driver,
  enclosure: { kind: 'closed', chamber: { netLitres: 30 } },
};

function refusalOf(schema: z.ZodType, input: unknown) {
  const parsed = schema.safeParse(input);
  return parsed.success ? null : firstRefusal(parsed.error, input).refusal;
}

describe('firstRefusal', () => {
  it('lets a whole system pass', () => {
    expect(refusalOf(soundSystemSchema, system)).toBeNull();
  });

  it('says why drivers must stand in even strings, in both spellings', () => {
    const array = { count: 5, seriesPerString: 2, parallelStrings: 2 };
    expect(refusalOf(soundSystemSchema, { ...system, array })).toEqual({
      field: 'array.count',
      allowed: 'seriesPerString × parallelStrings: strings of the same length',
      got: 5,
      why: 'in uneven strings some coils take more of the current, and cones of one box no longer move alike',
    });
    const line = {
      id: 1,
      frequencies_Hz: [40],
      source: { voltage_Vrms: 1 },
      driver: {},
      enclosure: {},
      array,
    };
    const issues = solveResponseRequestSchema.safeParse(line).error?.issues ?? [];
    expect(issues.find(({ path }) => path.join('.') === 'array.count')).toMatchObject({
      message: 'seriesPerString × parallelStrings: strings of the same length',
    });
  });

  it('names the field, its range and what came', () => {
    expect(refusalOf(soundSystemSchema, { ...system, driver: { ...driver, vasLitres: 0 } })).toEqual({
      field: 'driver.vasLitres',
      allowed: '0.01 to 5000 L',
      got: 0,
      why: 'it is too small',
    });
  });

  it('spells a place in a list', () => {
    expect(refusalOf(soundSystemSchema, { ...system, frequenciesHz: [40, 99_000] })).toMatchObject({
      field: 'frequenciesHz[1]',
      got: 99_000,
    });
  });

  it('writes a number that JSON cannot carry as text', () => {
    expect(refusalOf(soundSystemSchema, { ...system, distanceM: Number.NaN })).toMatchObject({
      field: 'distanceM',
      got: 'NaN',
    });
  });

  it('lists the kinds where the kind is unknown', () => {
    expect(refusalOf(soundSystemSchema, { ...system, enclosure: { kind: 'horn' } })).toMatchObject({
      field: 'enclosure.kind',
      allowed: expect.stringContaining('infinite-baffle, closed, vented'),
      got: 'horn',
    });
  });

  it('names a field that the schema does not know', () => {
    expect(refusalOf(soundSystemSchema, { ...system, colour: 'red' })).toMatchObject({
      field: 'colour',
      allowed: 'only the fields of the schema',
      got: 'red',
    });
  });

  it('says what is missing', () => {
    expect(refusalOf(soundSystemSchema, { ...system, enclosure: undefined })).toMatchObject({
      field: 'enclosure',
      why: 'nothing came for a field that is needed',
    });
  });

  it('refuses an array whose strings do not make up its count', () => {
    const array = { count: 3, seriesPerString: 2, parallelStrings: 2 };
    expect(refusalOf(soundSystemSchema, { ...system, array })).toMatchObject({
      field: 'array.count',
      got: 3,
    });
  });

  it('looks into the branch of a union that was meant', () => {
    const branches = z.strictObject({
      cabin: z.union([
        z.strictObject({ longestM: z.number().min(1), q: z.number() }),
        z.strictObject({ curve: z.array(z.number()) }),
      ]),
    });
    expect(refusalOf(branches, { cabin: { longestM: 0, q: 1 } })).toMatchObject({
      field: 'cabin.longestM',
      got: 0,
    });
    expect(refusalOf(branches, { cabin: { curve: [1, 'x'] } })).toMatchObject({
      field: 'cabin.curve[1]',
      got: 'x',
    });
  });
});

describe('firstRefusal on schemas that word nothing themselves', () => {
  const plain = z.strictObject({
    litres: z.number().positive(),
    walls: z.array(z.string()).min(2),
    mark: z.string().max(3),
    turns: z.boolean(),
    grain: z.enum(['x', 'y']),
  });
  const good = { litres: 1, walls: ['a', 'b'], mark: 'A', turns: true, grain: 'x' };

  it.each([
    ['litres', 0, 'above 0'],
    ['litres', 'much', 'a number'],
    ['litres', undefined, 'a number'],
    ['walls', ['a'], 'at least 2 entries'],
    ['walls', 'a', 'a list'],
    ['mark', 'long', 'at most 3 characters'],
    ['turns', 1, 'true or false'],
    ['grain', 'z', 'x, y'],
  ])('says of %s = %j that it may be %s', (field, value, allowed) => {
    expect(refusalOf(plain, { ...good, [field]: value })).toMatchObject({ field, allowed });
  });
});

describe('solveResponseRequestSchema', () => {
  const port = { shape: 'round', diameter_mm: 100, ends: [{ type: 'flanged' }, { type: 'free' }] };
  const request = (sizing: object) => ({
    id: 'a',
    frequencies_Hz: [40],
    source: { voltage_Vrms: 2.83 },
    driver: { fs_Hz: 30, Qms: 4, Qes: 0.5, Vas_L: 50, Sd_cm2: 340, Re_ohm: 3.6 },
    enclosure: { type: 'vented', chamber: { volume_L: 55 }, port: { ...port, ...sizing } },
  });

  it('takes a port by its tuning or by its length, never by both or neither', () => {
    expect(refusalOf(solveResponseRequestSchema, request({ tuning_Hz: 31 }))).toBeNull();
    expect(refusalOf(solveResponseRequestSchema, request({ length_mm: 300 }))).toBeNull();
    for (const sizing of [{}, { tuning_Hz: 31, length_mm: 300 }]) {
      expect(refusalOf(solveResponseRequestSchema, request(sizing))).toMatchObject({
        field: 'enclosure.port.tuning_Hz',
        allowed: 'exactly one of tuning_Hz and length_mm',
      });
    }
  });

  it('prints as JSON Schema', () => {
    expect(z.toJSONSchema(solveResponseRequestSchema, { io: 'input' })).toMatchObject({ type: 'object' });
  });
});
