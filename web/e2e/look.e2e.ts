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
  {
    name: 'look: poured, pulled, a share changed and approved; cups and the signature follow',
    run: async ({ page, baseUrl, axe }) => {
      // A small picture: without a graphics card every change is drawn by the processor.
      await page.setViewportSize({ width: 600, height: 800 });
      await openLook(page, baseUrl);
      await compose(page, '3');
      await page.getByRole('button', { name: 'Take seed 3', exact: true }).click();
      const moves = page.locator('.look-moves > li');
      await moves.first().waitFor();
      const before = await moves.count();
      const over = page.locator('.look-over');
      const box = await over.boundingBox();
      if (box === null) throw new Error('there is no board');
      const share = page.getByLabel('Share of sea green', { exact: true });
      const was = await share.inputValue();

      await page.locator('.look-tool', { hasText: 'Pour' }).click();
      await over.click({ position: { x: box.width * 0.5, y: box.height * 0.3 } });
      await page.locator('.look-moves > li').nth(before).waitFor();
      await page.waitForFunction(
        (text) =>
          document.querySelector<HTMLInputElement>('.look-shares tbody tr:nth-child(2) input')?.value !==
          text,
        was,
      );

      await page.locator('.look-tool', { hasText: 'Pull' }).click();
      const at = await over.boundingBox();
      if (at === null) throw new Error('there is no board');
      await page.mouse.move(at.x + at.width * 0.3, at.y + at.height * 0.5);
      await page.mouse.down();
      await page.mouse.move(at.x + at.width * 0.45, at.y + at.height * 0.4, { steps: 6 });
      await page.mouse.move(at.x + at.width * 0.6, at.y + at.height * 0.6, { steps: 6 });
      await page.mouse.up();
      await moves.nth(before + 1).waitFor();
      await page
        .getByText(/Pull a tool of/)
        .last()
        .waitFor();

      const cup = page.locator('.look-shares tbody tr:nth-child(3) td[data-label="To mix"]');
      await page.locator('.look-shares:not([data-behind])').waitFor();
      const weighed = await cup.textContent();
      const copper = page.getByLabel('Share of copper', { exact: true });
      await copper.fill('20 %');
      await copper.press('Enter');
      await page.waitForFunction((text) => {
        const now = document.querySelector('.look-shares tbody tr:nth-child(3) td[data-label="To mix"]');
        return now?.textContent !== text && now?.textContent !== '–';
      }, weighed);
      if ((await copper.inputValue()) !== '20.0%') throw new Error(`copper is ${await copper.inputValue()}`);

      await page.getByRole('button', { name: `move ${before + 1} earlier` }).click();
      await page.getByRole('checkbox', { name: `Keep move ${before}`, exact: true }).uncheck();
      await page.locator('.look-moves [data-dropped]').waitFor();

      await page.getByLabel('Approved by').fill('A. Hart');
      await page.getByLabel('On sample panel').fill('B3');
      await page.getByRole('button', { name: 'Approve this look' }).click();
      await page.locator('[data-state="as it is"]', { hasText: 'panel B3, by A. Hart' }).waitFor();
      await shot(page, 'look-approved');
      await axe(page);
      await page.getByRole('button', { name: 'Remove move 1', exact: true }).click();
      await page.locator('[data-state="changed"]').waitFor();
      await saved(page);
      await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
      await page.locator('.look-printed canvas').first().waitFor({ state: 'attached' });
    },
  },
  {
    name: 'look: poured by figures and keyboard alone; a figure that cannot be read is answered',
    run: async ({ page, baseUrl }) => {
      await page.setViewportSize({ width: 600, height: 800 });
      await openLook(page, baseUrl);
      await page.locator('.look-moves > li').first().waitFor();
      const before = await page.locator('.look-moves > li').count();
      await page.locator('.look-tool input').first().focus();
      await page.keyboard.press('ArrowRight');
      const volume = page.locator('.look-held').getByLabel('Volume in the film');
      await volume.fill('1/2 fl oz');
      await volume.press('Enter');
      const x = page.locator('.look-held').getByLabel('from the left');
      await x.fill('10 in');
      await x.press('Enter');
      await page.getByRole('button', { name: 'Pour by these figures' }).press('Enter');
      const made = page.locator('.look-moves > li').nth(before);
      await made.getByText('10 in from the left').waitFor();
      await made.getByRole('button', { expanded: false }).press('Enter');
      await made.getByLabel('from the left').fill('9 parsecs');
      await made.getByLabel('from the left').press('Enter');
      await made.locator('.field-problem', { hasText: 'parsecs' }).waitFor();
    },
  },
];
