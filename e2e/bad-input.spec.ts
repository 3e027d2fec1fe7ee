// Whatever is typed into a field: the message stands at the field, what was typed stays, nothing of it runs.
import type { Locator, Page } from '@playwright/test';
import { expect, expectAccessible, foundShop, pick, test } from './support.ts';

const SCRIPT = '<script>window.ranHere = true</script><img src=x onerror="window.ranHere = true">';
const LONG = '9'.repeat(10_000);

/** What no length is. */
const NO_LENGTHS = ['wide as a door', '-5', '1e309', '🚚🚚', '17 1/0', SCRIPT, LONG] as const;
/** What no figure is. */
const NO_FIGURES = ['loud', '-20', '1e309', '🔊', SCRIPT, LONG] as const;

test('a field says what is wrong, keeps what was typed and runs none of it', async ({ page }) => {
  await foundShop(page, { person: 'Nils Aaland', shop: 'Pier Nine Audio' });
  await page.goto('/catalogue/drivers/new');
  const diameter = fieldCalled(page, 'Overall diameter');
  const resonance = fieldCalled(page, 'Resonance fs');

  await test.step('lengths', async () => {
    for (const typed of NO_LENGTHS) await expectRefused(diameter, typed);
    await expectTaken(diameter, '17 1/4"', /^17\s1\/4″$/);
    // 438 mm are 17.244 in: a sixteenth as near as it goes, and what it is off by.
    await expectTaken(diameter, '438mm', /^(438|≈?17\s1\/4″)/);
  });
  await test.step('figures', async () => {
    for (const typed of NO_FIGURES) await expectRefused(resonance, typed);
    await expectTaken(resonance, '28.5', /^28\.5$/);
  });
  await test.step('text goes in as text', async () => {
    await fieldCalled(page, 'Name').fill(SCRIPT);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await page.getByRole('button', { name: 'Add driver' }).click();
    // What is still missing is asked for where it belongs, and nothing is lost on the way.
    await expect(fieldCalled(page, 'Cut-out diameter')).toHaveAttribute('aria-invalid', 'true');
    await expect(fieldCalled(page, 'Name')).toHaveValue(SCRIPT);
    await expect(resonance).toHaveValue('28.5');
    await expectAccessible(page);
  });
  expect(await page.evaluate(() => 'ranHere' in window)).toBe(false);
});

test('a box that cannot be names the dimension', async ({ page }) => {
  await foundShop(page, { person: 'Nils Aaland', shop: 'Pier Nine Audio' });
  await addBoard(page);
  await openJob(page);
  await page.goto(page.url().replace('/brief', '/box'));
  await pick(page, 'Board of the box', /MDF 18/);
  for (const label of ['Outside width', 'Outside height']) await type(fieldCalled(page, label), '12');
  const depth = fieldCalled(page, 'Outside depth');
  // Two boards of 18 mm fill an inch: no air is left.
  await type(depth, '1');
  const notes = page.getByRole('complementary', { name: 'Notes' });
  await expect(notes).toContainText(/depth/i);
  await expect(notes).toContainText(/cannot|no room|accepted/i);
  await expect(depth).toHaveAttribute('aria-invalid', 'true');
  await expect(depth).toHaveValue(/^1″$/);
  await expect(page.getByRole('button', { name: 'Issue this sheet' })).toBeDisabled();
  await expectAccessible(page);
});

async function expectRefused(field: Locator, typed: string): Promise<void> {
  await type(field, typed);
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await expect(field).toHaveValue(typed);
  await expect(field).toHaveAccessibleDescription(/\S/);
}

async function expectTaken(field: Locator, typed: string, shown: RegExp): Promise<void> {
  await type(field, typed);
  await expect(field).not.toHaveAttribute('aria-invalid', 'true');
  await expect(field).toHaveValue(shown);
}

async function type(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.blur();
}

function fieldCalled(page: Page, label: string): Locator {
  return page.getByRole('main').getByRole('textbox', { name: new RegExp(`^${label}( · optional)?$`) });
}

async function addBoard(page: Page): Promise<void> {
  await page.goto('/catalogue/sheets/new');
  const board: readonly (readonly [string, string])[] = [
    ['Name', 'MDF 18 mm'],
    ['Length', '2440 mm'],
    ['Width', '1220 mm'],
    ['Nominal thickness', '18 mm'],
    ['Density, kg/m³', '740'],
  ];
  for (const [label, text] of board) await type(fieldCalled(page, label), text);
  await page.getByRole('button', { name: 'Add sheet' }).click();
  await page.waitForURL(/\/catalogue\/sheets\/[0-9a-f-]{36}$/);
}

async function openJob(page: Page): Promise<void> {
  await page.goto('/jobs/new');
  await page.getByLabel('Work, in a few words').fill('A box that cannot be');
  await pick(page, 'Customer', /A new customer/);
  await page.getByLabel('Name', { exact: true }).fill('Odd Lund');
  await page.getByRole('button', { name: /Vehicle$/ }).click();
  await page.getByRole('option', { name: 'Another vehicle' }).click();
  await page.getByLabel('Make').fill('Tern');
  await page.getByLabel('Model name').fill('Coast');
  await page.getByRole('button', { name: 'Open the job' }).click();
  await expect(page.getByRole('heading', { name: 'Brief', level: 1 })).toBeVisible();
}
