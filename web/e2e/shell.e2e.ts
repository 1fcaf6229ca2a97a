import type { BrowserTest } from '../../scripts/e2e-types.ts';

function same<T>(read: T, wanted: T, what: string): void {
  if (JSON.stringify(read) !== JSON.stringify(wanted))
    throw new Error(`${what}: read ${JSON.stringify(read)}, wanted ${JSON.stringify(wanted)}`);
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'today shows a strip for each piece on the go and the air of the next pours',
    run: async ({ page, baseUrl, axe }) => {
      await page.goto(baseUrl);
      await page.locator('.strip').nth(2).waitFor();
      await page.locator('.air-verdict').first().waitFor();
      await axe(page);
      await page.setViewportSize({ width: 360, height: 740 });
      await axe(page);
      same(
        await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
        0,
        'overflow',
      );
    },
  },
  {
    name: 'the focus goes to the heading of the new screen, and the skip link to its content',
    run: async ({ page, baseUrl }) => {
      await page.goto(`${baseUrl}/jobs`);
      await page.locator('.ledger.jobs').waitFor();
      await page.keyboard.press('Tab');
      same(
        await page.evaluate(() => document.activeElement?.textContent),
        'Skip to the content',
        'first stop',
      );
      await page.getByRole('link', { name: 'Shop' }).click();
      await page.getByRole('heading', { level: 1, name: 'Shop' }).waitFor();
      await page.waitForFunction(() => document.activeElement?.tagName === 'H1');
      same(await page.title(), 'Shop · Pourwright', 'title');
    },
  },
  {
    name: 'jobs are searched, archived and brought back',
    run: async ({ page, baseUrl, axe }) => {
      await page.goto(`${baseUrl}/jobs`);
      const rows = page.locator('.ledger.jobs tbody tr');
      await rows.nth(3).waitFor();
      await axe(page);
      await page.getByLabel('Search title and customer').fill('vanity');
      same(await rows.count(), 1, 'jobs found');
      await page.getByLabel('Search title and customer').fill('');
      await page.getByRole('button', { name: 'Archive Oval hall table' }).click();
      await page.locator('.toast', { hasText: 'in the archive' }).waitFor();
      await page.waitForFunction(() => document.querySelectorAll('.ledger.jobs tbody tr').length === 3);
      await page.locator('.toast').getByRole('button', { name: 'Undo' }).click();
      await rows.nth(3).waitFor();
      await page.setViewportSize({ width: 360, height: 740 });
      await axe(page);
      same(
        await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
        0,
        'overflow',
      );
    },
  },
  {
    name: 'a new job opens empty and says what it needs',
    run: async ({ page, baseUrl }) => {
      await page.goto(`${baseUrl}/jobs`);
      await page.getByRole('button', { name: 'New job' }).click();
      await page.getByRole('heading', { level: 1, name: 'New job' }).waitFor();
      await page.locator('#piece .part-needs').waitFor();
      await page.locator('#coats .part-needs').waitFor();
      await page.getByLabel('Shape').selectOption('rectangle');
      await page.getByLabel('Length along the front').fill('48 in');
      await page.getByLabel('Depth, front to back').fill('22 in');
      await page.getByLabel('Body thickness').fill('1 1/2 in');
      await page.locator('#piece .part-summary', { hasText: '7.3 sq ft' }).waitFor();
    },
  },
  {
    name: 'a file that is no job is answered with what was read',
    run: async ({ page, baseUrl }) => {
      await page.goto(`${baseUrl}/jobs`);
      const file = page.locator('input[type=file]');
      const bring = (text: string) =>
        file.setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from(text) });
      await file.waitFor({ state: 'attached' });
      await bring('{"format":"recipe"}');
      await page.locator('.import-outcome[data-bad]', { hasText: 'recipe' }).waitFor();
      await bring('{"format":"pourwright job 1","piece":{"bodyThickness":"thick"}}');
      await page.locator('.import-outcome[data-bad]', { hasText: 'piece.bodyThickness' }).waitFor();
    },
  },
  {
    name: 'the shop keeps its name and speeds, with a way back to the defaults',
    run: async ({ page, baseUrl, axe }) => {
      await page.goto(`${baseUrl}/shop`);
      await page.getByLabel('Name of the shop').fill('Test Bench Tops');
      await page.keyboard.press('Enter');
      await page.locator('.shell-name', { hasText: 'Test Bench Tops' }).waitFor();
      const mixing = page.getByLabel('Mixing one cup up to 2 kg, in s');
      await mixing.fill('often');
      await mixing.blur();
      await page.getByText('Allowed: 1 to 3600 s').waitFor();
      await axe(page);
      await mixing.fill('200');
      await mixing.blur();
      const reset = page.getByRole('button', { name: 'Back to the shop default: Mixing' });
      await reset.waitFor();
      await page.waitForTimeout(500);
      await page.reload();
      await reset.waitFor();
      same(await mixing.inputValue(), '200', 'mixing');
      await reset.click();
      await reset.waitFor({ state: 'detached' });
      same(await mixing.inputValue(), '150', 'mixing after the reset');
      await page.setViewportSize({ width: 360, height: 740 });
      await axe(page);
      same(
        await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
        0,
        'overflow',
      );
    },
  },
  {
    name: 'addresses that lead nowhere say so and lead back',
    run: async ({ page, baseUrl, axe }) => {
      await page.goto(`${baseUrl}/jobs/0190d000-0000-7000-8000-00000000ffff`);
      await page.getByRole('heading', { name: 'There is no job here' }).waitFor();
      await axe(page);
      await page.goto(`${baseUrl}/nowhere`);
      await page.getByRole('heading', { name: 'There is no page here' }).waitFor();
      await page.getByRole('link', { name: 'All jobs' }).click();
      await page.getByRole('heading', { level: 1, name: 'Jobs' }).waitFor();
    },
  },
  {
    name: 'a server that does not answer is said, and can be tried again',
    run: async ({ page, baseUrl }) => {
      await page.route('**/api/jobs', (route) => route.abort());
      await page.goto(`${baseUrl}/jobs`);
      await page.locator('.trouble p', { hasText: 'does not answer' }).waitFor();
      await page.unroute('**/api/jobs');
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.locator('.ledger.jobs').waitFor();
    },
  },
];
