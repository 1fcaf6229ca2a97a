import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import type { BrowserTest, E2E } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';
const SIZES = [
  { width: 390, height: 844 },
  { width: 1024, height: 768 },
  { width: 1920, height: 1080 },
];

function need(holds: boolean, what: string): void {
  if (!holds) throw new Error(what);
}

const saved = (page: Page) => page.locator('.connection', { hasText: 'Saved' }).waitFor();

/** Opens one folded part under the piece and answers with it. */
async function fold(page: Page, baseUrl: string, id: string): Promise<Locator> {
  await page.goto(baseUrl + VANITY);
  const section = page.locator('#piece-button');
  await section.waitFor();
  if ((await section.getAttribute('aria-expanded')) === 'false') await section.click();
  const part = page.locator(`#piece-${id}`);
  const button = part.locator('.fold-head button');
  await button.waitFor();
  if ((await button.getAttribute('aria-expanded')) === 'false') await button.click();
  return part;
}

/** No finding of axe and nothing wider than the page at three widths; `shots` names pictures to keep when SHOTS is set. */
async function looksRight({ page, axe }: E2E, part: Locator, name: string): Promise<void> {
  for (const size of SIZES) {
    await page.setViewportSize(size);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    need(over <= 1, `${name} at ${size.width}: ${over} px wider than the page`);
    // At the top the header that stays in view covers nothing.
    await page.evaluate(() => scrollTo(0, 0));
    await axe(page);
    if (process.env.SHOTS) await part.screenshot({ path: `${process.env.SHOTS}/${name}-${size.width}.png` });
  }
  await page.setViewportSize({ width: 1280, height: 900 });
}

async function download(page: Page, press: () => Promise<void>): Promise<{ name: string; bytes: Buffer }> {
  const [file] = await Promise.all([page.waitForEvent('download'), press()]);
  return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
}

const give = (part: Locator, name: string, text: string) =>
  part
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType: 'image/vnd.dxf', buffer: Buffer.from(text) });

export const tests: readonly BrowserTest[] = [
  {
    name: 'tape readings: a bad text and a bad reading are told, the outline is used and undone',
    run: async (t) => {
      const { page, baseUrl } = t;
      const part = await fold(page, baseUrl, 'survey');
      await part.getByRole('button', { name: 'Start with four corners' }).click();
      const typed = part.locator('.survey-readings input');
      await typed.first().fill('48 parsecs');
      await typed.first().blur();
      await part.getByText('parsecs').first().waitFor();
      await part.getByText('Allowed:').first().waitFor();
      const right = ['48 in', '22 in', '48 in', '22 in', '52 13/16 in', '55 in'];
      for (const [i, text] of right.entries()) await typed.nth(i).fill(text);
      await part
        .locator('.survey-verdict')
        .getByText(/do not agree|does not fit/)
        .waitFor();
      await looksRight(t, part, 'survey');
      await typed.nth(5).fill('52 13/16 in');
      await part.locator('.survey-verdict').getByText('The readings agree').waitFor();
      await part.getByRole('button', { name: 'Use this outline' }).click();
      await page.locator('#piece .part-summary').first().getByText('48 in x 22 in').waitFor();
      await page.getByRole('button', { name: 'Undo' }).first().click();
      await page.locator('#piece .part-summary').first().getByText('42 in x 21 1/2 in').waitFor();
      await saved(page);
    },
  },
  {
    name: 'drawing files: out, in again, and a hostile one is refused with the reason',
    run: async (t) => {
      const { page, baseUrl } = t;
      const part = await fold(page, baseUrl, 'files');
      const dxf = await download(page, () => part.getByRole('button', { name: 'Save as DXF 2000' }).click());
      need(dxf.name.endsWith('.dxf') && dxf.bytes.includes('ENTITIES'), `no drawing in ${dxf.name}`);
      await give(
        part,
        'bomb.dxf',
        `0\nSECTION\n2\nENTITIES\n${'0\nLINE\n10\nNaN\n'.repeat(4)}0\nENDSEC\n0\nEOF\n`,
      );
      await part.locator('[role=alert]').waitFor();
      await looksRight(t, part, 'files-refused');
      await give(part, dxf.name, dxf.bytes.toString());
      await part.getByRole('button', { name: 'Use it', exact: true }).click();
      await part.getByText('come from the drawing').waitFor();
      await page.locator('#piece .part-summary').first().getByText('42 in x 21 1/2 in').waitFor();
      await looksRight(t, part, 'files');
      await page.getByRole('button', { name: 'Undo' }).first().click();
      await saved(page);
    },
  },
  {
    name: 'both sheets for the shop come as PDF',
    run: async (t) => {
      const { page, baseUrl } = t;
      const part = await fold(page, baseUrl, 'set-out');
      await saved(page);
      for (const name of ['Set-out sheet (PDF)', 'True-scale template (PDF)']) {
        const file = await download(page, () => part.getByRole('button', { name }).click());
        need(file.bytes.subarray(0, 5).toString() === '%PDF-', `${file.name} is no PDF`);
      }
      await looksRight(t, part, 'set-out');
    },
  },
  {
    name: 'the body: parts, weight, cuts; a wrong figure is told; offcuts go on the shelf and come off again',
    run: async (t) => {
      const { page, baseUrl } = t;
      const part = await fold(page, baseUrl, 'build');
      await part.locator('.cutting-sheet').first().waitFor();
      await part.getByText('Sheets, saw and offcuts').click();
      const kerf = part.getByLabel('Saw cut (kerf)');
      await kerf.fill('2 in');
      await kerf.blur();
      await part.getByText('Allowed:').first().waitFor();
      await kerf.fill('1/8 in');
      await part.locator('.cutting-sheet').first().waitFor();
      await part.getByText('How it is built').click();
      await part.getByLabel(/Check knee clearance/).check();
      await part.getByLabel('Floor to the higher of rim and top').fill('34 in');
      await part.getByText('Not legal advice').first().waitFor();
      await looksRight(t, part, 'body');
      await part.getByRole('button', { name: 'Cut as planned' }).click();
      await part.getByRole('button', { name: 'Undo the cut' }).waitFor();
      const offcuts = part.locator('.offcuts li');
      await offcuts.first().waitFor();
      await looksRight(t, part, 'body-cut');
      await part.getByRole('button', { name: 'Undo the cut' }).click();
      await part.getByRole('button', { name: 'Cut as planned' }).waitFor();
      await offcuts.first().waitFor({ state: 'detached' });
      await saved(page);
    },
  },
];
