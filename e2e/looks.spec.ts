// Every main screen of the demo shop: desk, tablet and phone, day and night, axe clean, nothing wider than the screen.
// GUSSET_PICTURES=1 keeps those that README.md shows in docs/pictures.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import { accessFaults, contrastFaults, expect, expectNoSidewaysScroll, signIn, test } from './support.ts';

type Screen = {
  readonly name: string;
  readonly address: string;
  /** The heading that stands on it once it is there. */
  readonly heading: string | RegExp;
  /** README.md shows it. */
  readonly picture?: string;
};

/** Half a boot, in the bay now: every sheet of it is issued, and its box passes the opening. */
const JOB = 2410;

const SCREENS: readonly Screen[] = [
  { name: 'today', address: '/', heading: 'Today in the bays', picture: 'bays' },
  { name: 'jobs', address: '/jobs', heading: 'Jobs' },
  { name: 'a new job', address: '/jobs/new', heading: 'Open a job' },
  { name: 'brief', address: `/jobs/${JOB}/brief`, heading: 'Brief' },
  { name: 'survey', address: `/jobs/${JOB}/survey`, heading: 'Survey', picture: 'survey' },
  { name: 'sound', address: `/jobs/${JOB}/sound`, heading: 'Sound', picture: 'sound' },
  { name: 'box', address: `/jobs/${JOB}/box`, heading: 'Box', picture: 'box' },
  { name: 'cutting', address: `/jobs/${JOB}/cutting`, heading: 'Cutting', picture: 'cutting' },
  { name: 'parts', address: `/jobs/${JOB}/parts`, heading: 'Parts' },
  { name: 'price', address: `/jobs/${JOB}/price`, heading: 'Price', picture: 'price' },
  { name: 'plan', address: `/jobs/${JOB}/plan`, heading: 'Plan', picture: 'plan' },
  { name: 'customers', address: '/customers', heading: 'Customers' },
  { name: 'vehicles', address: '/vehicles', heading: 'Vehicles' },
  { name: 'vehicle models', address: '/vehicles/models', heading: /models/i },
  { name: 'drivers', address: '/catalogue/drivers', heading: 'Drivers' },
  { name: 'sheets', address: '/catalogue/sheets', heading: 'Sheets' },
  { name: 'suppliers', address: '/suppliers', heading: 'Suppliers' },
  { name: 'shop details', address: '/shop/details', heading: /Details/ },
  { name: 'shop hours', address: '/shop/hours', heading: /Hours/ },
  { name: 'people', address: '/shop/people', heading: 'People' },
  { name: 'bays of the shop', address: '/shop/bays', heading: 'Bays' },
];
const DESK = { width: 1440, height: 900 };
const TABLET = { width: 1024, height: 900 };
const PHONE = { width: 390, height: 844 };
const PICTURES = path.resolve(import.meta.dirname, '../docs/pictures');
const KEEPS_PICTURES = process.env.GUSSET_PICTURES === '1';

// One load of a page serves both themes and, at the desk, the tablet's width too: styles follow the system's theme and
// the window, so what is left to see anew is contrast and layout.
test('every screen at the desk and on a tablet, day and night', async ({ browser }) => {
  test.setTimeout(240_000);
  await lookAtAll(
    await browser.newContext({ viewport: DESK, colorScheme: 'light' }),
    async (page, screen) => {
      await expectNoSidewaysScroll(page);
      await keepPicture(page, screen);
      expect.soft(await accessFaults(page), `${screen.name}, desk`).toEqual([]);
      await expectReadableAtNight(page, screen);
      await page.setViewportSize(TABLET);
      await expectNoSidewaysScroll(page);
      expect.soft(await accessFaults(page), `${screen.name}, tablet`).toEqual([]);
      await page.setViewportSize(DESK);
    },
  );
});

test('every screen on a phone, day and night', async ({ browser }) => {
  test.setTimeout(240_000);
  const phone = { viewport: PHONE, colorScheme: 'light', isMobile: true, hasTouch: true } as const;
  await lookAtAll(await browser.newContext(phone), async (page, screen) => {
    await expectNoSidewaysScroll(page);
    expect.soft(await accessFaults(page), `${screen.name}, phone`).toEqual([]);
    await expectReadableAtNight(page, screen);
  });
});

/** All screens are looked at, so that one run names every fault. */
async function lookAtAll(
  context: BrowserContext,
  look: (page: Page, screen: Screen) => Promise<void>,
): Promise<void> {
  const page = await context.newPage();
  await signIn(page);
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`${page.url()}: ${error.message}`));
  for (const screen of SCREENS) {
    await test.step(screen.name, async () => {
      await page.goto(screen.address);
      await expect.soft(page.getByRole('heading', { level: 1, name: screen.heading })).toBeVisible();
      await settled(page);
      await look(page, screen);
    });
  }
  await context.close();
  expect(faults).toEqual([]);
}

async function expectReadableAtNight(page: Page, { name }: Screen): Promise<void> {
  const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const byDay = await ground();
  await page.emulateMedia({ colorScheme: 'dark' });
  await expect.poll(ground, `${name} follows the night theme`).not.toBe(byDay);
  expect.soft(await contrastFaults(page), `${name}, night`).toEqual([]);
  await page.emulateMedia({ colorScheme: 'light' });
}

/** Nothing is on its way any more: lists have their rows, drawings their lines. */
async function settled(page: Page): Promise<void> {
  await expect(page.getByText(/^Fetching /)).toHaveCount(0);
  await expect(page.getByText(/^Working out /)).toHaveCount(0);
  await page.evaluate(() => document.fonts.ready);
}

async function keepPicture(page: Page, { picture }: Screen): Promise<void> {
  if (!KEEPS_PICTURES || picture === undefined) return;
  mkdirSync(PICTURES, { recursive: true });
  await page.screenshot({ path: path.join(PICTURES, `${picture}.png`), animations: 'disabled' });
}
