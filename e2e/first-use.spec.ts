// Somebody who has never seen the program: own shop in inches, own customer and car, a brief, nothing lost on the way.
import { choose, expect, expectAccessible, expectNoSidewaysScroll, pick, test } from './support.ts';

const person = {
  name: 'Tove Brandt',
  email: `tove-${Date.now()}@example.com`,
  password: 'lantern copper meadow violin',
};

test('a new person founds a shop, opens a job and writes its brief', async ({ page, context }) => {
  await page.goto('/sign-in');
  await expectAccessible(page);
  await page.goto('/set-up');
  await page.getByLabel('Your name').fill(person.name);
  await page.getByLabel('E-mail').fill(person.email);
  await page.getByLabel('Password', { exact: true }).fill('short');
  await page.getByRole('button', { name: 'Go on to the shop' }).click();
  await expect(page.getByText(/at least 12|12 characters/i)).toBeVisible();
  await page.getByLabel('Password', { exact: true }).fill(person.password);
  await page.getByRole('button', { name: 'Go on to the shop' }).click();

  await page.getByLabel('Shop', { exact: true }).fill('Harbour Lane Audio');
  await page.getByRole('combobox', { name: 'Currency' }).fill('USD');
  await page.getByRole('option', { name: /USD/ }).click();
  await page.getByText('Inches').click();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Open the shop' }).click();
  await page.waitForURL('/');

  await page.goto('/jobs');
  await expect(page.getByRole('navigation', { name: 'Shop' })).toBeVisible();
  await expect(page.getByText('No jobs yet')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Open a job' }).first().click();
  await page.getByLabel('Work, in a few words').fill('Tapered box behind the seat');
  await pick(page, 'Customer', /A new customer/);
  await page.getByLabel('Name', { exact: true }).fill('Renske Vos');
  await page.getByLabel('E-mail').fill('not an address');
  await choose(page, 'Vehicle', 'Another vehicle');
  await page.getByLabel('Make').fill('Orrin');
  await page.getByLabel('Model name').fill('Drover');
  await page.getByLabel('Plate').fill('HL 4471');
  await page.getByRole('button', { name: 'Open the job' }).click();
  // What was typed stays; the message stands at the field.
  await expect(page.getByText('Type an address such as name@example.com.').first()).toBeVisible();
  await expect(page.getByLabel('E-mail')).toHaveValue('not an address');
  await page.getByLabel('E-mail').fill('renske@example.com');
  await page.getByRole('button', { name: 'Open the job' }).click();

  await expect(page.getByRole('heading', { name: 'Brief', level: 1 })).toBeVisible();
  await page.getByLabel('What it should do').fill('Deep bass without losing the seat’s recline');
  await page.getByText('Deep', { exact: true }).click();
  const depth = page.getByLabel('Floor depth to leave free');
  await depth.fill('17 1/4');
  await depth.press('Enter');
  await expect(page.getByText(/Saved \d/)).toBeVisible();
  await page.reload();
  await expect(page.getByLabel('What it should do')).toHaveValue(
    'Deep bass without losing the seat’s recline',
  );
  await expect(depth).toHaveValue(/17\s1\/4/);

  // A dropped connection keeps the draft and says so.
  await context.setOffline(true);
  await page.getByLabel('Where it may stand').fill('Behind the bench seat');
  await page.getByLabel('Where it may stand').blur();
  await expect(page.getByText(/Not saved, will retry/)).toBeVisible();
  await context.setOffline(false);
  await expect(page.getByText(/Saved \d/)).toBeVisible({ timeout: 20_000 });

  await page.getByRole('button', { name: 'Issue this sheet' }).click();
  await expect(page.getByText(/issued, rev A/)).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
});
