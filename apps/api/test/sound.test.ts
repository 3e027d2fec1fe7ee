// The sound sheet through the API: every kind of box issues, its change reaches the box sheet, and sheets of the first
// program still open.
import { randomUUID } from 'node:crypto';
import { driverFiguresSchema, sheetFiguresSchema } from '@gusset/contracts/records';
import {
  designOf,
  EMPTY_PORT,
  EMPTY_RADIATOR,
  EMPTY_SOUND_INPUT,
  type SoundInput,
  type SoundResult,
} from '@gusset/contracts/sound';
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

const dataSheet = {
  fsHz: 29.5,
  qms: 4.6,
  qes: 0.42,
  vasLitres: 48,
  sdCm2: 340,
  reOhm: 3.6,
  leMh: 0,
  xmaxMm: 11,
  peWatts: 300,
  displacementLitres: 2,
};
const figures = driverFiguresSchema.parse({
  dataSheet,
  overallDiaMm: 269,
  cutoutDiaMm: 236,
  boltCircleDiaMm: 254,
  boltCount: 8,
  flangeThicknessMm: 6,
  mountingDepthMm: 141,
  magnetDiaMm: 156,
  massKg: 6.4,
});

function addDriver(name: string) {
  return owner.api.part.driver.create.mutate({
    key: randomUUID(),
    input: { ...part(name), kind: 'driver', maker: 'Quince', figures },
  });
}

async function openJob(): Promise<string> {
  const customer = await owner.api.customer.create.mutate({
    key: randomUUID(),
    input: { name: 'R. Okafor', phone: '', email: '', address: '', notes: '' },
  });
  const { id: jobId } = await owner.api.job.open.mutate({
    key: randomUUID(),
    job: { title: 'Bass in the boot', customerId: customer.id, vehicleId: null },
  });
  const brief = await owner.api.sheet.brief.read.query({ jobId });
  const wished = await owner.api.sheet.brief.save.mutate({
    jobId,
    version: 0,
    input: { ...brief.input, wish: 'Deep, for long trips', aim: 'deep' },
  });
  await owner.api.sheet.brief.issue.mutate({ jobId, version: wished.version });
  return jobId;
}

const litres = (value: number) => ({ litres: value, typed: String(value) });
const mm = (value: number) => ({ mm: value, typed: String(value), unit: 'mm' as const });
const figure = (value: number) => ({ value, typed: String(value) });

const closed = (driverId: string): SoundInput => ({
  ...EMPTY_SOUND_INPUT,
  driverId,
  drive: { watts: 300, typed: '300' },
  targetNet: litres(30),
});
const vented = (driverId: string, net = 60): SoundInput => ({
  ...closed(driverId),
  enclosure: 'vented',
  leak: 'usual',
  targetNet: litres(net),
  port: { ...EMPTY_PORT, diameter: mm(100), outerFlare: mm(20), innerFlare: mm(20), tuning: figure(32) },
});
const slot = { ...EMPTY_PORT, shape: 'slot' as const, width: mm(280), height: mm(40) };
const others = (driverId: string): readonly SoundInput[] => [
  { ...closed(driverId), enclosure: 'infinite-baffle', targetNet: null },
  {
    ...closed(driverId),
    enclosure: 'passive-radiator',
    targetNet: litres(45),
    radiator: {
      ...EMPTY_RADIATOR,
      count: 2,
      fsHz: figure(18),
      qms: figure(6),
      vasLitres: figure(60),
      sdCm2: figure(480),
    },
  },
  {
    ...closed(driverId),
    enclosure: 'single-tuned-bandpass',
    front: { net: litres(22), fill: 'none' },
    port: { ...slot, tuning: figure(52) },
  },
  {
    ...closed(driverId),
    enclosure: 'dual-tuned-bandpass',
    targetNet: litres(50),
    front: { net: litres(24), fill: 'none' },
    rearPort: { ...EMPTY_PORT, diameter: mm(100), tuning: figure(31) },
    port: { ...slot, tuning: figure(68) },
  },
];

async function addBoard() {
  return owner.api.part.sheet.create.mutate({
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
}

describe('the sound sheet', () => {
  it('issues a vented design with its port, and the box sheet lists what a smaller one changes', async () => {
    const [driver, board, jobId] = [await addDriver('Q-10'), await addBoard(), await openJob()];
    const saved = await owner.api.sheet.sound.save.mutate({ jobId, version: 0, input: vented(driver.id) });
    const first = await owner.api.sheet.sound.issue.mutate({ jobId, version: saved.version });
    expect(first.issue?.result).toMatchObject({
      enclosure: 'vented',
      netLitres: 60,
      chambers: [{ role: 'only', netLitres: 60 }],
      ports: [{ role: 'port', diameterMm: 100, buildable: true }],
    });
    const { input } = await owner.api.sheet.box.read.query({ jobId });
    const drawn = await owner.api.sheet.box.save.mutate({
      jobId,
      version: 0,
      input: {
        ...input,
        outside: { width: mm(600), height: mm(380), depth: mm(420), depthTop: null },
        carcassId: board.id,
      },
    });
    await owner.api.sheet.box.issue.mutate({ jobId, version: drawn.version });
    const smaller = await owner.api.sheet.sound.save.mutate({
      jobId,
      version: first.version,
      input: {
        ...vented(driver.id, 48),
        port: { ...vented(driver.id).port, by: 'length', length: mm(300) },
      },
    });
    await owner.api.sheet.sound.issue.mutate({ jobId, version: smaller.version });
    const { changes } = await owner.api.sheet.box.read.query({ jobId });
    const change = (label: string) => changes.find((one) => one.source === '03 Sound' && one.label === label);
    expect(change('Net volume wanted')).toMatchObject({ before: '60.0 L', after: '48.0 L' });
    expect(change('Port')).toMatchObject({ after: '1 × ⌀ 100 × 300 mm' });
    expect(change('Port, tuning')?.before).toBe('32.0 Hz');
  });

  it('works out every other kind of box, and what it says survives the database', async () => {
    const driver = await addDriver('Q-10 again');
    for (const input of others(driver.id)) {
      const jobId = await openJob();
      const saved = await owner.api.sheet.sound.save.mutate({ jobId, version: 0, input });
      const issued = await owner.api.sheet.sound.issue.mutate({ jobId, version: saved.version });
      expect(issued.issue?.result.enclosure).toBe(input.enclosure);
      expect(issued.issue?.result).toEqual(saved.outcome.state === 'ready' ? saved.outcome.result : null);
      expect(issued.issue?.input).toEqual(input);
    }
  });

  it('reads the drivers of the designs beside, and keeps them with the issue', async () => {
    const [own, other, jobId] = [await addDriver('Q-10 own'), await addDriver('Q-10 other'), await openJob()];
    const design = designOf(vented(other.id));
    const saved = await owner.api.sheet.sound.save.mutate({
      jobId,
      version: 0,
      input: { ...closed(own.id), variants: [{ letter: 'B', name: 'deeper', design }] },
    });
    expect(saved.facts).toMatchObject({ driver: { id: own.id }, otherDrivers: [{ id: other.id }] });
    const issued = await owner.api.sheet.sound.issue.mutate({ jobId, version: saved.version });
    expect(issued.issue?.result.variants).toMatchObject([
      { letter: 'B', name: 'deeper', state: 'ready', design: { driverName: 'Quince Q-10 other' } },
    ]);
  });

  it('names the port that cannot be at its field, keeps what was typed, and issues nothing', async () => {
    const [driver, jobId] = [await addDriver('Q-10 wide'), await openJob()];
    const port = { ...vented(driver.id).port, diameter: mm(600) };
    const input = { ...vented(driver.id, 20), port };
    const saved = await owner.api.sheet.sound.save.mutate({ jobId, version: 0, input });
    expect(saved.outcome).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'port.diameter', got: 600 }],
    });
    const refused = await shopErrorOf(owner.api.sheet.sound.issue.mutate({ jobId, version: saved.version }));
    expect(refused.fields.map(({ path }) => path)).toEqual(['port.diameter']);
    expect((await owner.api.sheet.sound.read.query({ jobId })).input.port.diameter).toEqual(mm(600));
  });

  it.each([
    ['a negative port length', { port: { ...EMPTY_PORT, length: mm(-20) } }],
    ['a band with a Q of nothing', { equaliser: [{ centre: figure(40), gainDb: figure(3), q: figure(0) }] }],
    ['a radiator without Vas', { radiator: { ...EMPTY_RADIATOR, vasLitres: figure(0) } }],
  ])('does not keep %s', async (_, changes) => {
    const [driver, jobId] = [await addDriver('Q-10 bad'), await openJob()];
    const input = { ...closed(driver.id), ...changes };
    const refused = await shopErrorOf(owner.api.sheet.sound.save.mutate({ jobId, version: 0, input }));
    expect(refused.code).toBe('NOT_ACCEPTED');
    expect((await owner.api.sheet.sound.read.query({ jobId })).version).toBe(0);
  });

  it.each(['qms', 'qes', 'qts', 'vasLitres'] as const)(
    'takes no driver whose %s is 0, and says where',
    async (key) => {
      const refused = await shopErrorOf(
        owner.api.part.driver.create.mutate({
          key: randomUUID(),
          input: {
            ...part('Q-0'),
            kind: 'driver',
            figures: { ...figures, dataSheet: { ...figures.dataSheet, [key]: 0 } },
          },
        }),
      );
      expect(refused.fields.map(({ path }) => path)).toEqual([`input.figures.dataSheet.${key}`]);
    },
  );

  it('opens drafts and issues of the first program, and issues them anew in today’s shape', async () => {
    const [driver, jobId] = [await addDriver('Q-10 early'), await openJob()];
    const saved = await owner.api.sheet.sound.save.mutate({ jobId, version: 0, input: closed(driver.id) });
    const earlier = asEarlier(saved.input, saved.outcome.state === 'ready' ? saved.outcome.result : null);
    const { shopId, userId } = owner;
    await api.deps.doors.inShop(shopId, async (tx) => {
      await tx.sheet.updateMany({ where: { shopId, jobId, kind: 'sound' }, data: { input: earlier.input } });
      const { id: enclosureId } = await tx.jobEnclosure.findFirstOrThrow({ where: { shopId, jobId } });
      await tx.sheetIssue.create({
        data: {
          enclosureId,
          ...{ shopId, jobId, kind: 'sound', revision: 1, issuedBy: userId, issuedByName: 'Somebody' },
          ...{
            ...earlier,
            upstream: [],
            fingerprint: '0'.repeat(64),
            issuedAt: new Date('2026-11-20T09:00:00Z'),
          },
          facts: plain({ driver: saved.facts.driver, longestCabinM: saved.facts.longestCabinM }),
        },
      });
    });
    const read = await owner.api.sheet.sound.read.query({ jobId });
    expect(read.outcome).toMatchObject({ state: 'ready', result: { enclosure: 'closed', netLitres: 30 } });
    expect(read.changes).toEqual([]);
    const box = await owner.api.sheet.box.read.query({ jobId });
    expect(box.upstream.sound).toMatchObject({
      enclosure: 'closed',
      ports: [],
      chambers: [{ netLitres: 30 }],
    });
    const again = await owner.api.sheet.sound.issue.mutate({ jobId, version: read.version });
    expect(again.issue).toMatchObject({ revision: 'B', result: { enclosure: 'closed' } });
  });

  it('prints on one page, as a draft and as issued', async () => {
    const [driver, jobId] = [await addDriver('Q-10 paper'), await openJob()];
    const saved = await owner.api.sheet.sound.save.mutate({ jobId, version: 0, input: vented(driver.id) });
    const paper = () =>
      api.app.inject({
        url: `/api/papers/sound-sheet/${jobId}?paper=A4`,
        headers: { cookie: owner.cookies },
      });
    const draft = await paper();
    expect(draft.headers['content-disposition']).toMatch(/sound-\d+-draft\.pdf/);
    await owner.api.sheet.sound.issue.mutate({ jobId, version: saved.version });
    const issued = await paper();
    expect(issued.statusCode).toBe(200);
    expect(issued.headers['content-disposition']).toMatch(/sound-\d+-rev-A\.pdf/);
    expect(issued.rawPayload.subarray(0, 5).toString('latin1')).toBe('%PDF-');
    expect(issued.rawPayload.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(1);
    const empty = await api.app.inject({
      url: `/api/papers/sound-sheet/${await openJob()}`,
      headers: { cookie: owner.cookies },
    });
    expect(empty.statusCode).toBe(412);
  });

  it('is read by a technician, who may not change it', async () => {
    const technician = await api.member(owner, 'technician');
    const [driver, jobId] = [await addDriver('Q-10 read'), await openJob()];
    const saved = await owner.api.sheet.sound.save.mutate({ jobId, version: 0, input: vented(driver.id) });
    const read = await technician.api.sheet.sound.read.query({ jobId });
    expect(read.outcome.state).toBe('ready');
    expect(JSON.stringify(read)).not.toContain('PriceMinor');
    const refused = await shopErrorOf(
      technician.api.sheet.sound.save.mutate({ jobId, version: saved.version, input: saved.input }),
    );
    expect(refused.code).toBe('NOT_ALLOWED');
  });
});

/** Input and result with only the keys that the first program kept. */
function asEarlier(input: SoundInput, result: SoundResult | null) {
  if (result === null) throw new Error('the sheet was not issued');
  const { driverId, count, seriesPerString, coilWiring, drive, targetNet, fill, cabin, notes } = input;
  const { parameters, contradictions, netLitres, displacementLitres, driveWatts, driveVolts, rdcOhm } =
    result;
  const { qtc, fcHz, f3Hz, peakDb, alpha, reachesHz, travelBelowHz, loudestDb, cabinLongestM, findings } =
    result;
  const { phaseRad: _phase, currentArms: _amps, realPowerWatts: _watts, ...rest } = result.curves;
  const { apparentPowerVa: _va, drives: _drives, ...curves } = rest;
  return {
    input: plain({ driverId, count, seriesPerString, coilWiring, drive, targetNet, fill, cabin, notes }),
    result: plain({
      ...{ driverId: result.driverId, driverName: result.driverName, count: result.count, parameters },
      ...{ contradictions, netLitres, displacementLitres, driveWatts, driveVolts, rdcOhm, qtc, fcHz, f3Hz },
      ...{ peakDb, alpha, reachesHz, travelBelowHz, loudestDb, cabinLongestM, curves, findings },
    }),
  };
}

function plain(value: object) {
  return JSON.parse(JSON.stringify(value));
}
