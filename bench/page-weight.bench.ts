// What a page sends and how soon it answers, in a real browser against the whole program as `npm start` runs it:
// script as it came over the wire, split into what the page runs, what its worker runs and what was fetched ahead
// without being run; then, from a warm cache, when the page is drawn and when its controls answer. /sign-in, which has
// a form and nothing else, is the measure for the rest.
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { z } from 'zod';
import { freePort } from '../scripts/start/ports.ts';
import { startPart } from '../scripts/start/process.ts';

const OWNER = { email: 'mira@quarry-road.example', password: 'lantern copper meadow violin' };
const BROWSER = process.env.TEST_BROWSER ?? '/usr/bin/chromium';
/** A page that asked for nothing this long has all its script. */
const QUIET_MS = 1_500;
const WARM_LOADS = 5;
const INTERACTIVE_LIMIT_MS = 1_000;
const BARE_PAGE = '/sign-in';
const JOB_PAGE_LIMIT_KB = 250;
const QUOTE_PAGE_LIMIT_KB = 120;
const JOB_SHEETS = ['brief', 'survey', 'sound', 'box', 'cutting', 'parts', 'price', 'plan'];

type PageToMeasure = { readonly address: string; readonly limitKb: number | null };
type Weight = { readonly pageKb: number; readonly workerKb: number; readonly aheadKb: number };
type Pace = { readonly readyMs: number; readonly interactiveMs: number };

// Of the API's answers only what is used here.
const jobsAnswer = z.object({
  rows: z.array(z.object({ id: z.string(), number: z.number(), standing: z.string() })),
});
const quotesAnswer = z.array(z.object({ id: z.string() }));
const sentAnswer = z.object({ link: z.string() });
const resultAnswer = z.object({ result: z.object({ data: z.unknown() }) });

const dataFolder = mkdtempSync(path.join(tmpdir(), 'gusset-page-weight-'));
const port = await freePort();
// On localhost a browser takes Brotli, as it does over HTTPS.
const base = `http://localhost:${port}`;
const program = await startPart({
  name: 'program',
  script: 'scripts/start.ts',
  readyText: 'Gusset is ready',
  env: { PORT: String(port), GUSSET_DATA_DIR: dataFolder, NODE_ENV: 'production' },
});
try {
  const browser = await chromium.launch({
    executablePath: BROWSER,
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'],
  });
  try {
    await measureAll(browser);
  } finally {
    await browser.close();
  }
} finally {
  await program.stop();
  rmSync(dataFolder, { recursive: true, force: true });
}

async function measureAll(browser: Browser): Promise<void> {
  const context = await browser.newContext();
  await tell(context, '/api/auth/sign-in/email', OWNER);
  const { jobNumber, quoteLink } = await jobAndQuote(context);
  const customer = await browser.newContext();
  await (await customer.newPage()).goto(quoteLink);
  const signedIn = await context.storageState();
  const ofCustomer = await customer.storageState();
  const pages: readonly PageToMeasure[] = [
    { address: '/', limitKb: null },
    { address: '/jobs', limitKb: null },
    ...JOB_SHEETS.map((sheet) => ({ address: `/jobs/${jobNumber}/${sheet}`, limitKb: JOB_PAGE_LIMIT_KB })),
  ];
  line(['', 'of the page', 'worker', 'ahead', 'drawn', 'answers', 'to bare']);
  const bare = await show(browser, { address: BARE_PAGE, limitKb: null }, null, null);
  await show(browser, { address: '/quote', limitKb: QUOTE_PAGE_LIMIT_KB }, ofCustomer, bare);
  for (const page of pages) await show(browser, page, signedIn, bare);
}

type State = Awaited<ReturnType<BrowserContext['storageState']>>;

async function show(
  browser: Browser,
  { address, limitKb }: PageToMeasure,
  storageState: State | null,
  bare: Pace | null,
): Promise<Pace> {
  const context = await browser.newContext(storageState === null ? {} : { storageState });
  try {
    const weight = await weigh(context, address);
    const pace = await paceOf(context, address);
    const faults = [
      limitKb !== null && weight.pageKb + weight.aheadKb > limitKb ? `OVER ${limitKb} kB` : '',
      pace.interactiveMs > INTERACTIVE_LIMIT_MS ? `OVER ${INTERACTIVE_LIMIT_MS} ms` : '',
    ].filter((fault) => fault !== '');
    line([
      address,
      `${weight.pageKb.toFixed(0)} kB`,
      `${weight.workerKb.toFixed(0)} kB`,
      `${weight.aheadKb.toFixed(0)} kB`,
      `${pace.readyMs.toFixed(0)} ms`,
      `${pace.interactiveMs.toFixed(0)} ms`,
      bare === null ? '1.00' : (pace.interactiveMs / bare.interactiveMs).toFixed(2),
      ...faults,
    ]);
    return pace;
  } finally {
    await context.close();
  }
}

/** First visit, nothing kept: bytes of script as the server sent them, by who ran it. */
async function weigh(context: BrowserContext, address: string): Promise<Weight> {
  const page = await context.newPage();
  const debug = await context.newCDPSession(page);
  const run = new Set<string>();
  debug.on('Debugger.scriptParsed', ({ url }) => run.add(url));
  await debug.send('Debugger.enable');
  const sent = new Map<string, number>();
  const pending: Promise<void>[] = [];
  let lastAskedAt = performance.now();
  page.on('request', () => {
    lastAskedAt = performance.now();
  });
  page.on('requestfinished', (request) => {
    const isScript = new URL(request.url()).pathname.endsWith('.js');
    if (!isScript) return;
    const sized = request.sizes().then(({ responseBodySize }) => {
      sent.set(request.url(), (sent.get(request.url()) ?? 0) + responseBodySize);
    });
    pending.push(sized);
  });
  await open(page, address);
  // Not the network's own silence: live updates hold a request open.
  while (performance.now() - lastAskedAt < QUIET_MS) await page.waitForTimeout(QUIET_MS / 10);
  await Promise.all(pending);
  const inWorkers = new Set<string>();
  for (const worker of page.workers()) {
    inWorkers.add(worker.url());
    const loaded = await worker.evaluate(() =>
      performance.getEntriesByType('resource').map(({ name }) => name),
    );
    for (const url of loaded) inWorkers.add(url);
  }
  const kbWhere = (holds: (url: string) => boolean): number =>
    [...sent].filter(([url]) => holds(url)).reduce((sum, [, bytes]) => sum + bytes, 0) / 1_000;
  await page.close();
  return {
    pageKb: kbWhere((url) => run.has(url)),
    workerKb: kbWhere((url) => !run.has(url) && inWorkers.has(url)),
    aheadKb: kbWhere((url) => !run.has(url) && !inWorkers.has(url)),
  };
}

/** Scripts in the browser's cache: medians of `WARM_LOADS` loads. */
async function paceOf(context: BrowserContext, address: string): Promise<Pace> {
  const page = await context.newPage();
  await page.addInitScript(noteWhenAnswering);
  const readies: number[] = [];
  const answers: number[] = [];
  for (let load = 0; load < WARM_LOADS; load += 1) {
    await open(page, address);
    await page.waitForFunction(() => performance.getEntriesByName('controls answer').length > 0);
    const [ready, interactive] = await page.evaluate(() => {
      const [visit] = performance.getEntriesByType('navigation');
      const readyMs = visit instanceof PerformanceNavigationTiming ? visit.domContentLoadedEventEnd : 0;
      return [readyMs, performance.getEntriesByName('controls answer')[0]?.startTime ?? 0] as const;
    });
    readies.push(ready);
    answers.push(interactive);
  }
  await page.close();
  return { readyMs: median(readies), interactiveMs: median(answers) };
}

/**
 * Runs in the page: marks the first frame in which React has taken over the last control of the page. Frames come
 * between tasks, so a press at that moment is answered.
 */
function noteWhenAnswering(): void {
  const look = (): void => {
    const last = [...document.querySelectorAll('main button, main input, main textarea, main a')].at(-1);
    if (last !== undefined && Object.keys(last).some((key) => key.startsWith('__reactProps'))) {
      performance.mark('controls answer');
      return;
    }
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

async function open(page: Page, address: string): Promise<void> {
  const answer = await page.goto(base + address);
  if (answer === null || !answer.ok() || new URL(page.url()).pathname !== address) {
    throw new Error(`${address} answered ${answer?.status()} at ${page.url()}`);
  }
}

/** The demo shop's first job in the bay, and a link as a customer gets it. */
async function jobAndQuote(context: BrowserContext) {
  const { rows } = jobsAnswer.parse(await ask(context, 'job.list', {}));
  const inBay = rows.find(({ standing }) => standing === 'in-bay');
  const quoted = rows.find(({ standing }) => standing === 'quoted');
  if (inBay === undefined || quoted === undefined) throw new Error('The demo shop has no such jobs.');
  const [quote] = quotesAnswer.parse(await ask(context, 'quote.list', { jobId: quoted.id }));
  const sent = await tell(context, '/api/trpc/quote.send', {
    key: randomUUID(),
    quoteId: quote?.id,
    to: null,
  });
  return { jobNumber: inBay.number, quoteLink: sentAnswer.parse(resultOf(sent)).link };
}

async function ask(context: BrowserContext, procedure: string, input: object): Promise<unknown> {
  const query = encodeURIComponent(JSON.stringify(input));
  const answer = await context.request.get(`${base}/api/trpc/${procedure}?input=${query}`);
  if (!answer.ok())
    throw new Error(`${procedure}: ${answer.status()} ${(await answer.text()).slice(0, 300)}`);
  return resultOf(await answer.json());
}

async function tell(context: BrowserContext, at: string, data: object): Promise<unknown> {
  const answer = await context.request.post(base + at, { data, headers: { origin: base } });
  if (!answer.ok()) throw new Error(`${at}: ${answer.status()} ${(await answer.text()).slice(0, 300)}`);
  return answer.json();
}

function resultOf(answer: unknown): unknown {
  return resultAnswer.parse(answer).result.data;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

function line(cells: readonly string[]): void {
  const [name = '', ...figures] = cells;
  process.stdout.write(`${name.padEnd(20)}${figures.map((figure) => ` ${figure.padStart(12)}`).join('')}\n`);
}
