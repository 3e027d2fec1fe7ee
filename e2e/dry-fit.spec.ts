// Sheet 04, in and out: a box too high for the hatch of the demo's estate, a remedy taken with its cost told before, the way
// played, and the mock-up ticked on sheet 05. Whatever is typed is put back, so that the demo's job stays as it was.
import type { Page } from '@playwright/test';
import { expect, expectAccessible, signIn, test } from './support.ts';

const BOX = '/jobs/2404/box';

test('a box that may not go in is cut down to one that does', async ({ page }) => {
  await signIn(page);
  await page.goto(BOX);
  const way = page.getByRole('region', { name: 'In and out' });
  await expect(way.getByText('Goes in, comes out')).toBeVisible({ timeout: 30_000 });
  const [height, depth] = [await shownIn(page, 'Outside height'), await shownIn(page, 'Outside depth')];

  await test.step('too high: the tape alone stands between yes and no', async () => {
    await fill(page, 'Outside height', '560');
    await fill(page, 'Outside depth', '420');
    await expect(way.getByText(/^Too close to call/)).toBeVisible({ timeout: 30_000 });
    await expect(way.getByText(/^What would settle it: measure/)).toBeVisible();
  });

  await test.step('the way is played, by hand and by itself', async () => {
    const slider = way.getByRole('slider', { name: 'Way out and in' });
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await expect(slider).toHaveAttribute('aria-valuetext', '1 % of the way out');
    await way.getByRole('button', { name: 'Play the way out' }).click();
    await expect(slider).toHaveAttribute('aria-valuetext', 'outside', { timeout: 15_000 });
    await expectAccessible(page);
  });

  await test.step('a remedy says what it costs, and then the box goes in', async () => {
    const lower = way.getByRole('listitem').filter({ hasText: 'mm lower' });
    await expect(lower.getByText(/^costs .* L, leaves .* L$/)).toBeVisible({ timeout: 30_000 });
    await lower.getByRole('button').click();
    await expect(way.getByText('Goes in, comes out')).toBeVisible({ timeout: 30_000 });
    expect(Number(await shownIn(page, 'Outside height'))).toBeLessThan(560);
  });

  await test.step('the demo has its box back', async () => {
    await fill(page, 'Outside height', height);
    await fill(page, 'Outside depth', depth);
    await expect(way.getByText('Goes in, comes out')).toBeVisible({ timeout: 30_000 });
    await expect(page.getByText(/^Saved/).first()).toBeVisible();
  });
});

test('a cut list is marked until a mock-up went in and came out', async ({ page }) => {
  await signIn(page);
  await page.goto('/jobs/2404/cutting');
  const notes = page.getByRole('complementary', { name: 'Notes' });
  await expect(notes.getByText('Not test-fitted', { exact: true })).toBeVisible();
  await expect(async () => {
    await notes.getByRole('button', { name: 'It went in and came out' }).click({ timeout: 2_000 });
    await expect(notes.getByText('Test-fitted: a mock-up went in and came out')).toBeVisible();
  }).toPass();
  await notes.getByRole('button', { name: 'Take that back' }).click();
  await expect(notes.getByText('Not test-fitted', { exact: true })).toBeVisible();
});

async function fill(page: Page, label: string, value: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(value);
  await field.press('Tab');
}

function shownIn(page: Page, label: string): Promise<string> {
  return page.getByRole('textbox', { name: label, exact: true }).inputValue();
}
