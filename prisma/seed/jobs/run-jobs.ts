// Lives through the demo's jobs in the order in which they were opened, each as far as it has come.
import type { DemoJob } from './demo-job.ts';
import { chooseSurvey, designSound, drawBox, openDemoJob, writeBrief } from './design-steps.ts';
import { FINISHED_JOBS } from './finished-jobs.ts';
import { JOBS_IN_WORK } from './jobs-in-work.ts';
import { JOBS_ON_PAPER } from './jobs-on-paper.ts';
import type { JobsShop } from './jobs-shop.ts';
import { cutSheets, listParts, priceJob } from './offer-steps.ts';
import { OFFERS } from './offers.ts';

export const DEMO_JOBS: readonly DemoJob[] = [...FINISHED_JOBS, ...JOBS_IN_WORK, ...JOBS_ON_PAPER].sort(
  (a, b) => b.openedDaysAgo - a.openedDaysAgo || a.name.localeCompare(b.name),
);

export async function runJobs(shop: JobsShop): Promise<void> {
  for (const job of DEMO_JOBS) await runJob(shop, job);
}

async function runJob(shop: JobsShop, job: DemoJob): Promise<void> {
  const { id } = await openDemoJob(shop, job);
  await writeBrief(shop, id, job.brief);
  if (job.survey !== undefined) await chooseSurvey(shop, id, job.survey);
  if (job.sound !== undefined) await designSound(shop, id, job.sound);
  if (job.box !== undefined) await drawBox(shop, id, job.box);
  const offer = OFFERS[job.name];
  if (offer === undefined) return;
  const at = { jobId: id, jobName: job.name };
  if (job.box !== undefined) await cutSheets(shop, at, offer.cutting, job.box.board);
  await listParts(shop, at, offer.parts);
  if (offer.price !== undefined) await priceJob(shop, at, offer.price);
}
