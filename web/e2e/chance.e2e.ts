import type { Page } from 'playwright-core';
import type { BrowserTest } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';

async function openForecast(page: Page, baseUrl: string) {
  await page.goto(baseUrl + VANITY);
  const section = page.locator('#forecast-button');
  await section.waitFor();
  if ((await section.getAttribute('aria-expanded')) === 'false') await section.click();
  const chance = page.locator('.chance').first();
  await chance.locator('.chance-says').waitFor({ timeout: 60_000 });
  return chance;
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'chance: the sheet says how many of a hundred pours are in time, what breaks, what helps, and what it assumes',
    run: async ({ page, baseUrl }) => {
      const chance = await openForecast(page, baseUrl);
      const said = (await chance.textContent()) ?? '';
      if (!/in 100/.test(said)) throw new Error(`no chance told: ${said}`);
      const more = chance.getByRole('button', { name: 'What would make it surer?' });
      if (await more.isVisible()) await more.click();
      const ways = chance.getByRole('table', { name: /the best chance first/ });
      await ways.waitFor({ timeout: 80_000 });
      const shares = (await ways.locator('td[data-label="Chance then"]').allTextContents()).map((text) =>
        /more than 99/.test(text)
          ? 100
          : /fewer than 1/.test(text)
            ? 0
            : Number(/about (\d+)/.exec(text)?.[1]),
      );
      if (shares.length < 2 || shares.some((share, i) => i > 0 && share > shares[i - 1]!))
        throw new Error(`not ranked by chance: ${shares.join()}`);
      await chance.getByText('What this chance assumes').click();
      await chance.getByText('shop default: common practice, no source').first().waitFor();
    },
  },
  {
    name: 'chance: spreads and time zone are set for the shop, kept, and used by the sheet',
    run: async ({ page, baseUrl }) => {
      await page.goto(`${baseUrl}/shop`);
      const meld = page.getByLabel('Melding: really takes, in times as planned');
      await meld.fill('12');
      await meld.press('Enter');
      await page.getByText('0.1 to 10 times as planned').waitFor();
      await meld.fill('1.4');
      await meld.press('Enter');
      await page.getByLabel('Time zone').selectOption('America/Chicago');
      await page.waitForTimeout(800);
      await page.reload();
      if ((await meld.inputValue()) !== '1.4') throw new Error('the spread was not kept');
      const chance = await openForecast(page, baseUrl);
      await chance.getByText('What this chance assumes').click();
      await chance.getByText('typed in by the shop').waitFor();
    },
  },
  {
    name: 'chance: the calendar of a pour is a file a phone can take',
    run: async ({ page, baseUrl }) => {
      await openForecast(page, baseUrl);
      const link = page.getByRole('link', { name: /Calendar of this pour/ }).first();
      await link.waitFor();
      const answer = await page.request.get(new URL((await link.getAttribute('href'))!, baseUrl).href);
      const text = await answer.text();
      if (!text.startsWith('BEGIN:VCALENDAR') || !text.includes('DTSTART:'))
        throw new Error(`no calendar: ${answer.status()} ${text.slice(0, 200)}`);
    },
  },
];
