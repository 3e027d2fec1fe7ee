// A finished box swept before it went home: a little less air than drawn, because of glue blocks nobody drew.
import { deriveDriver } from '@gusset/acoustics';
import { isRefusal } from '@gusset/units';
import { formKey } from '../form-key.ts';
import { DRIVERS } from '../parts/drivers.ts';
import type { DemoStaff } from '../set-up-shop.ts';
import { impedanceText } from './sweep-text.ts';

const JOB_TITLE = 'Bass box in the boot, out in two minutes';
const DRIVER_CODE = 'QN-12-4';
/** Glue blocks and a thicker brace, litres. */
const LOST_LITRES = 1.9;
/** Of this one: no sheet gives it. */
const COIL = { leMh: 0.7, l2Mh: 1.2, r2Ohm: 5.5 } as const;
/** Walls lined, as drawn. */
const LINED = { fillFactor: 1.04, qa: 50, ql: 14 } as const;

export async function sweepBuiltBox({ tomas }: DemoStaff, takenOn: string): Promise<void> {
  const { rows } = await tomas.job.list({ search: JOB_TITLE });
  const jobId = rows[0]?.id;
  if (jobId === undefined) throw new Error(`the demo has no job ${JOB_TITLE}`);
  const { issue } = await tomas.sheet.box.read({ jobId });
  if (issue === null) throw new Error('the demo sweeps a box that was never drawn');
  const netLitres = issue.result.box.volumes.netLitres - LOST_LITRES;
  const text = impedanceText(
    {
      source: { voltageVrms: 0.3 },
      driver: { ...driverOf(DRIVER_CODE), ...COIL },
      enclosure: { kind: 'closed', chamber: { netLitres, ...LINED } },
    },
    5,
  );
  await tomas.measurement.job.import({
    key: formKey('sweep built box'),
    sweep: {
      jobId,
      use: 'built-box',
      text,
      fileName: 'corrie-box-built.txt',
      units: {},
      conditions: { addedMass: null, knownBox: null, trial: null },
      place: '',
      direction: null,
      notes: '',
      takenOn,
    },
  });
}

function driverOf(code: string) {
  const entry = DRIVERS.find((driver) => driver.code === code);
  if (entry === undefined) throw new Error(`the demo has no driver ${code}`);
  const sheet = deriveDriver(entry.figures.dataSheet);
  if (isRefusal(sheet)) throw new Error(`the demo's driver ${code}: ${sheet.refusal.why}`);
  return sheet.driver;
}
