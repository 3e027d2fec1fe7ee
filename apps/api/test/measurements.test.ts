// Sweeps from text to figures: of a driver, of a built box, of a car; and what is refused on the way.
import { randomUUID } from 'node:crypto';
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import type { SweepConditions, TrialBox } from '@gusset/contracts/measurement';
import { driverFiguresSchema } from '@gusset/contracts/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { latestTransfer, measuredCabin } from '../src/measurements/transfer.queries.ts';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';
import { impedanceText, levelText, noiseText } from './support/sweep-text.ts';

let api: TestApi;
let owner: TestPerson;
let technician: TestPerson;
let driverId: string;
let modelId: string;
let jobId: string;

const DRIVER = {
  fsHz: 29.5,
  qms: 4.6,
  qes: 0.52,
  vasLitres: 48,
  sdCm2: 340,
  reOhm: 3.6,
  leMh: 0.9,
  l2Mh: null,
  r2Ohm: null,
  coils: 1,
  xmaxMm: 11,
  peWatts: 300,
  displacementLitres: 2,
} as const;
const ON = { source: { voltageVrms: 2 }, driver: DRIVER } as const;
const inBox = (netLitres: number): Omit<SoundSystemInput, 'frequenciesHz'> => ({
  ...ON,
  enclosure: { kind: 'closed', chamber: { netLitres, ql: 15 } },
});
const FREE_AIR = { ...ON, enclosure: { kind: 'infinite-baffle' } } as const;
const NOTHING: SweepConditions = { addedMass: null, knownBox: null, trial: null };
const about = {
  fileName: 'sweep.txt',
  conditions: NOTHING,
  place: '',
  direction: null,
  notes: '',
  takenOn: '2026-11-24',
} as const;
const key = () => randomUUID();

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
  technician = await api.member(owner, 'technician');
  const driver = await owner.api.part.driver.create.mutate({
    key: key(),
    input: {
      kind: 'driver',
      name: 'Q-10',
      maker: 'Quince',
      figures: driverFiguresSchema.parse({
        dataSheet: DRIVER,
        overallDiaMm: 269,
        cutoutDiaMm: 236,
        mountingDepthMm: 141,
      }),
    },
  });
  driverId = driver.id;
  const model = await owner.api.vehicleModel.create.mutate({
    key: key(),
    input: {
      make: 'Halden',
      model: 'Brisk',
      yearFrom: 2021,
      yearTo: null,
      body: 'hatch',
      longestCabinM: 2.4,
    },
  });
  modelId = model.id;
  const customer = await owner.api.customer.create.mutate({ key: key(), input: { name: 'R. Okafor' } });
  const job = await owner.api.job.open.mutate({
    key: key(),
    job: { title: 'Bass box', customerId: customer.id },
  });
  jobId = job.id;
});
afterAll(() => api.close());

async function importOfDriver(
  use: 'free-air' | 'added-mass' | 'known-box',
  text: string,
  conditions = NOTHING,
) {
  const sweep = { ...about, driverId, use, text, conditions };
  return (await owner.api.measurement.driver.import.mutate({ key: key(), sweep })).sweep;
}

describe('sweeps of a driver', () => {
  it('give the figures back', async () => {
    const freeAir = await importOfDriver('free-air', impedanceText(FREE_AIR));
    const box = await importOfDriver(
      'known-box',
      impedanceText({ ...inBox(22), enclosure: { kind: 'closed', chamber: { netLitres: 22 } } }),
      {
        ...NOTHING,
        knownBox: { litres: 22, typed: '22 L' },
      },
    );
    const answer = await owner.api.measurement.driver.fit.query({
      driverId,
      freeAirId: freeAir.id,
      secondId: box.id,
      bench: { reOhm: 3.6, sdCm2: 340, coils: 1, wiring: 'single' },
    });
    expect(answer.fit.fsHz.value).toBeCloseTo(29.5, 2);
    expect(answer.figures.vasLitres).toBeCloseTo(48, 0);
    expect(answer.figures.leMh).toBeCloseTo(0.9, 2);
  });

  it('go into the catalogue over the version that was seen, and the record keeps the ones before', async () => {
    const part = await owner.api.part.driver.create.mutate({
      key: key(),
      input: {
        kind: 'driver',
        name: 'Q-10 as sold',
        figures: driverFiguresSchema.parse({
          dataSheet: { ...DRIVER, fsHz: 27, qts: 0.4, mmsGrams: 120 },
          overallDiaMm: 269,
          cutoutDiaMm: 236,
          mountingDepthMm: 141,
        }),
      },
    });
    const text = impedanceText(FREE_AIR);
    const { sweep } = await owner.api.measurement.driver.import.mutate({
      key: key(),
      sweep: { ...about, driverId: part.id, use: 'free-air', text },
    });
    const fit = {
      driverId: part.id,
      freeAirId: sweep.id,
      secondId: null,
      bench: { reOhm: 3.6, sdCm2: 340, coils: 1 as const, wiring: 'single' as const },
    };
    const taken = await owner.api.measurement.driver.take.mutate({ ...fit, version: part.version });
    expect(taken.figures.dataSheet).toMatchObject({ fsHz: 29.5, qts: null, mmsGrams: null, vasLitres: 48 });
    const error = await shopErrorOf(
      owner.api.measurement.driver.take.mutate({ ...fit, version: part.version }),
    );
    expect(error.code).toBe('CHANGED_MEANWHILE');
    const entries = await api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.auditEntry.findMany({
        where: { subjectId: part.id, act: 'part.driver.changed' },
        select: { before: true },
      }),
    );
    expect(entries).toMatchObject([{ before: { figures: { dataSheet: { fsHz: 27, mmsGrams: 120 } } } }]);
  });

  it('are told apart line by line when they cannot be read', async () => {
    const text = impedanceText(FREE_AIR).replace('\n', '\nnot a row\n');
    const wrong = text.split('\n').toSpliced(30, 1, 'sixty four').join('\n');
    const error = await shopErrorOf(importOfDriver('free-air', wrong));
    expect(error).toMatchObject({ code: 'REFUSED_BY_ENGINE', fields: [{ path: 'text' }] });
    expect(error.message).toContain('line 31 reads “sixty four”');
  });

  it('need the mass that was on the cone', async () => {
    const error = await shopErrorOf(importOfDriver('added-mass', impedanceText(FREE_AIR)));
    expect(error).toMatchObject({ code: 'NOT_ACCEPTED', fields: [{ path: 'conditions.addedMass' }] });
  });

  it('are kept once: the same key gives the same answer, the same file is named', async () => {
    const sweep = {
      ...about,
      driverId,
      use: 'free-air' as const,
      text: impedanceText({ ...FREE_AIR, source: { voltageVrms: 2, cableOhm: 0.1 } }),
    };
    const once = key();
    const first = await owner.api.measurement.driver.import.mutate({ key: once, sweep });
    const again = await owner.api.measurement.driver.import.mutate({ key: once, sweep });
    expect(again.sweep.id).toBe(first.sweep.id);
    const error = await shopErrorOf(owner.api.measurement.driver.import.mutate({ key: key(), sweep }));
    expect(error).toMatchObject({ code: 'NOT_ACCEPTED', fields: [{ path: 'text' }] });
  });

  it('leave the list when they are put away, and come back', async () => {
    const { id } = await importOfDriver(
      'free-air',
      impedanceText({ ...FREE_AIR, source: { voltageVrms: 2, cableOhm: 0.2 } }),
    );
    const ids = async (archived: boolean) =>
      (await owner.api.measurement.driver.list.query({ driverId, archived })).map((sweep) => sweep.id);
    await owner.api.measurement.driver.archive.mutate({ sweepId: id, archived: true });
    expect(await ids(false)).not.toContain(id);
    expect(await ids(true)).toContain(id);
    await owner.api.measurement.driver.archive.mutate({ sweepId: id, archived: false });
    expect(await ids(false)).toContain(id);
  });

  it('are no business of a technician, who may look', async () => {
    const sweep = { ...about, driverId, use: 'free-air' as const, text: impedanceText(FREE_AIR) };
    const error = await shopErrorOf(technician.api.measurement.driver.import.mutate({ key: key(), sweep }));
    expect(error.code).toBe('NOT_ALLOWED');
    expect((await technician.api.measurement.driver.list.query({ driverId })).length).toBeGreaterThan(0);
  });
});

describe('the sweep of a built box', () => {
  const importOfJob = (text: string) =>
    technician.api.measurement.job.import.mutate({
      key: key(),
      sweep: { ...about, jobId, use: 'built-box', text },
    });

  it('has nothing to stand beside before sheet 03 says something', async () => {
    const { sweep } = await importOfJob(impedanceText(inBox(31)));
    const error = await shopErrorOf(
      technician.api.measurement.job.compare.query({ jobId, sweepId: sweep.id, blockedId: null }),
    );
    expect(error.code).toBe('SHEET_INCOMPLETE');
  });

  it('says that the box is 2.1 L smaller than drawn', async () => {
    const sound = await owner.api.sheet.sound.read.query({ jobId });
    await owner.api.sheet.sound.save.mutate({
      jobId,
      version: sound.version,
      input: {
        ...sound.input,
        driverId,
        targetNet: { litres: 30, typed: '30' },
        drive: { watts: 300, typed: '300' },
      },
    });
    const { sweep } = await importOfJob(impedanceText(inBox(27.9)));
    const built = await technician.api.measurement.job.compare.query({
      jobId,
      sweepId: sweep.id,
      blockedId: null,
    });
    const net = built.differences.find(({ code }) => code === 'net-volume');
    expect(net?.difference).toBeCloseTo(-2.1, 1);
    expect(net?.beyond).toBe(true);
    expect(built.from).toEqual(['03 Sound draft']);
  });
});

describe('sweeps in a car', () => {
  const trial = (): TrialBox => ({
    driverId,
    net: { litres: 30, typed: '30 L' },
    tuning: null,
    drive: { volts: 2, typed: '2 V' },
  });
  const cabin = { kind: 'shelf', longestM: 2.4, upperQ: 0.7, lowerHz: 22, lowerQ: 0.7 } as const;
  const importOfCar = async (
    use: 'in-car' | 'near-cone' | 'background-noise',
    text: string,
    place = '',
    box: TrialBox | null = trial(),
  ) => {
    const sweep = {
      ...about,
      modelId,
      use,
      text,
      place,
      direction: use === 'in-car' ? ('rearward' as const) : null,
      conditions: { ...NOTHING, trial: use === 'background-noise' ? null : box },
    };
    return (await technician.api.measurement.vehicleModel.import.mutate({ key: key(), sweep })).sweep;
  };

  it('become the car’s own transfer, kept with its reason for every later job', async () => {
    await importOfCar('near-cone', levelText(inBox(30), -20));
    await importOfCar('background-noise', noiseText(40));
    const left = await importOfCar('in-car', levelText({ ...inBox(30), cabin }, -20), 'boot, left');
    const quiet = await importOfCar('in-car', levelText({ ...inBox(30), cabin }, -58), 'behind the seat');
    const asked = { modelId, sweepIds: [left.id, quiet.id] };
    const worked = await technician.api.measurement.vehicleModel.workOut.query(asked);
    expect(worked.sweeps.map(({ rejection }) => rejection?.code ?? null)).toEqual([null, 'noisy']);
    expect(worked.transfer?.level.by).toBe('near-cone');
    const at20 = worked.transfer?.points[0]?.gainDb ?? 0;
    expect(at20).toBeGreaterThan(8); // two octaves under 71.5 Hz, less what the body leaks

    const reason = 'Loudest below 40 Hz, and the load floor stays free';
    const kept = await technician.api.measurement.vehicleModel.keep.mutate({
      key: key(),
      transfer: { modelId, sweepIds: [left.id], place: 'boot, left', direction: 'rearward', reason },
    });
    expect(kept.revision).toBe(1);
    const [listed] = await owner.api.measurement.vehicleModel.transfers.query({ modelId });
    expect(listed).toMatchObject({ reason, keptBy: 'technician person', sweepIds: [left.id] });
    await api.deps.doors.inShop(owner.shopId, async (tx) => {
      expect((await latestTransfer(tx, owner, modelId))?.id).toBe(kept.id);
      const fact = await measuredCabin(tx, owner, modelId);
      expect(fact?.label).toContain('boot, left, firing rearward');
      expect(fact?.points.length).toBe(kept.curve.points.length);
    });
  });

  it('count up in revisions', async () => {
    const up = await importOfCar('in-car', levelText({ ...inBox(30), cabin }, -19), 'boot, middle');
    const kept = await technician.api.measurement.vehicleModel.keep.mutate({
      key: key(),
      transfer: {
        modelId,
        sweepIds: [up.id],
        place: 'boot, middle',
        direction: 'up',
        reason: 'Room for the spare',
      },
    });
    expect(kept.revision).toBe(2);
  });

  it('are not mixed where they played different boxes', async () => {
    const other = { ...trial(), net: { litres: 24, typed: '24' } };
    const one = await importOfCar('in-car', levelText(inBox(24)), 'a', other);
    const two = await importOfCar('in-car', levelText(inBox(30)), 'b');
    const asked = { modelId, sweepIds: [one.id, two.id] };
    const error = await shopErrorOf(owner.api.measurement.vehicleModel.workOut.query(asked));
    expect(error).toMatchObject({ code: 'NOT_ACCEPTED', fields: [{ path: 'sweepIds' }] });
  });

  it('are not kept where every one was rejected, nor without a reason', async () => {
    const lost = await importOfCar('in-car', levelText({ ...inBox(30), cabin }, -60), 'c');
    const transfer = { modelId, sweepIds: [lost.id], place: 'c', direction: 'up' as const, reason: 'none' };
    const keep = (changes: object) =>
      technician.api.measurement.vehicleModel.keep.mutate({
        key: key(),
        transfer: { ...transfer, ...changes },
      });
    expect((await shopErrorOf(keep({}))).message).toContain('Every one of these sweeps was rejected');
    const error = await shopErrorOf(keep({ reason: '  ' }));
    expect(error.fields).toMatchObject([{ path: 'transfer.reason' }]);
  });

  it('cannot name another shop’s driver or car', async () => {
    const stranger = await api.owner('Harbour Lane Audio');
    const sweep = { ...about, modelId, use: 'in-car' as const, text: levelText(inBox(30)), place: 'x' };
    const call = (changes: object) =>
      stranger.api.measurement.vehicleModel.import.mutate({ key: key(), sweep: { ...sweep, ...changes } });
    const conditions = { ...NOTHING, trial: trial() };
    expect((await shopErrorOf(call({ conditions }))).code).toBe('NOT_FOUND');
    const theirs = await stranger.api.vehicleModel.create.mutate({
      key: key(),
      input: { make: 'Merle', model: 'Van', yearFrom: null, yearTo: null, body: 'van' },
    });
    const error = await shopErrorOf(call({ conditions, modelId: theirs.id }));
    expect(error.fields).toMatchObject([{ path: 'conditions.trial.driverId' }]);
  });
});
