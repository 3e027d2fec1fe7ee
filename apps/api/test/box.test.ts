// From the brief to an issued box, and what a changed record does to it.
import { randomUUID } from 'node:crypto';
import { driverFiguresSchema, finishFiguresSchema, sheetFiguresSchema } from '@gusset/contracts/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
});
afterAll(() => api.close());

const part = (name: string) => ({
  maker: '',
  name,
  code: '',
  unit: 'each' as const,
  supplierId: null,
  buyPriceMinor: 4_000,
  sellPriceMinor: 6_000,
  stockQuantity: 2,
  leadDays: null,
  notes: '',
});

const driverFigures = driverFiguresSchema.parse({
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
    displacementLitres: 2,
  },
  overallDiaMm: 269,
  cutoutDiaMm: 236,
  boltCircleDiaMm: 254,
  boltCount: 8,
  flangeThicknessMm: 6,
  mountingDepthMm: 141,
  magnetDiaMm: 156,
  massKg: 6.4,
});

async function catalogue() {
  const driver = await owner.api.part.driver.create.mutate({
    key: randomUUID(),
    input: { ...part('Q-10'), kind: 'driver', maker: 'Quince', figures: driverFigures },
  });
  const board = await owner.api.part.sheet.create.mutate({
    key: randomUUID(),
    input: {
      ...part('MDF 18'),
      kind: 'sheet',
      unit: 'sheet',
      figures: sheetFiguresSchema.parse({
        material: 'mdf',
        nominalThicknessMm: 18,
        lengthMm: 2440,
        widthMm: 1220,
        densityKgPerM3: 720,
      }),
    },
  });
  const carpet = await owner.api.part.finish.create.mutate({
    key: randomUUID(),
    input: {
      ...part('Charcoal carpet'),
      kind: 'finish',
      unit: 'm2',
      figures: finishFiguresSchema.parse({ finish: 'carpet', thicknessMm: 4 }),
    },
  });
  return { driver, board, carpet };
}

async function haldenOf(): Promise<OwnerOfCar> {
  const customer = await owner.api.customer.create.mutate({
    key: randomUUID(),
    input: { name: 'T. Brandt', phone: '', email: '', address: '', notes: '' },
  });
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
  const vehicle = await owner.api.vehicle.create.mutate({
    key: randomUUID(),
    input: {
      customerId: customer.id,
      modelId: model.id,
      plate: 'QR 2417',
      year: 2021,
      colour: '',
      notes: '',
    },
  });
  return { customerId: customer.id, vehicleId: vehicle.id };
}

const reading = (key: string, value: number) => ({
  key,
  value,
  typed: String(value),
  plusMinus: 0,
  method: 'tape' as const,
});

/** A settled survey of a square space, open at its whole rear: 500 high, 1000 wide, way in 950. */
async function measured(modelId: string, floorDepth: number): Promise<string> {
  const survey = await owner.api.survey.create.mutate({
    key: randomUUID(),
    survey: { modelId, formKind: 'hatch-estate', spaceName: '', seatState: 'seats up' },
  });
  const readings = {
    floorDepth,
    seatHeight: 500,
    opening: 500,
    roofDepth: floorDepth,
    sillHeight: 0,
    seatLean: 0,
    openingWidth: 950,
    archWidth: 1000,
    floorRise: 0,
    sillLean: 0,
    lidFrame: 0,
  };
  for (const [key, value] of Object.entries(readings)) {
    await owner.api.survey.setReading.mutate({
      key: randomUUID(),
      reading: { surveyId: survey.id, version: 0, reading: reading(key, value), takenAt: null },
    });
  }
  await owner.api.survey.settle.mutate({ surveyId: survey.id });
  return survey.id;
}

type OwnerOfCar = { readonly customerId: string; readonly vehicleId: string };

async function jobWithSound(driverId: string, car: OwnerOfCar | null = null) {
  const customer = await owner.api.customer.create.mutate({
    key: randomUUID(),
    input: { name: 'R. Okafor', phone: '', email: '', address: '', notes: '' },
  });
  const job = await owner.api.job.open.mutate({
    key: randomUUID(),
    job: {
      title: 'Bass box behind the seat',
      customerId: car?.customerId ?? customer.id,
      vehicleId: car?.vehicleId ?? null,
    },
  });
  const jobId = job.id;
  const brief = await owner.api.sheet.brief.read.query({ jobId });
  const wished = await owner.api.sheet.brief.save.mutate({
    jobId,
    version: 0,
    input: { ...brief.input, wish: 'Deep, for long trips', aim: 'deep' },
  });
  await owner.api.sheet.brief.issue.mutate({ jobId, version: wished.version });
  const sound = await owner.api.sheet.sound.read.query({ jobId });
  const chosen = await owner.api.sheet.sound.save.mutate({
    jobId,
    version: 0,
    input: {
      ...sound.input,
      driverId,
      drive: { watts: 300, typed: '300' },
      targetNet: { litres: 30, typed: '30' },
    },
  });
  return { job, jobId, soundVersion: chosen.version };
}

const length = (mm: number) => ({ mm, typed: String(mm), unit: 'mm' as const });

async function drawBox(jobId: string, boardId: string, carpetId: string | null = null) {
  const { input } = await owner.api.sheet.box.read.query({ jobId });
  return owner.api.sheet.box.save.mutate({
    jobId,
    version: 0,
    input: {
      ...input,
      outside: { width: length(600), height: length(380), depth: length(320), depthTop: null },
      carcassId: boardId,
      finishes: { ...input.finishes, front: carpetId },
    },
  });
}

describe('the box sheet', () => {
  it('is worked out from the boards, finishes and drivers of the catalogue, and issued', async () => {
    const { driver, board, carpet } = await catalogue();
    const { job, jobId, soundVersion } = await jobWithSound(driver.id);
    await owner.api.sheet.sound.issue.mutate({ jobId, version: soundVersion });
    const drawn = await drawBox(jobId, board.id, carpet.id);
    expect(drawn.facts).toMatchObject({
      carcass: { id: board.id, name: 'MDF 18' },
      driver: { id: driver.id, name: 'Quince Q-10' },
      finishes: [{ id: carpet.id }],
      clearances: { sidesMm: 8, seatBackMm: 12 },
      payloadKg: null,
    });
    const issued = await owner.api.sheet.box.issue.mutate({ jobId, version: drawn.version });
    expect(issued.issue?.revision).toBe('A');
    expect(issued.issue?.result.box.volumes.grossLitres).toBeCloseTo(55.100544, 6);
    expect(issued.issue?.result.isDraft).toBe(true);
    expect(issued.issue?.result).toEqual(drawn.outcome.state === 'ready' ? drawn.outcome.result : null);
    const { sheets } = await owner.api.job.byNumber.query({ number: job.number });
    expect(sheets.find(({ kind }) => kind === 'box')).toMatchObject({ mark: 'issued', changes: [] });
  });

  it('stands in the surveyed car, and lists what a newer survey changes', async () => {
    const { driver, board } = await catalogue();
    const { jobId, soundVersion } = await jobWithSound(driver.id, await haldenOf());
    await owner.api.sheet.sound.issue.mutate({ jobId, version: soundVersion });
    const model = (await owner.api.vehicleModel.list.query({ search: 'Brisk' })).rows[0];
    const first = await measured(model?.id ?? '', 800);
    const blank = await owner.api.sheet.survey.read.query({ jobId });
    const chosen = await owner.api.sheet.survey.save.mutate({
      jobId,
      version: 0,
      input: { ...blank.input, surveyId: first },
    });
    await owner.api.sheet.survey.issue.mutate({ jobId, version: chosen.version });
    const drawn = await drawBox(jobId, board.id);
    expect(drawn.facts.payloadKg).toBe(430);
    const issued = await owner.api.sheet.box.issue.mutate({ jobId, version: drawn.version });
    const place = issued.issue?.result.place ?? null;
    expect(place?.placement.fits).toBe(true);
    expect(place?.opening.widthSpareMm).toBeCloseTo(350, 6);
    const behind = place?.placement.clearances.find(({ surface }) => surface.role === 'seat-back');
    expect(behind?.clearanceMm).toBeCloseTo(12, 3);

    const again = await owner.api.survey.setReading.mutate({
      key: randomUUID(),
      reading: { surveyId: first, version: 1, reading: reading('archWidth', 980), takenAt: null },
    });
    await owner.api.survey.settle.mutate({ surveyId: again.id });
    const moved = await owner.api.sheet.survey.save.mutate({
      jobId,
      version: chosen.version,
      input: { ...chosen.input, surveyId: again.id },
    });
    await owner.api.sheet.survey.issue.mutate({ jobId, version: moved.version });
    const { changes } = await owner.api.sheet.box.read.query({ jobId });
    expect(changes.length).toBeGreaterThan(0);
    expect(changes.every(({ source }) => source === '02 Survey')).toBe(true);
  });

  it('lists a changed driver with its old and new values', async () => {
    const { driver, board } = await catalogue();
    const { job, jobId, soundVersion } = await jobWithSound(driver.id);
    await owner.api.sheet.sound.issue.mutate({ jobId, version: soundVersion });
    const drawn = await drawBox(jobId, board.id);
    await owner.api.sheet.box.issue.mutate({ jobId, version: drawn.version });
    await owner.api.part.driver.change.mutate({
      id: driver.id,
      version: driver.version,
      input: {
        ...part('Q-10'),
        kind: 'driver',
        maker: 'Quince',
        figures: { ...driverFigures, cutoutDiaMm: 238, mountingDepthMm: 144 },
      },
    });
    const { sheets } = await owner.api.job.byNumber.query({ number: job.number });
    expect(sheets.find(({ kind }) => kind === 'box')?.changes).toEqual([
      { source: 'Records', label: 'Quince Q-10 · cut-out', before: '236 mm', after: '238 mm' },
      { source: 'Records', label: 'Quince Q-10 · mounting depth', before: '141 mm', after: '144 mm' },
    ]);
  });

  it('lists what another target of the sound sheet changes', async () => {
    const { driver, board } = await catalogue();
    const { jobId, soundVersion } = await jobWithSound(driver.id);
    const first = await owner.api.sheet.sound.issue.mutate({ jobId, version: soundVersion });
    const drawn = await drawBox(jobId, board.id);
    await owner.api.sheet.box.issue.mutate({ jobId, version: drawn.version });
    const moved = await owner.api.sheet.sound.save.mutate({
      jobId,
      version: first.version,
      input: { ...first.input, targetNet: { litres: 40, typed: '40' } },
    });
    await owner.api.sheet.sound.issue.mutate({ jobId, version: moved.version });
    const { changes, outcome } = await owner.api.sheet.box.read.query({ jobId });
    expect(changes).toContainEqual({
      source: '03 Sound',
      label: 'Net volume wanted',
      before: '30.0 L',
      after: '40.0 L',
    });
    expect(outcome.state === 'ready' ? outcome.result.box.volumes.targetNetLitres : null).toBe(40);
  });

  it('waits for the sound sheet to be issued', async () => {
    const { driver, board } = await catalogue();
    const { jobId } = await jobWithSound(driver.id);
    const drawn = await drawBox(jobId, board.id);
    expect(drawn.draftUpstream).toContain('sound');
    expect(drawn.outcome.state).toBe('ready');
    const refused = await shopErrorOf(owner.api.sheet.box.issue.mutate({ jobId, version: drawn.version }));
    expect(refused).toMatchObject({ code: 'UPSTREAM_NOT_ISSUED', fields: [{ path: 'sound' }] });
  });

  it('names the dimension that cannot be, and keeps what was typed', async () => {
    const { driver, board } = await catalogue();
    const { jobId, soundVersion } = await jobWithSound(driver.id);
    await owner.api.sheet.sound.issue.mutate({ jobId, version: soundVersion });
    const drawn = await drawBox(jobId, board.id);
    const outside = { ...drawn.input.outside, depth: length(40) };
    const thin = await owner.api.sheet.box.save.mutate({
      jobId,
      version: drawn.version,
      input: { ...drawn.input, outside },
    });
    expect(thin.outcome).toMatchObject({ state: 'refused', refusals: [{ field: 'outside.depth', got: 40 }] });
    const refused = await shopErrorOf(owner.api.sheet.box.issue.mutate({ jobId, version: thin.version }));
    expect(refused.fields.map(({ path }) => path)).toEqual(['outside.depth']);
    expect((await owner.api.sheet.box.read.query({ jobId })).input.outside.depth).toEqual(length(40));
  });

  it('is read by a technician, who may not change it and sees no prices', async () => {
    const technician = await api.member(owner, 'technician');
    const { driver, board } = await catalogue();
    const { jobId } = await jobWithSound(driver.id);
    const drawn = await drawBox(jobId, board.id);
    const read = await technician.api.sheet.box.read.query({ jobId });
    expect(read.outcome.state).toBe('ready');
    expect(JSON.stringify(read)).not.toContain('PriceMinor');
    const refused = await shopErrorOf(
      technician.api.sheet.box.save.mutate({ jobId, version: drawn.version, input: drawn.input }),
    );
    expect(refused.code).toBe('NOT_ALLOWED');
  });
});
