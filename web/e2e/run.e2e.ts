import type { Page } from 'playwright-core';
import type { BrowserTest } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';

function same<T>(read: T, wanted: T, what: string): void {
  if (JSON.stringify(read) !== JSON.stringify(wanted))
    throw new Error(`${what}: read ${JSON.stringify(read)}, wanted ${JSON.stringify(wanted)}`);
}

function holds(truth: boolean, what: string): void {
  if (!truth) throw new Error(what);
}

/** Opens the pour of the first planned coat from the job's sheet; answers with its address. */
async function openPour(page: Page, baseUrl: string): Promise<string> {
  await page.goto(baseUrl + VANITY);
  const head = page.locator('#steps-button');
  await head.waitFor();
  if ((await head.getAttribute('aria-expanded')) === 'false') await head.click();
  await page.getByRole('button', { name: 'Open the pour' }).first().click();
  await page.getByRole('heading', { name: 'Before the first mix' }).waitFor();
  return page.url();
}

async function tickAll(page: Page): Promise<void> {
  for (const box of await page.locator('.run-tick input').all()) await box.check();
}

async function start(page: Page): Promise<void> {
  await tickAll(page);
  await page.getByRole('button', { name: 'Parts meet' }).click();
  await page.locator('.run-now h2').waitFor();
}

const done = (page: Page) => page.getByRole('button', { name: 'Done', exact: true });
const nowStep = (page: Page) => page.locator('.run-now h2').textContent();

/** Presses Done and waits until another step stands there. */
async function doStep(page: Page): Promise<void> {
  const was = await nowStep(page);
  await done(page).click();
  await page.waitForFunction((old) => document.querySelector('.run-now h2')?.textContent !== old, was);
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'a pour does not start before every hold point is ticked',
    run: async ({ page, baseUrl, axe }) => {
      await openPour(page, baseUrl);
      const begin = page.getByRole('button', { name: 'Parts meet' });
      same(await begin.isDisabled(), true, 'the start before anything is ticked');
      await axe(page);
      await tickAll(page);
      same(await begin.isDisabled(), false, 'the start when all is ticked');
      await page.reload();
      await page.getByText('Everything is ticked').waitFor();
      await begin.click();
      await page.locator('.run-now h2').waitFor();
      await axe(page);
    },
  },
  {
    name: 'what happened is answered while it is typed, and a reading moves the windows',
    run: async ({ page, baseUrl, axe }) => {
      await openPour(page, baseUrl);
      await start(page);
      await page.getByRole('button', { name: 'Something happened' }).click();
      await page.getByRole('button', { name: 'Resin was spilt' }).click();
      await page.getByText('How much is missing?').waitFor();
      await page.getByLabel('How much is missing').fill('400 g');
      await page.getByText(/Mix another cup of .* it takes .* and leaves/).waitFor();
      await page.getByRole('row', { name: 'Part A' }).waitFor();
      await axe(page);
      await page.getByRole('button', { name: 'Note it' }).click();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      const slack = page.locator('.run-slack p');
      const before = await slack.textContent();
      await page.getByRole('button', { name: 'Reading' }).click();
      await page.getByLabel('Temperature').fill('95 F');
      await axe(page);
      await page.getByRole('button', { name: 'Move every window' }).click();
      await page.waitForFunction(
        (old) => document.querySelector('.run-slack p')?.textContent?.slice(0, 22) !== old?.slice(0, 22),
        before,
      );
      await page.getByRole('button', { name: 'Undo' }).click();
      await doStep(page);
      holds((await nowStep(page)) !== null, 'a step stands there');
    },
  },
  {
    name: 'a whole pour with the network cut in the middle and a reload without it; all of it arrives afterwards',
    run: async ({ page, context, baseUrl }) => {
      const address = await openPour(page, baseUrl);
      await page.getByText('The app is kept on this device').waitFor({ timeout: 45_000 });
      await start(page);
      await doStep(page);
      await page.getByText('Kept here and with the shop').waitFor();
      await context.setOffline(true);
      await doStep(page);
      await page.getByText('Offline, kept here').waitFor();
      const step = await nowStep(page);
      await page.reload();
      await page.locator('.run-now h2').waitFor();
      same(await nowStep(page), step, 'the step after a reload without a network');
      await page.getByText('Offline, kept here').waitFor();
      for (let left = 40; left > 0 && !(await done(page).isDisabled()); left--) await doStep(page);
      same(await nowStep(page), 'Nothing more to do: hands off', 'the end');
      const run = address.split('/').at(-1);
      await context.setOffline(false);
      await page.getByText('Kept here and with the shop').waitFor();
      const kinds = await page.evaluate(async (id) => {
        const answer = await fetch(`/api/runs/${id}/events`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify({ after: 0, now_ms: Date.now(), events: [] }),
        });
        const { events } = (await answer.json()) as { events: { event: { id: string; kind: string } }[] };
        return {
          kinds: events.map(({ event }) => event.kind),
          ids: new Set(events.map(({ event }) => event.id)).size,
        };
      }, run);
      same(kinds.ids, kinds.kinds.length, 'events on the server, each once');
      holds(kinds.kinds.filter((kind) => kind === 'done').length >= 8, 'every step done is on the server');
    },
  },
];
