import type { Locator, Page } from 'playwright-core';
import type { BrowserTest, E2E } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';

async function openForecast(page: Page, baseUrl: string): Promise<Locator> {
  await page.goto(baseUrl + VANITY);
  const section = page.locator('#forecast-button');
  await section.waitFor();
  if ((await section.getAttribute('aria-expanded')) === 'false') await section.click();
  const chart = page.locator('.forecast-chart').first();
  await chart.locator('.band-buttons button').first().waitFor();
  return chart;
}

async function openFilm(page: Page, baseUrl: string): Promise<void> {
  await openForecast(page, baseUrl);
  await page.locator('.film-part').first().locator('h4 button').click();
  await page.locator('.film-body .edge-chart').first().waitFor();
}

/** The one band that is open on the page, once what the flow adds is there; fails when it is not one, or says too little. */
async function readsWhy(page: Page, name: string): Promise<void> {
  const open = await page.locator('.band-buttons [aria-expanded="true"]').allTextContents();
  if (open.join() !== `why ${name}`) throw new Error(`open: ${open.join()}, asked for ${name}`);
  const panel = page.locator('.band-why:visible');
  await panel.locator('.film-formula').first().waitFor();
  await page.getByText('Working out what the film does').waitFor({ state: 'hidden' });
  const said = (await panel.textContent()) ?? '';
  for (const part of [`${name}: why it is`, 'Source:', 'Rule of thumb', 'range, '])
    if (!said.includes(part)) throw new Error(`no "${part}" under ${name}: ${said}`);
  if ((await panel.locator('dd').count()) < 2) throw new Error(`no numbers under ${name}`);
}

async function focused(page: Page): Promise<string> {
  return page.evaluate(() => document.activeElement?.textContent ?? '');
}

async function isClosed(page: Page): Promise<void> {
  if ((await page.locator('.band-why:visible').count()) > 0) throw new Error('the reasons are still open');
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'film: every band of the chart is tapped and says why, one at a time; Escape closes it',
    run: async ({ page, baseUrl }) => {
      const chart = await openForecast(page, baseUrl);
      const buttons = await chart.locator('.band-buttons button').all();
      const names: string[] = [];
      for (const button of buttons) {
        const name = ((await button.textContent()) ?? '').replace('why ', '');
        names.push(name);
        await button.click();
        await readsWhy(page, name);
        const box = await button.boundingBox();
        if (box === null || box.height < 44) throw new Error(`${name} is ${box?.height} px high`);
      }
      for (const name of [
        'Meld',
        'Wrap edges',
        'Torch',
        'Scrape drips',
        'Hands off',
        'Working time ends',
        'Gel',
      ])
        if (!names.includes(name)) throw new Error(`no band ${name} among ${names.join()}`);
      await page.keyboard.press('Escape');
      await isClosed(page);
      if (!(await focused(page)).includes('Gel')) throw new Error('the focus did not go back to its band');
      // One of all charts: that of the next coat closes this one.
      await buttons[0]!.click();
      const next = page.locator('.forecast-chart').nth(1).locator('.band-buttons button').last();
      await next.click();
      await readsWhy(page, 'Gel');
    },
  },
  {
    name: 'film: reasons of a band by keys alone',
    run: async ({ page, baseUrl }) => {
      const chart = await openForecast(page, baseUrl);
      await chart.locator('.band-buttons button', { hasText: 'Meld' }).focus();
      await page.keyboard.press('Enter');
      await readsWhy(page, 'Meld');
      await page.keyboard.press('Tab');
      await page.keyboard.press('Space');
      await readsWhy(page, 'Wrap edges');
      await page.keyboard.press('Enter');
      await isClosed(page);
      await chart.locator('.band-buttons button').last().focus();
      await page.keyboard.press('Enter');
      await readsWhy(page, 'Gel');
      // Past the minute of the chart into the reasons: their own button closes them too.
      await page.keyboard.press('Tab');
      await page.keyboard.press('Tab');
      if (!(await focused(page)).startsWith('Close')) throw new Error(`focus on ${await focused(page)}`);
      await page.keyboard.press('Enter');
      await isClosed(page);
      if (!(await focused(page)).includes('Gel')) throw new Error('the focus did not go back to its band');
    },
  },
  {
    name: 'film: nothing is worked out before a band or the film is opened, and then once for both',
    run: async ({ page, baseUrl }) => {
      let workers = 0;
      page.on('worker', (worker) => {
        if (worker.url().includes('outlook')) workers += 1;
      });
      const chart = await openForecast(page, baseUrl);
      await page.waitForTimeout(500);
      if (workers > 0) throw new Error('the film was worked out before anybody asked');
      await chart.locator('.band-buttons button', { hasText: 'Torch' }).click();
      await readsWhy(page, 'Torch');
      await page.locator('.film-part').first().locator('h4 button').click();
      await page.locator('.film-body .edge-chart').first().waitFor();
      if (workers !== 1) throw new Error(`${workers} workers for one coat`);
    },
  },
  {
    name: 'film: the printed sheet has no buttons on its chart',
    run: async ({ page, baseUrl }) => {
      const chart = await openForecast(page, baseUrl);
      await chart.locator('.band-buttons button').last().click();
      await page.emulateMedia({ media: 'print' });
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      await page.locator('.work-order .forecast-chart svg').first().waitFor();
      const seen = await page.locator('.band-buttons:visible, .band-why:visible').count();
      if (seen > 0) throw new Error(`${seen} buttons or reasons on paper`);
      await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    },
  },
  {
    name: 'film: an answer says why, with formula, numbers and source; edges, colours, bubbles, resins and drips in sentences',
    run: async ({ page, baseUrl }) => {
      await openFilm(page, baseUrl);
      const edge = page.getByRole('region', { name: /^Edge front/ });
      await edge.locator('summary').first().click();
      await edge.getByText('Jeffreys 1930', { exact: false }).waitFor();
      await edge.getByText('flow budget left').first().waitFor();
      await edge.getByText(/Drips .* apart/).waitFor();
      await edge.getByText('of edge;').waitFor();
      const body = page.locator('.film-body');
      await body.getByText('No film is worked over').waitFor();
      await body.getByText('That is why a flood coat is a regular resin').waitFor();
      await body.getByText('Against this film (bubbles from').waitFor();
      const cells = page.getByRole('region', { name: 'Cells' });
      await cells.getByText('For crisp boundaries pour in this order').waitFor();
      const colours = (await cells.locator('.rules-note').first().textContent())!.split(', ').length;
      const pairs = await cells.locator('tbody tr').count();
      if (pairs !== (colours * (colours - 1)) / 2) throw new Error(`${pairs} pairs of ${colours} colours`);
    },
  },
  {
    name: 'film: another bench level, spot or face film is another answer; what cannot be read is said',
    run: async ({ page, baseUrl }) => {
      await openFilm(page, baseUrl);
      const bench = page.getByRole('region', { name: 'Bench level' });
      // Without a reading there is no verdict; a bench without a fall is level enough, one with a quarter of an inch is not.
      await bench.getByRole('status').getByText('No level reading').waitFor();
      const before = await bench.getByRole('status').textContent();
      await bench.getByRole('textbox').fill('0 in');
      await bench.getByRole('status').getByText(': level enough.').waitFor();
      await bench.getByRole('textbox').fill('1/4 in');
      await bench.getByRole('status').getByText(': level the bench.').waitFor();
      const after = await bench.getByRole('status').textContent();
      if (after === before) throw new Error(`the same answer for two levels: ${after}`);
      await bench.getByRole('textbox').fill('a bit');
      await bench.getByRole('status').getByText('No answer until').waitFor();
      const levelling = page.getByRole('region', { name: 'Levelling' });
      await levelling.getByLabel('Your own tool').fill('1 1/4 in');
      await levelling.getByText('Last touch: your own tool, 1 1/4 in apart').waitFor();
      await levelling.getByLabel('Your own tool').fill('3 ft');
      await levelling.locator('.field-problem').filter({ hasText: /\w/ }).waitFor();
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
  ...[390, 1024, 1920].map((width) => ({
    name: `film: no barrier axe can find, and no page wider than a screen of ${width} px`,
    run: async ({ page, baseUrl, axe }: E2E) => {
      await page.setViewportSize({ width, height: 900 });
      await openFilm(page, baseUrl);
      await page.locator('.band-buttons button', { hasText: 'Scrape' }).first().click();
      await readsWhy(page, 'Scrape drips');
      const folded = page.locator('.film-why:not([open]) > summary');
      while ((await folded.count()) > 0) await folded.first().click();
      await axe(page);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      if (over > 0) throw new Error(`${over} px wider than a screen of ${width} px`);
      for (const button of await page.locator('.band-buttons button').all()) {
        const box = await button.boundingBox();
        if (box === null || box.height < 44) throw new Error(`${box?.height} px high at ${width} px`);
      }
    },
  })),
];
