// From the enquiry to the drawn box: the sheets that a job has before anything is bought.
import type { BoxInput } from '@gusset/contracts/box';
import { EMPTY_DESIGN } from '@gusset/contracts/sound';
import { boxWithNet } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { formKey } from '../form-key.ts';
import { length, litres, watts } from '../typed.ts';
import type { DemoBox, DemoBrief, DemoJob, DemoSound } from './demo-job.ts';
import type { JobsShop } from './jobs-shop.ts';

export async function openDemoJob(shop: JobsShop, job: DemoJob): Promise<{ id: string; number: number }> {
  const { staff, records } = shop;
  return staff.ines.job.open({
    key: formKey(`job ${job.name}`),
    job: {
      title: job.title,
      customerId: records.customers.of(job.customer),
      vehicleId: records.vehicles.of(job.plate),
    },
  });
}

export async function writeBrief(shop: JobsShop, jobId: string, brief: DemoBrief): Promise<void> {
  const { staff, calendar } = shop;
  const { daysAgo: _daysAgo, wishedIn, issued, ...written } = brief;
  const { brief: sheet } = staff.mira.sheet;
  const { input, version } = await sheet.read({ jobId });
  const wishedOn = wishedIn === undefined ? null : calendar.day(wishedIn);
  const saved = await sheet.save({ jobId, version, input: { ...input, ...written, wishedOn } });
  if (issued) await sheet.issue({ jobId, version: saved.version });
}

export async function chooseSurvey(
  shop: JobsShop,
  jobId: string,
  survey: NonNullable<DemoJob['survey']>,
): Promise<void> {
  const { staff, surveys } = shop;
  const { survey: sheet } = staff.tomas.sheet;
  const { input, version } = await sheet.read({ jobId });
  const surveyId = surveys.of(survey.name);
  const saved = await sheet.save({
    jobId,
    version,
    input: { ...input, surveyId, notes: survey.notes ?? '' },
  });
  await sheet.issue({ jobId, version: saved.version });
}

export async function designSound(shop: JobsShop, jobId: string, sound: DemoSound): Promise<void> {
  const { staff, records } = shop;
  const { daysAgo: _daysAgo, driver, watts: power, litres: net, beside = [], notes, target, ...rest } = sound;
  const { sound: sheet } = staff.daniel.sheet;
  const { input, version } = await sheet.read({ jobId });
  const { letter = input.letter, name = '', ...changes } = rest;
  const drivers = {
    driverId: records.parts.of(driver),
    count: sound.count,
    seriesPerString: sound.seriesPerString ?? 1,
    coilWiring: sound.coilWiring ?? EMPTY_DESIGN.coilWiring,
    drive: watts(power),
  };
  const saved = await sheet.save({
    jobId,
    version,
    input: {
      ...input,
      ...changes,
      ...drivers,
      targetNet: litres(net),
      letter,
      name,
      target: target ?? null,
      notes: notes ?? '',
      variants: beside.map(({ letter: other, name: called, litres: air, ...design }) => ({
        letter: other,
        name: called,
        design: { ...EMPTY_DESIGN, ...design, ...drivers, targetNet: litres(air) },
      })),
    },
  });
  await sheet.issue({ jobId, version: saved.version });
}

export async function drawBox(shop: JobsShop, jobId: string, box: DemoBox): Promise<void> {
  const { staff } = shop;
  const { box: sheet } = staff.daniel.sheet;
  const { input, version } = await sheet.read({ jobId });
  const typed = await sheet.save({ jobId, version, input: boxInput(shop, input, box) });
  const sized = boxWithNet(typed.input, typed.facts, typed.upstream, 'depth');
  if (isRefusal(sized)) throw new Error(`the demo's box for job ${jobId}: ${sized.refusal.why}`);
  const saved = await sheet.save({ jobId, version: typed.version, input: sized });
  if (box.issued) await sheet.issue({ jobId, version: saved.version });
}

function boxInput({ records }: JobsShop, empty: BoxInput, box: DemoBox): BoxInput {
  const { shape, unit = 'mm', slopedFace, lining, bracing, notes, baffle } = box;
  const { parts } = records;
  const finishId = parts.of(box.finish);
  const finishes = Object.fromEntries(box.faces.map((face) => [face, finishId]));
  return {
    ...empty,
    shape,
    outside: {
      width: length(box.width, unit),
      height: length(box.height, unit),
      depth: length(box.depth, unit),
      depthTop: box.depthTop === undefined ? null : length(box.depthTop, unit),
      kneeHeight: null,
    },
    slopedFace: slopedFace ?? empty.slopedFace,
    carcassId: parts.of(box.board),
    baffleId: box.baffleBoard === undefined ? null : parts.of(box.baffleBoard),
    finishes: { ...empty.finishes, ...finishes },
    baffle: baffle ?? empty.baffle,
    drivers: {
      ...empty.drivers,
      fixing: { kind: 't-nut', hole: length('6.5'), flange: length('17') },
      grilleStandOff: box.grille === undefined ? null : length(box.grille),
    },
    bracing: bracing ?? empty.bracing,
    terminalCup: box.terminal
      ? {
          partId: parts.of('TRM-R54'),
          face: 'left',
          cutout: { shape: 'circle', diameter: length('54') },
          insideDepth: length('22'),
          at: null,
        }
      : null,
    lining: lining ?? empty.lining,
    notes: notes ?? '',
  };
}
