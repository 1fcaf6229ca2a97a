/** The look of a coat, from the brief to the signature. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { BrowserTest } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';
const SIZES = [
  { width: 390, height: 844 },
  { width: 1024, height: 768 },
  { width: 1920, height: 1080 },
];
const SHOTS = process.env.SHOTS;

async function shot(page: Page, name: string): Promise<void> {
  if (SHOTS === undefined) return;
  mkdirSync(SHOTS, { recursive: true });
  await page.locator('#look').screenshot({ path: join(SHOTS, `${name}.png`) });
}

async function openLook(page: Page, baseUrl: string): Promise<void> {
  await page.goto(baseUrl + VANITY);
  const button = page.locator('#look-button');
  await button.waitFor();
  if ((await button.getAttribute('aria-expanded')) === 'false') await button.click();
}

async function compose(page: Page, seed: string): Promise<void> {
  await page.getByLabel('Seed').fill(seed);
  await page.getByRole('button', { name: 'Compose', exact: true }).click();
  await page.getByRole('button', { name: `Take seed ${seed}`, exact: true }).waitFor();
}

async function fits(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  if (over > 0) throw new Error(`${over} px wider than the page`);
}

const saved = (page: Page) => page.locator('.connection', { hasText: 'Saved' }).waitFor();

export const tests: readonly BrowserTest[] = [
  ...SIZES.map(
    (size): BrowserTest => ({
      name: `look: a brief gives five looks, one is taken and undone, ${size.width} px`,
      run: async ({ page, baseUrl, axe }) => {
        await page.setViewportSize(size);
        await openLook(page, baseUrl);
        await shot(page, `look-empty-${size.width}`);
        await compose(page, '7');
        await page.getByRole('button', { name: 'Take seed 11' }).waitFor();
        await page.waitForFunction(
          () => document.querySelectorAll('.look-canvas[data-drawn-by]').length >= 5,
        );
        await axe(page);
        await fits(page);
        await shot(page, `look-choices-${size.width}`);
        await page.getByRole('button', { name: 'Take seed 8' }).click();
        await page.locator('#look .part-summary', { hasText: 'puddles' }).waitFor();
        await page.locator('.look-canvas[data-drawn-by]').first().waitFor();
        await shot(page, `look-taken-${size.width}`);
        await axe(page);
        await fits(page);
        await page.getByRole('button', { name: 'Undo' }).first().click();
        await page.getByRole('button', { name: 'Compose', exact: true }).waitFor();
        await saved(page);
      },
    }),
  ),
];
