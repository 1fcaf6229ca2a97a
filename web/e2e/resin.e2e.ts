import type { Page } from 'playwright-core';
import type { BrowserTest } from '../../scripts/e2e-types.ts';

const SLOW = '/resins/shop-slow-40';
const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';

function same<T>(read: T, wanted: T, what: string): void {
  if (JSON.stringify(read) !== JSON.stringify(wanted))
    throw new Error(`${what}: read ${JSON.stringify(read)}, wanted ${JSON.stringify(wanted)}`);
}

const saved = (page: Page) => page.locator('.connection', { hasText: '✓ Saved' }).waitFor();
/** The line of the first figure of a kind. */
const figure = (page: Page, kind: string) =>
  page.locator('.figure-row', { has: page.locator('legend', { hasText: new RegExp(`^${kind}$`) }) }).first();

async function add(page: Page, kind: string, value: string, temperature = ''): Promise<void> {
  await page.getByRole('button', { name: kind, exact: true }).click();
  const row = figure(page, kind);
  await row.getByLabel('Figure or range').fill(value);
  if (temperature !== '') await row.getByLabel('At', { exact: true }).fill(temperature);
}

async function newCard(page: Page, baseUrl: string, name: string): Promise<void> {
  await page.goto(`${baseUrl}/resins`);
  await page.getByLabel('Name on the tin').fill(name);
  await page.getByLabel('A to B by volume').fill('2:1');
  await page.getByRole('button', { name: 'Make the card' }).click();
  await page.getByRole('heading', { level: 1, name }).waitFor();
}

/** Waits until everything on the page belongs to what is typed. */
const settled = (page: Page) =>
  page.locator('.resin-page:not([data-behind]) .hang-up svg').first().waitFor({ timeout: 40_000 });

const workingTime = async (page: Page) =>
  (await page.locator('.outlook div', { hasText: 'Working time' }).locator('strong').textContent()) ?? '';

async function logger(page: Page, name: string, text: string): Promise<void> {
  await page
    .locator('.logger input[type=file]')
    .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'resin: a new card from a label leads to curves and ranges, in the units on screen',
    run: async ({ page, baseUrl }) => {
      await page.goto(`${baseUrl}/resins`);
      await page.getByRole('button', { name: 'Make the card' }).click();
      await page.getByText('The card needs a name.').waitFor();
      await page.getByText('The mix ratio is needed').waitFor();
      await newCard(page, baseUrl, 'Tin from the corner');
      same(new URL(page.url()).pathname, '/resins/tin-from-the-corner', 'the address');
      await settled(page);
      const wide = await workingTime(page);
      await add(page, 'working time', '40 min', '75 F');
      await add(page, 'recoat opens', '12 h', '75 F');
      await saved(page);
      await settled(page);
      await page.waitForFunction(
        (was) => document.querySelector('.outlook strong')?.textContent !== was,
        wide,
      );
      same(/^3\d to 5\d min$/.test(await workingTime(page)), true, `working time ${await workingTime(page)}`);
      same(
        (await page.locator('.plot svg').count()) >= 5,
        true,
        'charts of the fit, to hang up, of the ratio',
      );
      await page.getByText('The label says working time 40 min at 75 °F', { exact: false }).waitFor();
      await page.locator('.system-switch label', { hasText: 'Metric' }).click();
      await page.getByText('The label says working time 40 min at 24 °C', { exact: false }).waitFor();
      same(
        await figure(page, 'working time').getByLabel('At', { exact: true }).inputValue(),
        '75 F',
        'as typed',
      );
      await page.locator('.system-switch label', { hasText: 'US' }).click();
      await page.reload();
      same(await figure(page, 'working time').getByLabel('Figure or range').inputValue(), '40 min', 'kept');
    },
  },
  {
    name: 'resin: two figures that contradict are named, beside both and in the account',
    run: async ({ page, baseUrl }) => {
      await newCard(page, baseUrl, 'Contradiction');
      await add(page, 'working time', '90 min', '75 F');
      await figure(page, 'working time').getByLabel('Film').fill('2.5 mm');
      await add(page, 'pot life', '6 min', '75 F');
      await figure(page, 'pot life').getByLabel('Mass in a cup').fill('100 g');
      await figure(page, 'pot life').getByLabel('Ends at').selectOption('40 C');
      for (const kind of ['working time', 'pot life'])
        await figure(page, kind).getByText('Contradiction:').waitFor({ timeout: 40_000 });
      await page.locator('.known-contradicts').getByText('do not fit one resin').waitFor();
      await saved(page);
    },
  },
  {
    name: 'resin: a recoat before the working time and 75 C are refused at their fields, kept, and saved once put right',
    run: async ({ page, baseUrl }) => {
      await newCard(page, baseUrl, 'Mistyped');
      await add(page, 'working time', '40 min');
      await add(page, 'recoat opens', '30 min');
      const recoat = figure(page, 'recoat opens').getByLabel('Figure or range');
      await figure(page, 'recoat opens').getByText('is not after working time').waitFor();
      await page.locator('.connection', { hasText: 'attention' }).waitFor();
      await page.getByRole('button', { name: 'Show the field' }).first().click();
      await page.waitForFunction(() => document.activeElement?.id === 'f-label-1-value');
      await page.reload();
      same(await recoat.inputValue(), '30 min', 'the text after a reload');
      await recoat.fill('12 h');
      await saved(page);
      const warm = figure(page, 'working time').getByLabel('At', { exact: true });
      await warm.fill('75 C');
      await warm.blur();
      await figure(page, 'working time').getByText('did you mean 75 °F?').waitFor();
      same(await warm.getAttribute('aria-invalid'), 'true', 'aria-invalid');
      await warm.fill('75 F');
      await saved(page);
      await page.getByLabel('By weight', { exact: true }).fill('1:1');
      await page.getByLabel('By volume', { exact: true }).fill('2:0');
      await page
        .locator('.field', { has: page.getByLabel('By volume', { exact: true }) })
        .getByText('Allowed:')
        .waitFor();
      await page.getByLabel('By volume', { exact: true }).fill('2:1');
      await page
        .getByText('apart with these densities', { exact: false })
        .or(page.getByText('times as much as part A'))
        .first()
        .waitFor();
    },
  },
  {
    name: 'resin: a logger file is taken; an empty, a garbled, a non-monotone and a huge one are refused, with their lines',
    run: async ({ page, baseUrl }) => {
      await newCard(page, baseUrl, 'Logged');
      await page.getByLabel('What was seen').selectOption('cup temperatures');
      const problems = page.locator('.logger-problems');
      await logger(page, 'empty.csv', '');
      await problems.getByText('The file holds no readings.').waitFor();
      await logger(page, 'garbled.csv', 'time s,temp C\n0,24\nsoon,25\n60,warm\n');
      await problems.getByText('Line 3:').waitFor();
      await problems.getByText('Line 4:').waitFor();
      await logger(page, 'back.csv', 'time s,temp C\n0,24\n120,25\n60,26\n');
      await problems.getByText('does not come after that of line 3').waitFor();
      await page.locator('.logger input[type=file]').evaluate((input: HTMLInputElement) => {
        const given = new DataTransfer();
        given.items.add(new File([new Uint8Array(100_000_001)], 'huge.csv'));
        input.files = given.files;
        input.dispatchEvent(new Event('change', { bubbles: true }));
      });
      await problems.getByText('too large for a cup test').waitFor();
      await problems.getByText('Allowed: up to 100 MB').waitFor();
      const rows = Array.from({ length: 61 }, (_, i) => `${i * 10},${(75 + i * 0.09).toFixed(2)}`);
      await logger(page, 'good.csv', `seconds,temperature F\n${rows.join('\n')}\n`);
      await page.getByText('good.csv: 61 readings.').waitFor();
      same(await problems.count(), 0, 'problems of a good file');
      await page.getByRole('button', { name: 'Add to the card' }).click();
      await page.getByText('This observation needs the air temperature.').waitFor();
      await page.getByLabel('Air in the shop').fill('75 F');
      await page.getByLabel('Mass in the cup', { exact: true }).fill('100 g');
      await page.getByRole('button', { name: 'Add to the card' }).click();
      await page.locator('.seen-list').getByText('61 readings in a cup of 100 g at 75 F.').first().waitFor();
      await saved(page);
    },
  },
  {
    name: 'resin: an observation shows what it taught, and can be withdrawn and used again',
    run: async ({ page, baseUrl }) => {
      await newCard(page, baseUrl, 'Taught');
      await add(page, 'working time', '40 min', '75 F');
      await settled(page);
      const before = await workingTime(page);
      await page.getByLabel('Air in the shop').fill('81 F');
      await page.getByLabel('After', { exact: true }).fill('9 min');
      await page.getByLabel('Mass in the cup', { exact: true }).fill('300 g');
      await page.getByRole('button', { name: 'Add to the card' }).click();
      await page.locator('.taught').waitFor({ timeout: 40_000 });
      same(await page.locator('.taught tbody tr').count(), 4, 'ranges before and after');
      await page.locator('.taught').getByText('narrower').first().waitFor();
      await settled(page);
      const after = await workingTime(page);
      same(after !== before, true, 'the range moved');
      await page.getByRole('button', { name: /^Withdraw/ }).click();
      await page.locator('.seen-list').getByText('Withdrawn, not used.').waitFor();
      await page.waitForFunction(
        (was) => document.querySelector('.outlook strong')?.textContent === was,
        before,
      );
      await saved(page);
      await page.getByRole('button', { name: /^Use it again/ }).click();
      await page.waitForFunction(
        (was) => document.querySelector('.outlook strong')?.textContent === was,
        after,
      );
      await saved(page);
    },
  },
  {
    name: 'resin: the cup test keeps its clock and readings without a network, and gives a rate from three of them',
    run: async ({ page, context, baseUrl }) => {
      await newCard(page, baseUrl, 'Cup tested');
      await settled(page);
      await page.clock.install();
      await page.reload();
      await settled(page);
      const test = page.locator('.cup-test');
      await test.getByLabel('Air', { exact: true }).fill('75 F');
      await test.getByRole('button', { name: /start the clock/ }).click();
      await context.setOffline(true);
      const entry = test.getByLabel(/^Thermometer/);
      await entry.fill('lukewarm');
      await entry.press('Enter');
      await test.locator('.reading-entry .field-problem').getByText('lukewarm').waitFor();
      for (const reading of ['75', '75.9', '76.9', '78.0']) {
        await page.clock.runFor(60_000);
        await entry.fill(reading);
        await entry.press('Enter');
      }
      await test.getByText('78.0 F').waitFor();
      await test.getByText(/the cup warms by/).waitFor();
      same((await test.locator('.cup-clock').textContent())?.startsWith('4:0'), true, 'the clock');
      await context.setOffline(false);
      await page.reload();
      await test.getByText('78.0 F').waitFor();
      await test.getByRole('button', { name: 'Keep the test on the card' }).click();
      await page.locator('.seen-list').getByText('4 readings in a cup of 100 g at 75 F.').first().waitFor();
      await page.clock.runFor(5000);
      await saved(page);
    },
  },
  {
    name: 'resin: a job uses a card of the shop, and its forecast follows the card',
    run: async ({ page, baseUrl }) => {
      await page.goto(baseUrl + VANITY);
      const coats = page.locator('#coats-button');
      await coats.waitFor();
      if ((await coats.getAttribute('aria-expanded')) === 'false') await coats.click();
      const resin = page.getByLabel('Resin', { exact: true }).first();
      await page.locator('#mix .part-summary', { hasText: ' g in ' }).waitFor();
      await resin.selectOption({ label: 'Shop slow 40' });
      await page.locator('#coats .part-summary', { hasText: 'Shop slow 40' }).waitFor();
      await saved(page);
      await page.locator('.sheet:not([data-behind])').waitFor({ timeout: 30_000 });
      await page.locator('#mix .part-summary', { hasText: ' g in ' }).waitFor();
      same(await page.locator('#coats .part-problems').count(), 0, 'problems');
      await page.reload();
      same(await resin.inputValue(), 'shop-slow-40', 'the resin after a reload');
    },
  },
  {
    name: 'resin: two people on one card choose every difference, nothing is lost',
    run: async (t) => {
      const { page, baseUrl } = t;
      await newCard(page, baseUrl, 'Shared');
      await settled(page);
      const other = await t.newPage();
      await other.goto(page.url());
      await other.getByLabel('What it is for').waitFor();
      await page.getByLabel('What it is for').fill('Set on the first device');
      await page.locator('.connection', { hasText: 'Saving' }).waitFor();
      await saved(page);
      await other.getByLabel('What it is for').fill('Set on the second device');
      await other.getByLabel('Density of part A').fill('1.12 g/mL');
      const panel = other.locator('.conflict');
      await panel.waitFor();
      await panel.getByText('This card was saved somewhere else').waitFor();
      const keep = panel.getByRole('button', { name: 'Keep these and save' });
      same(await keep.isDisabled(), true, 'open lines hold it back');
      await panel.getByText('Set on the first device').click();
      await keep.click();
      await saved(other);
      same(await other.getByLabel('What it is for').inputValue(), 'Set on the first device', 'the choice');
      same(
        await other.getByLabel('Density of part A').inputValue(),
        '1.12 g/mL',
        'what only the second changed',
      );
    },
  },
  {
    name: 'resin: the archive takes a card and gives it back',
    run: async ({ page, baseUrl }) => {
      await newCard(page, baseUrl, 'Seldom used');
      await page.getByRole('button', { name: 'Archive', exact: true }).click();
      await page.getByText('In the archive. Jobs that use it keep it.').waitFor();
      await page.getByRole('link', { name: 'Resins' }).first().click();
      await page.getByText('Archive (1)').click();
      await page.getByRole('link', { name: 'Seldom used' }).click();
      await page.getByRole('button', { name: 'Take out of the archive' }).click();
      await page.getByRole('button', { name: 'Archive', exact: true }).waitFor();
    },
  },
  {
    name: 'resin: the pages have no barrier axe can find and fit a phone; on paper there is the chart alone',
    run: async ({ page, baseUrl, axe }) => {
      await page.goto(`${baseUrl}/resins`);
      await page.getByText('Shop slow 40').waitFor();
      await axe(page);
      await page.goto(baseUrl + SLOW);
      await settled(page);
      await page.getByRole('button', { name: /What it taught/ }).click();
      await page.locator('.taught').waitFor({ timeout: 40_000 });
      await page.getByLabel('What was seen').selectOption('cup temperatures');
      await page.getByRole('button', { name: 'Add a reading' }).click();
      await page.getByRole('button', { name: /start the clock/ }).click();
      await axe(page);
      for (const width of [390, 360, 1920]) {
        await page.setViewportSize({ width, height: 800 });
        const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        same(over, 0, `pixels wider than ${width}`);
      }
      await page.setViewportSize({ width: 390, height: 800 });
      await axe(page);
      await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
      await page.emulateMedia({ media: 'print' });
      same(await page.locator('.hang-up-name').isVisible(), true, 'the name of the card');
      same(await page.locator('.hang-up svg').first().isVisible(), true, 'the chart');
      same(await page.locator('.figure-row').first().isVisible(), false, 'the label');
      same(await page.locator('.resin-page button:visible').count(), 0, 'buttons on paper');
    },
  },
];
