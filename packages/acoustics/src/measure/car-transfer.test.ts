import { soundSystemSchema } from '@gusset/contracts/acoustics';
import {
  cabinOfTransfer,
  type SweepColumns,
  type TransferAnswer,
  type TransferSetting,
  transferCurveSchema,
  transferSettingSchema,
} from '@gusset/contracts/measurement';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quince10 } from '../../truth/drivers.ts';
import { frequencyGrid } from '../frequency-grid.ts';
import { solveResponse } from '../response.ts';
import { type CarSweeps, carTransfer } from './car-transfer.ts';
import { seededNoise } from './seeded-noise.ts';
import { meanDb, smoothed, smoothedDb } from './smoothing.ts';

const SETTING: TransferSetting = transferSettingSchema.parse({});
const GRID = frequencyGrid({ lowHz: 10, highHz: 500, count: 340 });
const TRIAL: CarSweeps['trial'] = {
  source: { voltageVrms: 4 },
  driver: quince10,
  enclosure: { kind: 'closed', chamber: { netLitres: 30, ql: 15 } },
};
const SHELF = { kind: 'shelf', longestM: 2.4, upperQ: 0.7, lowerHz: 22, lowerQ: 0.7 } as const;

function levels(cabin: typeof SHELF | null): readonly number[] {
  const solved = solveResponse({ ...TRIAL, frequenciesHz: GRID, cabin });
  if (isRefusal(solved)) throw new Error(JSON.stringify(solved.refusal));
  return solved.splDb;
}

/** What the shelf adds, at any frequency, by the engine itself. */
function shelfDb(frequencyHz: number): number {
  const at = (cabin: typeof SHELF | null) => {
    const solved = solveResponse({ ...TRIAL, frequenciesHz: [frequencyHz], cabin });
    if (isRefusal(solved)) throw new Error(JSON.stringify(solved.refusal));
    return solved.splDb[0] ?? 0;
  };
  return at(SHELF) - at(null);
}

function sweep(levelsDb: readonly number[], { gainDb = 0, noiseDb = 0, seed = 3 } = {}): SweepColumns {
  const draw = seededNoise(seed);
  return {
    frequenciesHz: GRID,
    values: levelsDb.map((db) => db + gainDb + noiseDb * draw()),
    phaseRad: null,
  };
}

function worked(changes: Partial<CarSweeps>, setting = SETTING): TransferAnswer {
  const answer = carTransfer(
    { inCar: [], nearCone: null, noise: null, calibration: null, trial: TRIAL, ...changes },
    setting,
  );
  if (isRefusal(answer)) throw new Error(JSON.stringify(answer.refusal));
  return answer;
}

function pointsOf({ transfer }: TransferAnswer) {
  if (transfer === null) throw new Error('every sweep was rejected');
  return transfer.points;
}

describe('carTransfer', () => {
  it('gives back the cabin that the sweeps were made with, whatever the gain of the microphone', () => {
    const answer = worked({
      inCar: [{ id: 'a', columns: sweep(levels(SHELF), { gainDb: -31 }) }],
      nearCone: sweep(levels(null), { gainDb: -31 }),
    });
    for (const { frequencyHz, gainDb } of pointsOf(answer)) {
      // Smoothing over a sixth of an octave rounds a curve of 12 dB an octave off by a tenth.
      expect(Math.abs(gainDb - shelfDb(frequencyHz)), `${frequencyHz} Hz`).toBeLessThan(0.25);
    }
    expect(answer.transfer?.level).toEqual({ by: 'near-cone', offsetDb: 31 });
  });
  it('holds within a decibel under a decibel of noise in each row', () => {
    const inCar = [1, 2, 3].map((seed) => ({
      id: `${seed}`,
      columns: sweep(levels(SHELF), { noiseDb: 1, seed }),
    }));
    const answer = worked({ inCar, nearCone: sweep(levels(null)) });
    for (const { frequencyHz, gainDb } of pointsOf(answer)) {
      expect(Math.abs(gainDb - shelfDb(frequencyHz)), `${frequencyHz} Hz`).toBeLessThan(0.9);
    }
  });
  it('sets the mean of the matching band to nothing where no sweep near the cone was taken', () => {
    const answer = worked({ inCar: [{ id: 'a', columns: sweep(levels(SHELF), { gainDb: 12 }) }] });
    const band = pointsOf(answer).filter(({ frequencyHz }) => frequencyHz >= 120);
    const mean = band.reduce((sum, { gainDb }) => sum + gainDb, 0) / band.length;
    expect(mean).toBeCloseTo(0, 1);
    expect(answer.transfer?.level.by).toBe('band');
  });
  it('takes the microphone’s own curve off', () => {
    const calibration = { frequenciesHz: [5, 50, 500], values: [-4, -1, 0], phaseRad: null };
    const coloured = levels(SHELF).map((db, i) => {
      const share = Math.log10((GRID[i] ?? 1) / 5);
      return db + (share <= 1 ? -4 + 3 * share : -1 + (share - 1));
    });
    const answer = worked({
      inCar: [{ id: 'a', columns: sweep(coloured) }],
      nearCone: sweep(coloured.map((db, i) => db - (levels(SHELF)[i] ?? 0) + (levels(null)[i] ?? 0))),
      calibration,
    });
    for (const { frequencyHz, gainDb } of pointsOf(answer))
      expect(Math.abs(gainDb - shelfDb(frequencyHz))).toBeLessThan(0.25);
  });
  it('rejects a sweep too near the noise, says where, and leaves it out', () => {
    const noise = sweep(GRID.map((hz) => (hz < 30 ? 85 : 30)));
    const inCar = [
      { id: 'loud', columns: sweep(levels(SHELF), { gainDb: 20 }) },
      { id: 'quiet', columns: sweep(levels(SHELF), { gainDb: -6 }) },
    ];
    const answer = worked({ inCar, noise });
    expect(answer.sweeps.map(({ rejection }) => rejection?.code ?? null)).toEqual([null, 'noisy']);
    const rejection = answer.sweeps[1]?.rejection;
    expect(rejection?.code === 'noisy' && rejection.atHz).toBeLessThan(31);
    const alone = worked({ inCar: inCar.slice(0, 1), noise });
    expect(pointsOf(answer)).toEqual(pointsOf(alone));
  });
  it('rejects a sweep that doesn’t reach the band', () => {
    const short = { frequenciesHz: GRID.filter((hz) => hz > 35), phaseRad: null };
    const values = levels(SHELF).slice(GRID.length - short.frequenciesHz.length);
    const answer = worked({ inCar: [{ id: 'a', columns: { ...short, values } }] });
    expect(answer.sweeps[0]?.rejection).toMatchObject({ code: 'short', neededLowHz: 20 });
    expect(answer.transfer).toBeNull();
  });
  it('keeps the difference between two places', () => {
    const answer = worked({
      inCar: [
        { id: 'corner', columns: sweep(levels(SHELF)) },
        { id: 'middle', columns: sweep(levels(SHELF), { gainDb: -4 }) },
      ],
    });
    const [corner, middle] = answer.sweeps;
    expect((corner?.levelDb[9] ?? 0) - (middle?.levelDb[9] ?? 0)).toBeCloseTo(4, 1);
    expect(pointsOf(answer)[9]?.spreadDb).toBeCloseTo(4, 1);
  });
  it('makes a cabin that the sound engine takes', () => {
    const { transfer } = worked({ inCar: [{ id: 'a', columns: sweep(levels(SHELF)) }] });
    expect(transferCurveSchema.safeParse(transfer).success).toBe(true);
    if (transfer === null) return;
    const system = { ...TRIAL, frequenciesHz: [20, 40, 80], cabin: cabinOfTransfer(transfer) };
    expect(soundSystemSchema.safeParse(system).success).toBe(true);
    const solved = solveResponse(system);
    if (isRefusal(solved)) throw new Error(JSON.stringify(solved.refusal));
    expect((solved.splDb[0] ?? 0) - (solved.splFreeDb[0] ?? 0)).toBeCloseTo(
      transfer.points[0]?.gainDb ?? 0,
      6,
    );
  });
  it('refuses a sweep near the cone taken at another gain by far', () => {
    const answer = carTransfer(
      {
        inCar: [{ id: 'a', columns: sweep(levels(SHELF)) }],
        nearCone: sweep(levels(null), { gainDb: -120 }),
        noise: null,
        calibration: null,
        trial: TRIAL,
      },
      SETTING,
    );
    expect(answer).toMatchObject({ refusal: { field: 'inCar' } });
  });
});

describe('smoothing', () => {
  it('leaves a level curve level and never leaves the range of its rows', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -90, max: 130, noNaN: true }), { minLength: 30, maxLength: 30 }),
        fc.constantFrom(1, 3, 6, 12, 24),
        (values, parts) => {
          const hz = frequencyGrid({ lowHz: 10, highHz: 400, count: 30 });
          const calm = smoothed(hz, values, parts);
          const [low, high] = [Math.min(...values), Math.max(...values)];
          expect(calm.every((value) => value >= low - 1e-6 && value <= high + 1e-6)).toBe(true);
          const flat = smoothedDb(
            hz,
            hz.map(() => 71),
            parts,
          );
          expect(flat.every((db) => Math.abs(db - 71) < 1e-9)).toBe(true);
        },
      ),
    );
  });
  it('adds mean squares: a level and silence give 3 dB less', () => {
    expect(meanDb([90, -200])).toBeCloseTo(90 - 10 * Math.log10(2), 9);
  });
  it('doesn’t let dense rows outweigh sparse ones', () => {
    // One octave: a row at each end of the lower half, fifty in the upper half.
    const upper = frequencyGrid({ lowHz: 28.4, highHz: 40, count: 50 });
    const hz = [20, 24, 28.2, ...upper];
    const values = [0, 0, 0, ...upper.map(() => 1)];
    const middle = smoothed([...hz], [...values], 1)[2] ?? 0;
    expect(middle).toBeGreaterThan(0.35);
    expect(middle).toBeLessThan(0.65);
  });
});
