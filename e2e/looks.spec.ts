// Every main screen of the demo shop: three widths, day and night, axe clean, nothing wider than the screen.
// GUSSET_PICTURES=1 keeps those that README.md shows in docs/pictures.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from '@playwright/test';
import { accessFaults, expect, expectNoSidewaysScroll, signIn, test } from './support.ts';

type Screen = {
  readonly name: string;
  readonly address: string;
  /** The heading that stands on it once it is there. */
  readonly heading: string | RegExp;
  /** README.md shows it. */
  readonly picture?: string;
};

/** Behind the seat of a pickup, in the bay now: every sheet of it is issued. */
const JOB = 2407;

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
const WIDTHS_PX = [1440, 1024, 390] as const;
const THEMES = ['light', 'dark'] as const;
const PICTURES = path.resolve(import.meta.dirname, '../docs/pictures');
const KEEPS_PICTURES = process.env.GUSSET_PICTURES === '1';

for (const width of WIDTHS_PX) {
  for (const theme of THEMES) {
    test(`every screen at ${width} px, ${theme}`, async ({ browser }) => {
      test.setTimeout(180_000);
      const page = await openShop(browser, width, theme);
      const faults: string[] = [];
      page.on('pageerror', (error) => faults.push(`${page.url()}: ${error.message}`));
      for (const screen of SCREENS) {
        await test.step(screen.name, async () => {
          await page.goto(screen.address);
          await expect.soft(page.getByRole('heading', { level: 1, name: screen.heading })).toBeVisible();
          await settled(page);
          await expectNoSidewaysScroll(page);
          // All screens are looked at, so that one run names every fault.
          expect.soft(await accessFaults(page), screen.name).toEqual([]);
          if (width === 1440 && theme === 'light') await keepPicture(page, screen);
        });
      }
      await page.context().close();
      expect(faults).toEqual([]);
    });
  }
}

async function openShop(browser: Browser, width: number, theme: 'light' | 'dark'): Promise<Page> {
  const isPhone = width < 720;
  const context = await browser.newContext({
    viewport: { width, height: isPhone ? 844 : 900 },
    colorScheme: theme,
    isMobile: isPhone,
    hasTouch: isPhone,
  });
  const page = await context.newPage();
  await signIn(page);
  return page;
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
