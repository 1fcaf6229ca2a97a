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
  // the first opening fetches the screen of the pour
  await page.getByRole('button', { name: 'Open the pour' }).first().click({ timeout: 40_000 });
  await page.getByRole('heading', { name: 'Before the first mix' }).waitFor({ timeout: 40_000 });
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

/** The clock of the pour on the screen, s. */
async function seconds(page: Page): Promise<number> {
  const text = (await page.locator('.run-clock').textContent()) ?? '';
  const shown = /(?:\d+:)?\d+:\d\d/.exec(text)?.[0] ?? '';
  return shown.split(':').reduce((sum, part) => 60 * sum + Number(part), 0);
}

/** Before the page: its wall clock can be moved by `shift_ms`, and the screen cannot be kept on, so that the page may have slept. */
function movableClock(): void {
  const now = Date.now.bind(Date);
  Object.assign(window, { shift_ms: 0 });
  Date.now = () => now() + (window as unknown as { shift_ms: number }).shift_ms;
  Object.defineProperty(navigator, 'wakeLock', { value: { request: () => Promise.reject(new Error('no')) } });
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
    run: async ({ page, context, baseUrl, axe }) => {
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
      for (let left = 40; left > 0 && (await done(page).count()) > 0; left--) await doStep(page);
      same(await nowStep(page), 'Nothing more to do: hands off', 'the end');
      await page.getByRole('button', { name: 'Finish the pour' }).click();
      await page.getByRole('heading', { name: 'Planned against actual' }).waitFor();
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
      same(kinds.kinds.filter((kind) => kind === 'finished').length, 1, 'the end on the server');
      await axe(page);
      await page.getByRole('button', { name: 'Put the real start in the job' }).click();
      await page.getByText('The job counts from the real start now').waitFor();
    },
  },
  {
    name: 'two pages and a second phone follow one pour: same steps, same clock',
    run: async ({ page, context, baseUrl, newPage }) => {
      const address = await openPour(page, baseUrl);
      await start(page);
      const beside = await newPage();
      await beside.goto(address);
      await beside.locator('.run-now h2').waitFor();
      await context.setOffline(true);
      const was = await nowStep(page);
      await done(beside).click();
      await page.waitForFunction((old) => document.querySelector('.run-now h2')?.textContent !== old, was);
      same(await nowStep(page), await nowStep(beside), 'the step on both pages of one browser');
      await context.setOffline(false);
      await beside.close();
      await page.getByText('Kept here and with the shop').waitFor();
      const other = await context.browser()!.newContext({ viewport: { width: 390, height: 844 } });
      const phone = await other.newPage();
      await phone.goto(address);
      await phone.locator('.run-now h2').waitFor();
      same(await nowStep(phone), await nowStep(page), 'the step on the second phone');
      const [here, there] = [await seconds(page), await seconds(phone)];
      holds(Math.abs(here - there) <= 3, `the clocks agree: ${here} s and ${there} s`);
      await doStep(phone);
      const next = await nowStep(phone);
      await page.waitForFunction(
        (wanted) => document.querySelector('.run-now h2')?.textContent === wanted,
        next,
      );
      await other.close();
    },
  },
  {
    name: 'the clock of the device is set an hour forward and back: it is asked, and the time of the pour never jumps back',
    run: async ({ page, baseUrl, axe }) => {
      await page.addInitScript(movableClock);
      await openPour(page, baseUrl);
      await start(page);
      await page.evaluate(() => Object.assign(window, { shift_ms: 3_600_000 }));
      await page.getByRole('dialog', { name: 'Did the device sleep?' }).waitFor();
      await axe(page);
      await page.getByRole('button', { name: 'The clock was only set' }).click();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await page.waitForFunction(() =>
        /^\D*\d?\d:\d\d$/.test(document.querySelector('.run-clock')?.textContent ?? ''),
      );
      const before = await seconds(page);
      holds(before < 120, `the hour is taken off again: ${before} s`);
      await page.evaluate(() => Object.assign(window, { shift_ms: 0 }));
      await page.waitForTimeout(2500);
      const after = await seconds(page);
      holds(after > before && after < before + 60, `the time goes on evenly: ${before} s, then ${after} s`);
      same(await page.getByRole('dialog').count(), 0, 'questions after setting it back');
      await page.reload();
      await page.locator('.run-now h2').waitFor();
      holds((await seconds(page)) >= after, 'the time after a reload');
    },
  },
  {
    name: 'the voice speaks each cue once, ahead by the chosen time, and not when it is muted',
    run: async ({ page, baseUrl }) => {
      await page.addInitScript(movableClock);
      await page.addInitScript(() => {
        const said: string[] = [];
        Object.assign(window, { said });
        Object.defineProperty(window, 'speechSynthesis', {
          value: { speak: ({ text }: SpeechSynthesisUtterance) => said.push(text), cancel: () => undefined },
        });
      });
      await openPour(page, baseUrl);
      await start(page);
      const said = () => page.evaluate(() => (window as unknown as { said: string[] }).said);
      const pass = async (until: (list: string[]) => boolean) => {
        for (let i = 0; i < 60 && !until(await said()); i++) {
          await page.evaluate(() => {
            const moved = window as unknown as { shift_ms: number };
            moved.shift_ms += 10_000;
          });
          await page.waitForTimeout(700);
        }
      };
      const due = /^Pour and spread cup 1 in 1 minute\.$/;
      await pass((list) => list.some((text) => due.test(text)));
      same((await said()).filter((text) => due.test(text)).length, 1, 'times it was said');
      await page.locator('.run-written', { hasText: 'in 1 minute' }).waitFor();
      await page.getByRole('button', { name: 'Mute' }).click();
      const before = (await said()).length;
      await page.getByLabel('Voice ahead').selectOption({ label: '2 minutes' });
      await page.locator('.run-written', { hasText: /2 minutes|Time is up|1 minute/ }).waitFor();
      await page.waitForTimeout(1500);
      same((await said()).length, before, 'said while muted');
    },
  },
  {
    name: 'a pour is run with the keyboard alone',
    run: async ({ page, baseUrl }) => {
      await openPour(page, baseUrl);
      const boxes = await page.locator('.run-tick input').count();
      await page.locator('.run-ready input').first().focus();
      await page.keyboard.type('73 F');
      for (let i = 0; i < 2; i++) await page.keyboard.press('Tab');
      for (let i = 0; i < boxes; i++) {
        await page.keyboard.press('Tab');
        await page.keyboard.press('Space');
      }
      await page.getByText('Everything is ticked').waitFor();
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await page.locator('.run-now h2').waitFor();
      await page.waitForFunction(() => document.activeElement?.textContent === 'Done');
      const was = await nowStep(page);
      await page.keyboard.press('Enter');
      await page.waitForFunction((old) => document.querySelector('.run-now h2')?.textContent !== old, was);
      await page.keyboard.press('Tab');
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await page.waitForFunction((old) => document.querySelector('.run-now h2')?.textContent === old, was);
      await page.getByRole('button', { name: 'Something happened' }).focus();
      await page.keyboard.press('Enter');
      await page.getByRole('dialog', { name: 'Something happened' }).waitFor();
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      same(
        await page.evaluate(() => document.activeElement?.textContent),
        'Something happened',
        'where the focus is after the sheet was closed',
      );
    },
  },
  {
    name: 'on a phone, a tablet lying down and a wide screen Done is large, in view, and nothing runs over the side',
    run: async ({ page, baseUrl, axe }) => {
      await openPour(page, baseUrl);
      await start(page);
      for (const [width, height] of [
        [390, 844],
        [1024, 600],
        [1920, 1080],
      ] as const) {
        await page.setViewportSize({ width, height });
        const box = await done(page).boundingBox();
        holds(box !== null && box.height >= 120, `Done is ${box?.height} px high at ${width}`);
        holds(box!.y + box!.height <= height, `Done is in view at ${width}`);
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        same(over, 0, `px over the side at ${width}`);
        const figure = await page.locator('.run-figure').boundingBox();
        holds(figure!.height >= 0.15 * Math.min(width, height), `the figure is ${figure!.height} px high`);
        await axe(page);
      }
    },
  },
];
