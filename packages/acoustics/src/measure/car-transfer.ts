// What a car does to the sound of a box in it: swept level at the seat less what the trial box gives, predicted from
// its circuit (half space, one metre; near the cone the same shape, since the cone is small beside the wavelength).
//
// Levels are calibrated, smoothed by mean squares, and set to one scale: by a sweep near the cone at the same gain, or
// else so that the mean over a band where a body adds little is 0 dB. All sweeps share one offset, so places compare.
// Outside the band asked for, the curve says nothing; whoever uses it holds it level there and says so.
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import type {
  OverlaidSweep,
  SweepColumns,
  SweepRejection,
  TransferAnswer,
  TransferCurve,
  TransferSetting,
} from '@gusset/contracts/measurement';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { frequencyGrid } from '../frequency-grid.ts';
import { solveResponse } from '../response.ts';
import { valueAt } from './curve.ts';
import { meanDb, smoothedDb } from './smoothing.ts';

const POINTS_PER_OCTAVE = 24;
/** Signal and noise are compared over a third of an octave: single rows of noise jump. */
const SNR_PARTS = 3;
/** A sweep that ends this near to the band's end still covers it. */
const END_SLACK = 1.03;
/** What the cabin of a sound system may hold; a car adds a tenth of it. */
const CABIN_GAIN_LIMIT_DB = 80;
const KEPT_DECIMALS = 2; // of a dB

export type InCarSweep = { readonly id: string; readonly columns: SweepColumns };

export type CarSweeps = {
  readonly inCar: readonly InCarSweep[];
  /** Null = the level is set by the band. */
  readonly nearCone: SweepColumns | null;
  /** The same microphone and gain, nothing playing; null = not measured, nothing is rejected for noise. */
  readonly noise: SweepColumns | null;
  /** The microphone's own deviation, dB, taken off everything; null = a true microphone. */
  readonly calibration: SweepColumns | null;
  /** What played: driver, box and voltage; frequencies, cabin and distance are set here. */
  readonly trial: Omit<SoundSystemInput, 'frequenciesHz' | 'cabin' | 'distanceM'>;
};

/** Every sweep by itself and the transfer of those that count. Refused with `nearCone`, `inCar` or `trial.…`. */
export function carTransfer(sweeps: CarSweeps, setting: TransferSetting): TransferAnswer | Refusal {
  const frequenciesHz = gridOf(setting);
  const predicted = solveResponse({ ...sweeps.trial, frequenciesHz, cabin: null, distanceM: 1 });
  if (isRefusal(predicted))
    return { refusal: { ...predicted.refusal, field: `trial.${predicted.refusal.field}` } };
  const near = sweeps.nearCone === null ? null : nearLevels(sweeps.nearCone, sweeps, setting, frequenciesHz);
  if (isRefusal(near)) return near;
  const read = sweeps.inCar.map(({ id, columns }) => ({
    id,
    levelDb: levelsAt(columns, sweeps.calibration, setting.smoothing, frequenciesHz),
    ...checked(columns, sweeps.noise, setting, frequenciesHz),
  }));
  const good = read.filter(({ rejection }) => rejection === null);
  const meanLevelDb = frequenciesHz.map((_, i) =>
    meanDb((good.length > 0 ? good : read).map(({ levelDb }) => levelDb[i] ?? 0)),
  );
  const offsetDb = offsetOf(frequenciesHz, predicted.splFreeDb, near ?? meanLevelDb, setting);
  const levelled = read.map(
    ({ levelDb, ...rest }): OverlaidSweep => ({ ...rest, levelDb: levelDb.map((db) => kept(db + offsetDb)) }),
  );
  const transfer =
    good.length === 0
      ? null
      : curveOf(
          {
            frequenciesHz,
            predictedDb: predicted.splFreeDb,
            sweeps: levelled.filter(({ rejection }) => rejection === null),
          },
          setting,
          {
            by: near === null ? 'band' : 'near-cone',
            offsetDb: kept(offsetDb),
          },
        );
  if (isRefusal(transfer)) return transfer;
  return { frequenciesHz, predictedDb: predicted.splFreeDb.map(kept), sweeps: levelled, transfer };
}

/** Even over the octaves, with the ends of the band that is asked for and of the one that sets the level. */
function gridOf({ lowHz, highHz }: TransferSetting): number[] {
  const count = Math.max(2, Math.ceil(Math.log2(highHz / lowHz) * POINTS_PER_OCTAVE) + 1);
  return frequencyGrid({ lowHz, highHz, count }).map((hz) => Number(hz.toPrecision(6)));
}

function levelsAt(
  { frequenciesHz, values }: SweepColumns,
  calibration: SweepColumns | null,
  parts: number,
  gridHz: readonly number[],
): number[] {
  const trueDb =
    calibration === null
      ? values
      : values.map(
          (db, i) => db - valueAt(calibration.frequenciesHz, calibration.values, frequenciesHz[i] ?? 1),
        );
  const calm = smoothedDb(frequenciesHz, trueDb, parts);
  return gridHz.map((hz) => valueAt(frequenciesHz, calm, hz));
}

type Check = { readonly worstSnrDb: number | null; readonly rejection: SweepRejection | null };

/** Range first, then signal over noise at every place of the grid. */
function checked(
  columns: SweepColumns,
  noise: SweepColumns | null,
  setting: TransferSetting,
  gridHz: readonly number[],
): Check {
  const needed = neededBand(setting);
  const range = rangeOf(columns);
  if (!covers(range, needed)) {
    return {
      worstSnrDb: null,
      rejection: { code: 'short', ...range, neededLowHz: needed.lowHz, neededHighHz: needed.highHz },
    };
  }
  if (noise === null) return { worstSnrDb: null, rejection: null };
  const quiet = rangeOf(noise);
  if (!covers(quiet, setting)) return { worstSnrDb: null, rejection: { code: 'noise-short', ...quiet } };
  const signal = levelsAt(columns, null, SNR_PARTS, gridHz);
  const floor = levelsAt(noise, null, SNR_PARTS, gridHz);
  const above = signal.map((db, i) => db - (floor[i] ?? 0));
  const worst = above.reduce((least, db, i) => (db < (above[least] ?? 0) ? i : least), 0);
  const snrDb = kept(above[worst] ?? 0);
  return {
    worstSnrDb: snrDb,
    rejection:
      snrDb < setting.leastSnrDb
        ? { code: 'noisy', snrDb, atHz: gridHz[worst] ?? 0, leastDb: setting.leastSnrDb }
        : null,
  };
}

type Band = { readonly lowHz: number; readonly highHz: number };

function neededBand({ lowHz, highHz, matchLowHz, matchHighHz }: TransferSetting): Band {
  return { lowHz: Math.min(lowHz, matchLowHz), highHz: Math.max(highHz, matchHighHz) };
}

function rangeOf({ frequenciesHz }: SweepColumns): Band {
  return { lowHz: frequenciesHz[0] ?? 0, highHz: frequenciesHz.at(-1) ?? 0 };
}

function covers(range: Band, needed: Band): boolean {
  return range.lowHz <= needed.lowHz * END_SLACK && range.highHz >= needed.highHz / END_SLACK;
}

function nearLevels(
  columns: SweepColumns,
  { calibration }: CarSweeps,
  setting: TransferSetting,
  gridHz: readonly number[],
): number[] | Refusal {
  const range = rangeOf(columns);
  if (covers(range, { lowHz: setting.matchLowHz, highHz: setting.matchHighHz })) {
    return levelsAt(columns, calibration, setting.smoothing, gridHz);
  }
  return refuse('nearCone', {
    allowed: `a sweep that covers ${setting.matchLowHz} to ${setting.matchHighHz} Hz`,
    got: `${range.lowHz} to ${range.highHz} Hz`,
    why: 'the sweep near the cone sets the level in that band',
  });
}

/** Mean of predicted less measured over the matching band; over the whole grid where the band lies outside it. */
function offsetOf(
  gridHz: readonly number[],
  predictedDb: readonly number[],
  measuredDb: readonly number[],
  { matchLowHz, matchHighHz }: TransferSetting,
): number {
  const differences = predictedDb.map((db, i) => db - (measuredDb[i] ?? 0));
  const matched = differences.filter((_, i) => {
    const hz = gridHz[i] ?? 0;
    return hz >= matchLowHz && hz <= matchHighHz;
  });
  const used = matched.length === 0 ? differences : matched;
  return used.reduce((sum, db) => sum + db, 0) / used.length;
}

function curveOf(
  { frequenciesHz, predictedDb, sweeps }: Pick<TransferAnswer, 'frequenciesHz' | 'predictedDb' | 'sweeps'>,
  setting: TransferSetting,
  level: TransferCurve['level'],
): TransferCurve | Refusal {
  const points = frequenciesHz.map((frequencyHz, i) => {
    const levels = sweeps.map(({ levelDb }) => levelDb[i] ?? 0);
    return {
      frequencyHz,
      gainDb: kept(meanDb(levels) - (predictedDb[i] ?? 0)),
      spreadDb: kept(Math.max(...levels) - Math.min(...levels)),
    };
  });
  const wildest = points.find(({ gainDb }) => Math.abs(gainDb) > CABIN_GAIN_LIMIT_DB);
  if (wildest !== undefined) {
    return refuse('inCar', {
      allowed: `levels within ${CABIN_GAIN_LIMIT_DB} dB of the prediction`,
      got: wildest.gainDb,
      why: `at ${wildest.frequencyHz} Hz the car would add ${wildest.gainDb.toFixed(0)} dB; was the gain the same for the sweep near the cone?`,
    });
  }
  const heard = sweeps.map(({ worstSnrDb }) => worstSnrDb).filter((db) => db !== null);
  return {
    points,
    validLowHz: setting.lowHz,
    validHighHz: setting.highHz,
    smoothing: setting.smoothing,
    level,
    worstSnrDb: heard.length === 0 ? null : Math.min(...heard),
  };
}

function kept(db: number): number {
  return Number(db.toFixed(KEPT_DECIMALS));
}
