// A job with a box of one Quince Q-10 to cut: board, driver, sound and box, as a draft or issued.
import { randomUUID } from 'node:crypto';
import { driverFiguresSchema, sheetFiguresSchema } from '@gusset/contracts/records';
import type { TestPerson } from './harness.ts';

const part = (name: string) => ({
  maker: '',
  name,
  code: '',
  supplierId: null,
  buyPriceMinor: 4_321,
  sellPriceMinor: 6_000,
  stockQuantity: 2,
  leadDays: null,
  notes: '',
});
const length = (mm: number) => ({ mm, typed: String(mm), unit: 'mm' as const });

export const boardFigures = sheetFiguresSchema.parse({
  material: 'mdf',
  nominalThicknessMm: 18,
  lengthMm: 2440,
  widthMm: 1220,
  densityKgPerM3: 720,
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

/** A job whose box of 600 × 380 × 320 mm stands as a draft, or issued. */
export async function boxedJob(
  owner: TestPerson,
  { issued, boardId }: { readonly issued: boolean; readonly boardId?: string },
) {
  const board =
    boardId !== undefined
      ? await owner.api.part.sheet.read.query({ id: boardId })
      : await owner.api.part.sheet.create.mutate({
          key: randomUUID(),
          input: { ...part('MDF 18'), kind: 'sheet', unit: 'sheet', figures: boardFigures },
        });
  const driver = await owner.api.part.driver.create.mutate({
    key: randomUUID(),
    input: { ...part('Q-10'), kind: 'driver', unit: 'each', maker: 'Quince', figures: driverFigures },
  });
  const customer = await owner.api.customer.create.mutate({
    key: randomUUID(),
    input: { name: 'R. Okafor', phone: '', email: '', address: '', notes: '' },
  });
  const job = await owner.api.job.open.mutate({
    key: randomUUID(),
    job: { title: 'Bass box behind the seat', customerId: customer.id },
  });
  const jobId = job.id;
  const sound = await owner.api.sheet.sound.read.query({ jobId });
  const chosen = await owner.api.sheet.sound.save.mutate({
    jobId,
    version: 0,
    input: {
      ...sound.input,
      driverId: driver.id,
      drive: { watts: 300, typed: '300' },
      targetNet: { litres: 30, typed: '30' },
    },
  });
  const box = await owner.api.sheet.box.read.query({ jobId });
  const drawn = await owner.api.sheet.box.save.mutate({
    jobId,
    version: 0,
    input: {
      ...box.input,
      outside: { width: length(600), height: length(380), depth: length(320), depthTop: null },
      carcassId: board.id,
      bracing: { kind: 'none' },
    },
  });
  if (issued) {
    await owner.api.sheet.sound.issue.mutate({ jobId, version: chosen.version });
    await owner.api.sheet.box.issue.mutate({ jobId, version: drawn.version });
  }
  return { jobId, board };
}
