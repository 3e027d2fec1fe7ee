// The browser for the end-to-end tests: Debian's chromium, else the test library's own.
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { installFromDebian } from './debian.ts';

const DEBIAN_CHROMIUM = '/usr/bin/chromium';

/** Path of a browser that runs here. Throws a sentence that says what to install. */
export async function browserPath(): Promise<string> {
  const given = process.env.TEST_BROWSER;
  if (given !== undefined && given !== '') {
    if (existsSync(given)) return given;
    throw new Error(`TEST_BROWSER is ${given}, but there is no such file.`);
  }
  if (existsSync(DEBIAN_CHROMIUM)) return DEBIAN_CHROMIUM;
  if (installFromDebian(['chromium']) && existsSync(DEBIAN_CHROMIUM)) return DEBIAN_CHROMIUM;
  const { chromium } = createRequire(import.meta.resolve('@gusset/e2e/package.json'))('@playwright/test');
  const own: string = chromium.executablePath();
  if (existsSync(own)) return own;
  throw new Error(
    'No browser was found for the end-to-end tests. Run "npx playwright install chromium", install a chromium, or name one in TEST_BROWSER.',
  );
}
