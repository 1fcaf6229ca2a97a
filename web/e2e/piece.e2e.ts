import type { Locator, Page } from 'playwright-core';
import type { BrowserTest, E2E } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';
const ELL = '/jobs/0190d000-0000-7000-8000-000000000002';
const ROUND = '/jobs/0190d000-0000-7000-8000-000000000003';

function same<T>(read: T, wanted: T, what: string): void {
  if (JSON.stringify(read) !== JSON.stringify(wanted))
    throw new Error(`${what}: read ${JSON.stringify(read)}, wanted ${JSON.stringify(wanted)}`);
}

/** Nothing is shown paler any more because it is from before. */
const settled = (page: Page) => page.locator('.sheet:not([data-behind])').waitFor();
const saved = (page: Page) => page.locator('.connection', { hasText: 'Saved' }).waitFor();
const panel = (page: Page) => page.locator('.editor-panel');
const field = (page: Page, label: string) => panel(page).getByLabel(label, { exact: true });
const pick = (page: Page, what: string) => page.locator(`[data-pick="${what}"]`);
const button = (page: Page, name: string) =>
  page.locator('.piece-editor').getByRole('button', { name, exact: true });

async function openPiece(page: Page, url: string): Promise<void> {
  await page.goto(url);
  const head = page.locator('#piece-button');
  await head.waitFor();
  if ((await head.getAttribute('aria-expanded')) === 'false') await head.click();
  await page.locator('.piece-editor svg[role=group]').waitFor();
}

async function middle(of: Locator): Promise<{ x: number; y: number }> {
  // Clear of the bars at the top and the bottom of a phone.
  await of.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const box = await of.boundingBox();
  if (box === null) throw new Error('what is taken hold of is not shown');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Px the drawing shows an inch as, from the two corners at the front. */
async function pxPerInch(page: Page, inches: number): Promise<number> {
  const [a, b] = [await middle(pick(page, 'corner 0')), await middle(pick(page, 'corner 1'))];
  return (b.x - a.x) / inches;
}

async function noWider(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  same(over, 0, 'pixels wider than the screen');
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'a corner is dragged on sixteenths, moved by key, typed, added, taken out, and all of it taken back',
    run: async ({ page, baseUrl }) => {
      await openPiece(page, baseUrl + VANITY);
      await page.locator('#f-piece-outline-length').fill('42 in');
      await button(page, 'Edit corners').click();
      await panel(page).getByRole('heading', { name: 'Corner 1' }).waitFor();
      same(await page.locator('[data-pick^="corner"]').count(), 4, 'corners');
      same(
        await page
          .locator('table.edges tbody th')
          .allInnerTexts()
          .then((all) => all.map((t) => t.split('\n')[0])),
        ['edge 1, front', 'edge 2, right', 'edge 3, back', 'edge 4, left'],
        'what the edges are called',
      );
      const scale = await pxPerInch(page, 42);
      const from = await middle(pick(page, 'corner 2'));
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      await page.mouse.move(from.x - 3 * scale - 2, from.y, { steps: 6 });
      const held = await page.locator('.editor-said').textContent();
      same(held?.startsWith('Corner 3: 3'), true, `said while it is held (${held})`);
      await page.mouse.up();
      const x = await field(page, 'From the left').inputValue();
      same(/^3[89](?: \d+\/(?:2|4|8|16))? in$/.test(x), true, `a sixteenth of an inch (${x})`);
      same(await field(page, 'From the front').inputValue(), '21 1/2 in', 'the other way');
      await pick(page, 'corner 2').focus();
      await page.keyboard.press('Shift+ArrowRight');
      await page.keyboard.press('ArrowUp');
      same(await field(page, 'From the front').inputValue(), '21 9/16 in', 'a step by key');
      same(
        await page.evaluate(() => document.activeElement?.getAttribute('data-pick')),
        'corner 2',
        'the focus',
      );
      await field(page, 'From the left').fill('1 m');
      same(
        (await pick(page, 'corner 2').getAttribute('aria-label'))?.includes('39.37'),
        true,
        'a typed metre',
      );
      await field(page, 'Rounded to a radius of').fill('2 in');
      await panel(page).getByRole('button', { name: 'Add a corner between 3 and 4' }).click();
      same(await page.locator('[data-pick^="corner"]').count(), 5, 'corners with one more');
      await pick(page, 'corner 3').focus();
      await page.keyboard.press('Delete');
      same(await page.locator('[data-pick^="corner"]').count(), 4, 'corners with it out again');
      await page.getByText('Corner 4 is gone.').waitFor();
      await page.keyboard.press('Control+z');
      same(await page.locator('[data-pick^="corner"]').count(), 5, 'after undo');
      await page.keyboard.press('Control+Shift+z');
      same(await page.locator('[data-pick^="corner"]').count(), 4, 'after redo');
      for (let i = 0; i < 12 && (await page.locator('[data-pick^="corner"]').count()) > 0; i++)
        await page.keyboard.press('Control+z');
      same(await page.locator('[data-pick^="corner"]').count(), 0, 'corners of the rectangle it was');
      same(await page.locator('#f-piece-outline-length').inputValue(), '42 in', 'its length');
      await saved(page);
    },
  },
  {
    name: 'cut-outs are added, dragged by finger, and told what is left round them',
    run: async ({ page, baseUrl }) => {
      await page.setViewportSize({ width: 390, height: 844 });
      await openPiece(page, baseUrl + VANITY);
      const before = await page.locator('[data-pick^="cut-out"]').count();
      await button(page, 'Oval').click();
      const name = await field(page, 'Name').inputValue();
      same(await page.locator('[data-pick^="cut-out"]').count(), before + 1, 'cut-outs');
      same(await page.locator('.editor-gaps .drawing-figure').count(), 4, 'edge distances');
      same(
        (await panel(page).locator('.editor-left').textContent())?.includes('front'),
        true,
        'in words as well',
      );
      const left = await field(page, 'Centre from the left').inputValue();
      const hole = pick(page, `cut-out ${before}`);
      // A finger makes buttons larger, so the page is measured after.
      const cdp = await page.context().newCDPSession(page);
      await cdp.send('Emulation.setTouchEmulationEnabled', { enabled: true });
      const from = await middle(hole);
      const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x?: number, y?: number) =>
        cdp.send('Input.dispatchTouchEvent', {
          type,
          touchPoints: x === undefined || y === undefined ? [] : [{ x, y }],
        });
      await touch('touchStart', from.x, from.y);
      for (let i = 1; i <= 6; i++) await touch('touchMove', from.x + i * 6, from.y);
      await touch('touchEnd');
      await page.waitForFunction(
        (was) =>
          (document.querySelector('[id^="e-piece-cutOuts"][id$="fromLeft"]') as HTMLInputElement).value !==
          was,
        left,
      );
      await cdp.send('Emulation.setTouchEmulationEnabled', { enabled: false });
      // Against the front edge it says what the shop would not do, and over it that it cannot be.
      await field(page, 'Centre from the front').fill('6 1/2 in');
      await field(page, 'Width').fill('12 in');
      await panel(page).getByText('Little is left between').first().waitFor();
      await field(page, 'Centre from the front').fill('2 in');
      await panel(page).getByText('reaches over the edge').first().waitFor();
      await panel(page)
        .getByRole('button', { name: `Remove ${name}` })
        .click();
      same(await page.locator('[data-pick^="cut-out"]').count(), before, 'cut-outs after it is gone');
      await button(page, 'Tap hole').click();
      await button(page, 'Tap hole').click();
      same(await field(page, 'Name').inputValue(), 'tap hole 2', 'the second tap hole');
      await pick(page, `cut-out ${before}`).focus();
      await page.keyboard.press('ArrowLeft');
      await page.keyboard.press('Delete');
      await pick(page, `cut-out ${before}`).focus();
      await page.keyboard.press('Delete');
      same(await page.locator('[data-pick^="cut-out"]').count(), before, 'cut-outs at the end');
      await saved(page);
    },
  },
  {
    name: 'an edge is opened by key, made a wall, bevelled, and left again',
    run: async ({ page, baseUrl }) => {
      await openPiece(page, baseUrl + VANITY);
      const right = pick(page, 'edge right');
      const was = await page.locator('#f-piece-edges-1-kind').inputValue();
      await right.focus();
      await page.keyboard.press('Enter');
      await panel(page).getByRole('heading', { name: 'Right edge' }).waitFor();
      same(
        await page.evaluate(() => document.activeElement?.id),
        'e-piece-edges-1-kind',
        'the focus in the panel',
      );
      await field(page, 'Kind of edge').selectOption('wall');
      same(await page.locator('#f-piece-edges-1-kind').inputValue(), 'wall', 'the table');
      same((await right.getAttribute('aria-label'))?.includes('wall'), true, 'the drawing');
      await field(page, 'Kind of edge').selectOption('finished');
      await field(page, 'Profile').selectOption('bevel');
      await field(page, 'Arris: leg').fill('1/4 in');
      await field(page, 'Face height').fill('1 in');
      await field(page, 'Carried under').fill('3/4 in');
      same(await page.locator('#f-piece-edges-1-undersideReturn').inputValue(), '3/4 in', 'under the top');
      const depth = field(page, 'Corner to corner');
      await depth.fill('soon');
      await depth.press('Enter');
      await panel(page).getByText('soon').first().waitFor();
      await depth.fill('400 mm');
      await depth.press('Enter');
      same(await page.locator('#f-piece-outline-width').inputValue(), '400 mm', 'the depth of the piece');
      await depth.press('Escape');
      same(
        await page.evaluate(() => document.activeElement?.getAttribute('data-pick')),
        'edge right',
        'the focus after',
      );
      while ((await page.locator('#f-piece-edges-1-profile').inputValue()) === 'bevel')
        await page.keyboard.press('Control+z');
      same(
        ['finished', was, 'wall'].includes(await page.locator('#f-piece-edges-1-kind').inputValue()),
        true,
        'back',
      );
      await saved(page);
    },
  },
  {
    name: 'a side bows; a rounded corner beside it is refused with the reason',
    run: async ({ page, baseUrl }) => {
      await openPiece(page, baseUrl + VANITY);
      await page.locator('#f-piece-outline-cornerRadius').fill('');
      await button(page, 'Edit corners').click();
      await pick(page, 'edge edge 1').focus();
      await page.keyboard.press('Enter');
      await panel(page).getByRole('heading', { name: 'Edge 1, front' }).waitFor();
      await field(page, 'Bow, outwards (minus: inwards)').fill('2 in');
      await page.waitForFunction(() =>
        document.querySelector('.drawing-body')?.getAttribute('d')?.includes('A'),
      );
      await pick(page, 'corner 1').click();
      await panel(page).getByText('stays sharp').waitFor();
      await field(page, 'Rounded to a radius of').fill('1 in');
      await panel(page).getByText('cannot be rounded as well').first().waitFor();
      await page.getByText('The drawing shows the last sizes that could be read.').waitFor();
      await field(page, 'Rounded to a radius of').fill('');
      await page
        .locator('.piece-editor .section-note', { hasText: 'last sizes' })
        .waitFor({ state: 'detached' });
      for (let i = 0; i < 8 && (await page.locator('[data-pick^="corner"]').count()) > 0; i++)
        await page.keyboard.press('Control+z');
      await saved(page);
    },
  },
  {
    name: 'in metric a cut-out goes a millimetre a step, a tenth when it is held finely',
    run: async ({ page, baseUrl }) => {
      await openPiece(page, baseUrl + VANITY);
      await page.locator('.system-switch label', { hasText: 'Metric' }).click();
      await page.locator('.system-switch label[data-selected]', { hasText: 'Metric' }).waitFor();
      const hole = pick(page, 'cut-out 0');
      await hole.focus();
      await page.keyboard.press('ArrowRight');
      same(
        /^\d+ mm$/.test(await field(page, 'Centre from the left').inputValue()),
        true,
        'whole millimetres',
      );
      await page.getByLabel('Moves in steps of').selectOption('fine');
      await hole.focus();
      await page.keyboard.press('ArrowRight');
      same(/^\d+\.1 mm$/.test(await field(page, 'Centre from the left').inputValue()), true, 'and a tenth');
      await page.keyboard.press('Control+z');
      await page.locator('.system-switch label', { hasText: 'US' }).click();
      await page.locator('.system-switch label[data-selected]', { hasText: 'US' }).waitFor();
      await page.keyboard.press('Control+z');
      await saved(page);
    },
  },
  {
    name: 'splashes are boards of the job, as long as their side, and come back after undo',
    run: async ({ page, baseUrl }) => {
      await openPiece(page, baseUrl + ELL);
      const table = page.locator('table.splashes');
      await page.getByRole('button', { name: 'Add a right side splash' }).click();
      await table.getByText('66 in x 4 in').waitFor();
      await page.getByRole('button', { name: 'Add a backsplash' }).click();
      await table.getByText('65 1/4 in x 4 in').waitFor();
      same(await page.locator('.piece-editor .drawing-splash').count(), 2, 'strips on the drawing');
      await page
        .locator('.piece-editor .drawing-legend')
        .getByText('stands on the top: right side splash, 4 in high; backsplash, 4 in high')
        .waitFor();
      if (process.env.SHOTS)
        for (const width of [390, 1024, 1920]) {
          await page.setViewportSize({ width, height: 900 });
          await page
            .locator('.piece-editor')
            .screenshot({ path: `${process.env.SHOTS}/splashes-${width}.png` });
        }
      await page.setViewportSize({ width: 1280, height: 900 });
      await page.getByLabel('backsplash: height').fill('6 in');
      await table.getByText('84 in x 6 in').waitFor();
      await page.getByRole('button', { name: 'Remove backsplash' }).click();
      await table.getByText('66 in x 4 in').waitFor();
      await page.keyboard.press('Control+z');
      await table.getByText('84 in x 6 in').waitFor();
      // The corners of the L keep the splash as long as the wall it stands at.
      await button(page, 'Edit corners').click();
      await table.getByText('65 1/4 in x 4 in').waitFor();
      while ((await table.count()) > 0) await page.keyboard.press('Control+z');
      await openPiece(page, baseUrl + ROUND);
      same(
        await page.getByRole('button', { name: 'Add a backsplash' }).count(),
        0,
        'splashes of a round table',
      );
      await saved(page);
    },
  },
  ...(
    [
      [390, 844],
      [1024, 768],
      [1920, 1080],
    ] as const
  ).map(
    ([width, height]): BrowserTest => ({
      name: `the editor has no barrier axe can find ${width} px wide, and is no wider than that`,
      run: async (t: E2E) => {
        const { page, baseUrl, axe } = t;
        await page.setViewportSize({ width, height });
        await openPiece(page, baseUrl + ELL);
        await noWider(page);
        await pick(page, 'cut-out 0').focus();
        await page.keyboard.press('Enter');
        await panel(page).waitFor();
        await settled(page);
        await axe(page);
        await button(page, 'Edit corners').click();
        await pick(page, 'corner 1').focus();
        await page.keyboard.press('Enter');
        await settled(page);
        await axe(page);
        await noWider(page);
        await page.keyboard.press('Control+z');
        await saved(page);
      },
    }),
  ),
];
