import type { Page } from 'playwright-core';
import type { BrowserTest } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';

async function openFilm(page: Page, baseUrl: string): Promise<void> {
  await page.goto(baseUrl + VANITY);
  const section = page.locator('#forecast-button');
  await section.waitFor();
  if ((await section.getAttribute('aria-expanded')) === 'false') await section.click();
  await page.locator('.film-part').first().locator('h4 button').click();
  await page.locator('.film-body .edge-chart').first().waitFor();
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'film: a band of the chart and an answer say why, with formula, numbers and source',
    run: async ({ page, baseUrl }) => {
      await openFilm(page, baseUrl);
      const bands = page.locator('.film-bands');
      await bands.getByRole('button', { name: 'gel', exact: true }).click();
      const whys = page.getByRole('region', { name: 'Why the chart says so' });
      await whys.getByText('The molecules join').waitFor();
      await whys.getByText('Castro and Macosko').waitFor();
      await bands.getByRole('button', { name: 'gel', exact: true }).click();
      await whys.getByText('The molecules join').waitFor({ state: 'hidden' });
      const edge = page.getByRole('region', { name: /^Edge front/ });
      await edge.locator('summary').first().click();
      await edge.getByText('Jeffreys 1930', { exact: false }).waitFor();
      await edge.getByText('flow budget left').first().waitFor();
    },
  },
  {
    name: 'film: another bench level, spot or face film is another answer; what cannot be read is said',
    run: async ({ page, baseUrl }) => {
      await openFilm(page, baseUrl);
      const bench = page.getByRole('region', { name: 'Bench level' });
      // Half a millimetre a metre shows in a film that flows for three hours; a bench without a fall does not.
      await bench.getByRole('status').getByText(': level the bench.').waitFor();
      const before = await bench.getByRole('status').textContent();
      await bench.getByRole('textbox').fill('0 in');
      await bench.getByRole('status').getByText(': level enough.').waitFor();
      await bench.getByRole('textbox').fill('1/4 in');
      await bench.getByRole('status').getByText(': level the bench.').waitFor();
      const after = await bench.getByRole('status').textContent();
      if (after === before) throw new Error(`the same answer for two levels: ${after}`);
      await bench.getByRole('textbox').fill('a bit');
      await bench.getByRole('status').getByText('No answer until').waitFor();
      const craters = page.getByRole('region', { name: 'Craters and a second flood' });
      await craters.getByLabel('Deepest divot').fill('1 mm');
      await craters.getByRole('status').getByText('Plan a second flood').waitFor();
      await page.getByLabel('Film wanted on the faces').first().fill('2 mil');
      await page
        .getByRole('region', { name: /^Edge front/ })
        .getByText('One pass is enough')
        .waitFor();
    },
  },
  {
    name: 'film: no barrier axe can find, and no page wider than a phone',
    run: async ({ page, baseUrl, axe }) => {
      await openFilm(page, baseUrl);
      await page.locator('.film-bands').getByRole('button', { name: 'scrape' }).click();
      for (const summary of await page.locator('.film-why > summary').all()) await summary.click();
      await axe(page);
      await page.setViewportSize({ width: 390, height: 844 });
      await page.waitForTimeout(300);
      await axe(page);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      if (over > 0) throw new Error(`${over} px wider than a 390 px phone`);
    },
  },
];
