// What the shop has measured: a driver off the shelf in free air and with putty on its cone, a finished box, and the
// Halden Brisk with a trial box at three places.
import type { Cabin, DriverParameters } from '@gusset/contracts/acoustics';
import type { FiringDirection, SweepConditions, TrialBox } from '@gusset/contracts/measurement';
import type { DemoCalendar } from '../demo-calendar.ts';
import { formKey } from '../form-key.ts';
import type { DemoRecords } from '../make-records.ts';
import type { DemoStaff } from '../set-up-shop.ts';
import type { StoryStep } from '../story.ts';
import { sweepBuiltBox } from './sweep-built-box.ts';
import { impedanceText, levelText, noiseText } from './sweep-text.ts';

const TEN_INCH = 'QN-10-4';
const DRIVER_DAYS_AGO = 31;
const CAR_DAYS_AGO = 24;
/** When the box in the Corrie was done. */
const BOX_DAYS_AGO = 34;

/** As the ten-inch really is: its suspension not run in yet, stiffer than its sheet says. */
const AS_DELIVERED: DriverParameters = {
  fsHz: 31.4,
  qms: 4.2,
  qes: 0.55,
  vasLitres: 42.4,
  sdCm2: 340,
  reOhm: 3.62,
  leMh: 0.6,
  l2Mh: 1.1,
  r2Ohm: 4.8,
  coils: 1,
  xmaxMm: 11,
  peWatts: 300,
  displacementLitres: 2.1,
};
const PUTTY_GRAMS = 60;
const NOTHING: SweepConditions = { addedMass: null, knownBox: null, trial: null };
const BENCH = { source: { voltageVrms: 0.3 }, enclosure: { kind: 'infinite-baffle' } } as const;

/** By its sheet, as the prediction takes it. */
const BY_SHEET: DriverParameters = {
  ...AS_DELIVERED,
  fsHz: 29.5,
  qms: 4.6,
  qes: 0.52,
  vasLitres: 48,
  reOhm: 3.6,
  leMh: 1.3,
  l2Mh: null,
  r2Ohm: null,
};
const TRIAL_VOLTS = 2.83;
const TRIAL = {
  source: { voltageVrms: TRIAL_VOLTS },
  driver: BY_SHEET,
  enclosure: { kind: 'closed', chamber: { netLitres: 28, ql: 15 } },
} as const;
/** Of microphone and input. */
const GAIN_DB = -22;

type Place = {
  readonly place: string;
  readonly direction: FiringDirection;
  readonly fileName: string;
  readonly seed: number;
  /** Louder or softer than the others by so much: the one behind the seat was swept too quietly. */
  readonly drivenDb: number;
  readonly cabin: Cabin;
};

const curve = (...points: readonly (readonly [frequencyHz: number, gainDb: number])[]): Cabin => ({
  kind: 'curve',
  points: points.map(([frequencyHz, gainDb]) => ({ frequencyHz, gainDb })),
});

const PLACES: readonly Place[] = [
  {
    place: 'boot, left corner',
    direction: 'rearward',
    fileName: 'brisk-left-rearward.txt',
    seed: 11,
    drivenDb: 0,
    cabin: curve(
      [12, 21],
      [20, 17],
      [30, 13.5],
      [42, 9],
      [55, 6],
      [68, 1.5],
      [80, 3.5],
      [110, 1],
      [160, 0],
      [220, 0],
    ),
  },
  {
    place: 'boot, left corner',
    direction: 'up',
    fileName: 'brisk-left-up.txt',
    seed: 12,
    drivenDb: 0,
    cabin: curve(
      [12, 20.5],
      [20, 16],
      [30, 12],
      [42, 6.5],
      [55, 1],
      [68, -5],
      [80, -1],
      [110, 2],
      [160, 0],
      [220, 0],
    ),
  },
  {
    place: 'boot, middle',
    direction: 'forward',
    fileName: 'brisk-middle-forward.txt',
    seed: 13,
    drivenDb: -34,
    cabin: curve(
      [12, 20],
      [20, 16],
      [30, 12.5],
      [42, 8],
      [55, 4],
      [68, 0],
      [80, 1],
      [110, 0],
      [160, 0],
      [220, 0],
    ),
  },
];

type Measuring = {
  readonly staff: DemoStaff;
  readonly records: DemoRecords;
  readonly calendar: DemoCalendar;
};

export function sweepStory({ staff, records, calendar }: Measuring): readonly StoryStep[] {
  const driverId = records.parts.of(TEN_INCH);
  const modelId = records.models.of('brisk');
  return [
    {
      at: calendar.at(-DRIVER_DAYS_AGO, '14:10'),
      tell: () => sweepDriver(staff, driverId, calendar.day(-DRIVER_DAYS_AGO)),
    },
    {
      at: calendar.at(-CAR_DAYS_AGO, '10:30'),
      tell: () => sweepCar(staff, { modelId, driverId, takenOn: calendar.day(-CAR_DAYS_AGO) }),
    },
    {
      at: calendar.at(-BOX_DAYS_AGO, '15:40'),
      tell: () => sweepBuiltBox(staff, calendar.day(-BOX_DAYS_AGO)),
    },
  ];
}

const about = { units: {}, place: '', direction: null, notes: '' } as const;

async function sweepDriver({ daniel }: DemoStaff, driverId: string, takenOn: string): Promise<void> {
  const { driver } = daniel.measurement;
  const alone = { ...BENCH, driver: AS_DELIVERED };
  await driver.import({
    key: formKey('sweep ten-inch free air'),
    sweep: {
      ...about,
      driverId,
      use: 'free-air',
      text: impedanceText(alone, 3),
      fileName: 'q10-free-air.txt',
      conditions: NOTHING,
      takenOn,
    },
  });
  await driver.import({
    key: formKey('sweep ten-inch with putty'),
    sweep: {
      ...about,
      driverId,
      use: 'added-mass',
      text: impedanceText({ ...BENCH, driver: withMass(AS_DELIVERED, PUTTY_GRAMS) }, 4),
      fileName: 'q10-putty-60g.txt',
      conditions: { ...NOTHING, addedMass: { grams: PUTTY_GRAMS, typed: '60 g' } },
      takenOn,
    },
  });
}

/** Mass lowers fs and raises both Qs by the root of how much heavier it is; the suspension stays. */
function withMass(driver: DriverParameters, grams: number): DriverParameters {
  // Mms of the driver as delivered: 141855 Sd²/(ws² Vas), in grams.
  const mmsGrams =
    (141_855 * (driver.sdCm2 * 1e-4) ** 2 * 1e6) / ((2 * Math.PI * driver.fsHz) ** 2 * driver.vasLitres);
  const heavier = Math.sqrt((mmsGrams + grams) / mmsGrams);
  return { ...driver, fsHz: driver.fsHz / heavier, qms: driver.qms * heavier, qes: driver.qes * heavier };
}

type Car = { readonly modelId: string; readonly driverId: string; readonly takenOn: string };

async function sweepCar({ tomas }: DemoStaff, { modelId, driverId, takenOn }: Car): Promise<void> {
  const { vehicleModel } = tomas.measurement;
  const trial: TrialBox = {
    driverId,
    net: { litres: 28, typed: '28 L' },
    tuning: null,
    drive: { volts: TRIAL_VOLTS, typed: '2.83 V' },
  };
  const played = { ...NOTHING, trial };
  const common = { ...about, modelId, takenOn };
  await vehicleModel.import({
    key: formKey('sweep brisk noise'),
    sweep: {
      ...common,
      use: 'background-noise',
      text: noiseText(46, 21),
      fileName: 'brisk-quiet.txt',
      conditions: NOTHING,
    },
  });
  await vehicleModel.import({
    key: formKey('sweep brisk near cone'),
    sweep: {
      ...common,
      use: 'near-cone',
      text: levelText(TRIAL, { gainDb: GAIN_DB, seed: 22 }),
      fileName: 'trial-box-near.txt',
      conditions: played,
    },
  });
  let chosenId: string | null = null;
  for (const { place, direction, fileName, seed, drivenDb, cabin } of PLACES) {
    const { sweep } = await vehicleModel.import({
      key: formKey(`sweep brisk ${place} ${direction}`),
      sweep: {
        ...common,
        use: 'in-car',
        place,
        direction,
        fileName,
        text: levelText({ ...TRIAL, cabin }, { gainDb: GAIN_DB + drivenDb, seed }),
        conditions: played,
      },
    });
    chosenId ??= sweep.id;
  }
  if (chosenId === null) return;
  await vehicleModel.keep({
    key: formKey('transfer brisk'),
    transfer: {
      modelId,
      sweepIds: [chosenId],
      place: 'boot, left corner',
      direction: 'rearward',
      reason: 'No hole at 68 Hz as when it fires up, and the floor hatch still opens',
    },
  });
}
