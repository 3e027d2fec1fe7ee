// Every job of the demo as a row of things that happened, each at its moment, and the bays in between.
import { CUSTOMERS } from '../customers.ts';
import { planLeave } from '../set-up-shop.ts';
import type { StoryStep } from '../story.ts';
import type { DemoJob } from './demo-job.ts';
import { QUOTES } from './demo-quote.ts';
import { WORK } from './demo-work.ts';
import { chooseSurvey, designSound, drawBox, openDemoJob, writeBrief } from './design-steps.ts';
import { FINISHED_JOBS } from './finished-jobs.ts';
import { JOBS_IN_WORK } from './jobs-in-work.ts';
import { JOBS_ON_PAPER } from './jobs-on-paper.ts';
import type { JobsShop } from './jobs-shop.ts';
import { cutSheets, listParts, priceJob } from './offer-steps.ts';
import { OFFERS } from './offers.ts';
import { orderParts, planAndPromise, receiveParts } from './plan-steps.ts';
import { answerQuote, openQuotePage, sendDemoQuote, writeAboutQuote } from './quote-steps.ts';
import { startReadyTasks } from './start-ready-tasks.ts';
import { workAsPlanned } from './work-as-planned.ts';

export const DEMO_JOBS: readonly DemoJob[] = [...FINISHED_JOBS, ...JOBS_IN_WORK, ...JOBS_ON_PAPER];

/** Open days before today. */
const LEAVE_ASKED_DAYS_AGO = 12;

/** What a job is known by once it was opened and quoted. */
type Opened = { jobId: string; number: number; quoteId: string };

export function jobsStory(shop: JobsShop): StoryStep[] {
  const { now } = shop.calendar;
  const lastOpen = new Date(Math.min(shop.calendar.at(0, '16:20').getTime(), now.getTime()));
  const atWork: StoryStep = {
    at: lastOpen,
    async tell() {
      await workAsPlanned(shop, lastOpen);
      await startReadyTasks(shop.staff);
    },
  };
  const upToNow: StoryStep = {
    at: now,
    async tell() {
      await shop.staff.mira.plan.current();
    },
  };
  // Early in the day some of today's steps have not happened yet.
  const happened = DEMO_JOBS.flatMap((job) => jobStory(shop, job)).filter(({ at }) => at < now);
  const leave = planningStep(shop, LEAVE_ASKED_DAYS_AGO, '16:30', () => planLeave(shop.staff, shop.calendar));
  return [leave, ...happened, atWork, upToNow];
}

function jobStory(shop: JobsShop, job: DemoJob): StoryStep[] {
  const opened: Opened = { jobId: '', number: 0, quoteId: '' };
  return [
    ...designStory(shop, job, opened),
    ...offerStory(shop, job, opened),
    ...quoteStory(shop, job, opened),
    ...workStory(shop, job, opened),
  ];
}

function designStory(shop: JobsShop, job: DemoJob, opened: Opened): StoryStep[] {
  const at = (daysAgo: number, time: string, tell: () => Promise<void>) => stepAt(shop, daysAgo, time, tell);
  const { survey, sound, box } = job;
  return [
    at(job.openedDaysAgo, '08:30', async () => {
      const { id, number } = await openDemoJob(shop, job);
      opened.jobId = id;
      opened.number = number;
    }),
    at(job.brief.daysAgo, '10:15', () => writeBrief(shop, opened.jobId, job.brief)),
    ...(survey === undefined
      ? []
      : [at(survey.daysAgo, '11:30', () => chooseSurvey(shop, opened.jobId, survey))]),
    ...(sound === undefined
      ? []
      : [at(sound.daysAgo, '14:05', () => designSound(shop, opened.jobId, sound))]),
    ...(box === undefined ? [] : [at(box.daysAgo, '15:20', () => drawBox(shop, opened.jobId, box))]),
  ];
}

function offerStory(shop: JobsShop, job: DemoJob, opened: Opened): StoryStep[] {
  const offer = OFFERS[job.name];
  const { box } = job;
  if (offer === undefined || box === undefined) return [];
  const { cutting, parts, price } = offer;
  const at = () => ({ jobId: opened.jobId, jobName: job.name });
  return [
    stepAt(shop, cutting.daysAgo, '09:10', () => cutSheets(shop, at(), cutting, box.board)),
    stepAt(shop, parts.daysAgo, '10:40', () => listParts(shop, at(), parts)),
    ...(price === undefined ? [] : [stepAt(shop, price.daysAgo, '16:10', () => priceJob(shop, at(), price))]),
  ];
}

function quoteStory(shop: JobsShop, job: DemoJob, opened: Opened): StoryStep[] {
  const quote = QUOTES[job.name];
  const email = CUSTOMERS.find(({ name }) => name === job.customer)?.email;
  if (quote === undefined || email === undefined) return [];
  const { seenDaysAgo, messages = [], answer } = quote;
  const quoted = () => ({
    jobId: opened.jobId,
    jobName: job.name,
    customer: { name: job.customer, email },
  });
  return [
    stepAt(shop, quote.sentDaysAgo, '16:40', async () => {
      opened.quoteId = await sendDemoQuote(shop, quoted());
    }),
    ...(seenDaysAgo === undefined
      ? []
      : [stepAt(shop, seenDaysAgo, '17:50', () => openQuotePage(shop, quoted()))]),
    ...messages.map((message) =>
      stepAt(shop, message.daysAgo, message.time, () =>
        writeAboutQuote(shop, { ...quoted(), quoteId: opened.quoteId }, message),
      ),
    ),
    ...(answer === undefined
      ? []
      : [planningStep(shop, answer.daysAgo, '20:05', () => answerQuote(shop, quoted(), answer.kind))]),
  ];
}

function workStory(shop: JobsShop, job: DemoJob, opened: Opened): StoryStep[] {
  const work = WORK[job.name];
  if (work === undefined) return [];
  const { plannedDaysAgo, partsTake } = work;
  const at = () => ({ ...opened, jobName: job.name });
  return [
    planningStep(shop, plannedDaysAgo, '08:10', () => orderParts(shop, at(), work)),
    planningStep(shop, plannedDaysAgo, '08:20', () => planAndPromise(shop, at(), work)),
    planningStep(shop, plannedDaysAgo - partsTake, '12:30', () => receiveParts(shop, at(), work)),
  ];
}

/** Whatever makes the plan anew comes after what was done by the old one. */
function planningStep(shop: JobsShop, daysAgo: number, time: string, tell: () => Promise<void>): StoryStep {
  const at = shop.calendar.at(-daysAgo, time);
  return {
    at,
    async tell() {
      await workAsPlanned(shop, at);
      await tell();
    },
  };
}

function stepAt(shop: JobsShop, daysAgo: number, time: string, tell: () => Promise<void>): StoryStep {
  return { at: shop.calendar.at(-daysAgo, time), tell };
}
