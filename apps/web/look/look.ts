// Looks at pages in a real browser: screenshots at three widths, day and night, with axe on each.
//   node apps/web/look/look.ts http://127.0.0.1:3900 /style /style/fields
// Pictures go to the folder named by LOOK_DIR (default: a folder in the system's temporary directory).

import { mkdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** Hydration, fonts and first answers; "network idle" never comes on pages with live updates. */
const SETTLE_MS = 1_200;
const WIDTHS_PX = [1440, 1024, 390] as const;
const THEMES = ['light', 'dark'] as const;
const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

type AxeViolation = {
  readonly id: string;
  readonly impact: string | null;
  readonly nodes: readonly { readonly target: readonly unknown[]; readonly failureSummary?: string }[];
};

const axeSource = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const lookAt = async (
  browser: Browser,
  url: string,
  widthPx: number,
  colorScheme: (typeof THEMES)[number],
  file: string,
): Promise<readonly string[]> => {
  const isPhone = widthPx < 720;
  const page = await browser.newPage({
    viewport: { width: widthPx, height: isPhone ? 844 : 900 },
    colorScheme,
    hasTouch: isPhone,
    isMobile: isPhone,
  });
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => faults.push(`page: ${error.message}`));
  await page.goto(url, { waitUntil: 'load' });
  await page.waitForTimeout(SETTLE_MS);
  await page.screenshot({ path: file, fullPage: true });
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  if (sideways > 0) faults.push(`scrolls sideways by ${sideways} px`);
  await page.evaluate(axeSource);
  const violations = await page.evaluate<readonly AxeViolation[]>(
    "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }).then((result) => result.violations)",
  );
  for (const { id, impact, nodes } of violations) {
    const where = nodes.map(({ target }) => target.join(' ')).join(' | ');
    faults.push(`axe ${id} (${impact}) ${nodes.length}: ${where.slice(0, 300)}`);
  }
  await page.close();
  return faults;
};

const [, , base = '', ...routes] = process.argv;
const folder = process.env.LOOK_DIR ?? join(tmpdir(), 'gusset-look');
await mkdir(folder, { recursive: true });
const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
const browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
let faultCount = 0;
for (const route of routes) {
  for (const widthPx of WIDTHS_PX) {
    for (const theme of THEMES) {
      const name = `${route.replace(/\W+/gu, '-').replace(/^-|-$/gu, '') || 'home'}-${widthPx}-${theme}`;
      const faults = await lookAt(browser, `${base}${route}`, widthPx, theme, join(folder, `${name}.png`));
      faultCount += faults.length;
      process.stdout.write(`${name}: ${faults.length === 0 ? 'clean' : `\n  ${faults.join('\n  ')}`}\n`);
    }
  }
}
await browser.close();
process.exitCode = faultCount === 0 ? 0 : 1;
