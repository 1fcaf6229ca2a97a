import type { Page } from 'playwright-core';
import type { BrowserTest } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';

async function openFit(page: Page, baseUrl: string) {
  await page.goto(baseUrl + VANITY);
  const section = page.locator('#piece-button');
  await section.waitFor();
  if ((await section.getAttribute('aria-expanded')) === 'false') await section.click();
  const part = page.locator('#piece-fit');
  const head = part.locator('.fold-head button');
  if ((await head.getAttribute('aria-expanded')) === 'false') await head.click();
  return part;
}

async function measure(page: Page, baseUrl: string) {
  const part = await openFit(page, baseUrl);
  const start = part.getByRole('button', { name: 'Start with the walls' });
  if (await start.isVisible()) await start.click();
  const type = (label: string, text: string) => part.getByLabel(label, { exact: true }).fill(text);
  await type('Back wall to cabinet front', '21 in');
  await type('Alcove width, back', '48 1/8 in');
  await type('Alcove width, middle', '48 1/16 in');
  await type('Alcove width, front', '1222 mm');
  await type('Side walls come out', '24 in');
  await type('Door, clear width', '28 in');
  await type('Door, clear height', '79 in');
  await type('Width before it', '14 in');
  await type('Width after it', '14 in');
  await type('Ceiling', '24 in');
  return part;
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'fit: walls typed give the size to make, and the piece takes it; undo brings the old one back',
    run: async ({ page, baseUrl }) => {
      const part = await measure(page, baseUrl);
      await part.getByText('Make it 47 13/16 in long', { exact: false }).waitFor();
      await part.getByText('Make it 21 7/8 in deep', { exact: false }).waitFor();
      await part.getByText('turned right round between the walls', { exact: false }).waitFor();
      await part.getByText('goes through on edge', { exact: false }).waitFor();
      await part.getByText('does not go round the corner on edge', { exact: false }).waitFor();
      const length = page.getByLabel('Length along the front').first();
      const before = await length.inputValue();
      await part.getByRole('button', { name: 'Use as the size of the piece' }).click();
      await page.waitForFunction(
        () =>
          [...document.querySelectorAll('input')].some((input) => input.value === '47 13/16 in') &&
          [...document.querySelectorAll('input')].some((input) => input.value === '21 7/8 in'),
      );
      // The longer piece no longer turns freely.
      await part.getByText('Lying flat, its back at the wall', { exact: false }).waitFor();
      await page.getByRole('button', { name: /^Undo/ }).first().click();
      await page.waitForFunction(
        (text) => [...document.querySelectorAll('input')].some((input) => input.value === text),
        before,
      );
    },
  },
  {
    name: 'fit: what cannot be read is said at its field, and the rest is still answered',
    run: async ({ page, baseUrl }) => {
      const part = await measure(page, baseUrl);
      const field = part.getByLabel('Alcove width, middle', { exact: true });
      await field.fill('four feet');
      await field.blur();
      await part.locator('.field-problem').getByText('four feet').waitFor();
      await part.getByText('the smallest of the three', { exact: false }).waitFor();
      await part.getByText('Make it 21 7/8 in deep', { exact: false }).waitFor();
      await part.getByLabel('A wall at').selectOption('neither');
      await part.getByLabel('Length of the cabinet').fill('60 in');
      await part.getByText('Make it 61 in long', { exact: false }).waitFor();
    },
  },
  {
    name: 'fit: no barrier axe can find, and no page wider than its screen',
    run: async ({ page, baseUrl, axe }) => {
      await measure(page, baseUrl);
      for (const width of [1920, 1024, 390]) {
        await page.setViewportSize({ width, height: 900 });
        await page.waitForTimeout(300);
        await axe(page);
        const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        if (over > 0) throw new Error(`${over} px wider than ${width} px`);
      }
    },
  },
];
