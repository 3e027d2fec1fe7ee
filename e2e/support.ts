// What every journey needs: people who can sign in, a page that is checked for accessibility, pictures.
import { AxeBuilder } from '@axe-core/playwright';
import { test as base, expect, type Page } from '@playwright/test';

/** The demo shop's owner, as `npm start` prints it. */
export const DEMO = { email: 'mira@quarry-road.example', password: 'lantern copper meadow violin' };

export const test = base.extend<{ faults: string[] }>({
  /** A page that throws, or whose security policy is broken, fails the test that opened it. */
  faults: [
    async ({ page }, use) => {
      const faults: string[] = [];
      page.on('pageerror', (error) => faults.push(error.message));
      page.on('console', (message) => {
        if (message.type() === 'error' && /Content Security Policy|hydrat/i.test(message.text()))
          faults.push(message.text());
      });
      await use(faults);
      expect(faults).toEqual([]);
    },
    { auto: true },
  ],
});
export { expect };

export async function signIn(page: Page, person = DEMO): Promise<void> {
  await page.goto('/sign-in');
  await page.getByLabel('E-mail').fill(person.email);
  await page.getByLabel('Password', { exact: true }).fill(person.password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL('/');
}

export type NewShop = { readonly person: string; readonly shop: string };

/** A shop of the test's own, in inches and dollars, with its founder signed in. */
export async function foundShop(page: Page, { person, shop }: NewShop): Promise<void> {
  await page.goto('/set-up');
  await page.getByLabel('Your name').fill(person);
  await page.getByLabel('E-mail').fill(`${person.split(' ')[0]?.toLowerCase()}-${Date.now()}@example.com`);
  await page.getByLabel('Password', { exact: true }).fill(DEMO.password);
  await page.getByRole('button', { name: 'Go on to the shop' }).click();
  await page.getByLabel('Shop', { exact: true }).fill(shop);
  await page.getByRole('combobox', { name: 'Currency' }).fill('USD');
  await page.getByRole('option', { name: /USD/ }).click();
  await page.getByText('Inches').click();
  await page.getByRole('button', { name: 'Open the shop' }).click();
  await page.waitForURL('/');
}

/** Picks from a short list: its button is called by the value it shows and its label. */
export async function choose(page: Page, label: string, option: string | RegExp): Promise<void> {
  const choice = page.getByRole('option', { name: option });
  await expect(async () => {
    await page.getByRole('button', { name: new RegExp(`${label}$`) }).click();
    await expect(choice).toBeVisible({ timeout: 2_000 });
  }).toPass({ timeout: 30_000 });
  await choice.click();
}

/**
 * Picks from a long list that the server searches. A page just loaded may not listen yet, and its list may still be on
 * its way: the list is opened again until the option is there.
 */
export async function pick(page: Page, label: string, option: RegExp): Promise<void> {
  const choice = page.getByRole('option', { name: option });
  await expect(async () => {
    const box = page.getByRole('combobox', { name: label });
    await box.click();
    await box.press('ArrowDown');
    await expect(choice).toBeVisible({ timeout: 2_000 });
  }).toPass({ timeout: 30_000 });
  await choice.click();
}

/** Axe by WCAG 2.2 A and AA, on what is on the screen now. */
export async function expectAccessible(page: Page): Promise<void> {
  expect(await accessFaults(page)).toEqual([]);
}

export async function accessFaults(page: Page): Promise<string[]> {
  return faultsOf(axeOn(page).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']));
}

/** What a change of theme can break: the rest of the page is the same markup. */
export async function contrastFaults(page: Page): Promise<string[]> {
  return faultsOf(axeOn(page).withRules(['color-contrast', 'link-in-text-block']));
}

function axeOn(page: Page): AxeBuilder {
  // The component library's own screen-reader announcements: emptied lines that point at labels already gone.
  return new AxeBuilder({ page }).exclude('[data-live-announcer]');
}

async function faultsOf(axe: AxeBuilder): Promise<string[]> {
  const { violations } = await axe.analyze();
  return violations.flatMap(({ id, nodes }) => {
    const targets = nodes.map((node) => node.target.join(' ')).filter((at) => !hasFieldInstead(id, at));
    return targets.length === 0 ? [] : [`${id}: ${targets.join(' | ')}`];
  });
}

/** Grips of a small box lie close together; each has its field below, which WCAG 2.5.8 lets stand for it. */
function hasFieldInstead(rule: string, target: string): boolean {
  return rule === 'target-size' && target.includes('aria-label="Drag the ');
}

/** Nothing may be wider than the screen. */
export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(beyond).toBeLessThanOrEqual(0);
}
