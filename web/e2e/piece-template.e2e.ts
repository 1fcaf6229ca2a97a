import type { Page } from 'playwright-core';
import type { BrowserTest } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';
const SIZES = [
  { width: 390, height: 844 },
  { width: 1024, height: 768 },
  { width: 1920, height: 1080 },
];

function same<T>(read: T, wanted: T, what: string): void {
  if (JSON.stringify(read) !== JSON.stringify(wanted))
    throw new Error(`${what}: read ${JSON.stringify(read)}, wanted ${JSON.stringify(wanted)}`);
}

const saved = (page: Page) => page.locator('.connection', { hasText: 'Saved' }).waitFor();
const panel = (page: Page) => page.locator('.editor-panel');
const field = (page: Page, label: string) => panel(page).getByLabel(label, { exact: true });
const holes = (page: Page) => page.locator('[data-pick^="cut-out"]');

/** A closed line in mm, 280 by 200, one corner cut off and a bowed front. */
function oddOutline(): string {
  const corners = [
    [0, 0, 0.25],
    [280, 0, 0],
    [280, 140, 0],
    [220, 200, 0],
    [0, 200, 0],
  ];
  const vertices = corners.flatMap(([x, y, bulge]) => [10, x, 20, y, 42, bulge]);
  const tags = [0, 'LWPOLYLINE', 8, '0', 90, corners.length, 70, 1, ...vertices];
  const head = [0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, 4, 0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES'];
  return [...head, ...tags, 0, 'ENDSEC', 0, 'EOF', ''].join('\n');
}

async function openPiece(page: Page, url: string): Promise<void> {
  await page.goto(url);
  const head = page.locator('#piece-button');
  await head.waitFor();
  if ((await head.getAttribute('aria-expanded')) === 'false') await head.click();
  await page.locator('.piece-editor svg[role=group]').waitFor();
}

const give = (page: Page, name: string, text: string) =>
  panel(page)
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType: 'image/vnd.dxf', buffer: Buffer.from(text) });

/** Wide and high of the hole as it is drawn, px. */
async function drawnBox(
  page: Page,
  index: number,
): Promise<{ width: number; height: number; x: number; y: number }> {
  const hole = page.locator(`[data-pick="cut-out ${index}"] .drawing-hole`);
  await hole.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const box = await hole.boundingBox();
  if (box === null) throw new Error('the hole is not shown');
  return box;
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'a sink template comes in as a cut-out, is dragged, moved by key, typed, turned, and taken out',
    run: async ({ page, baseUrl, axe }) => {
      await openPiece(page, baseUrl + VANITY);
      const before = await holes(page).count();
      await page.locator('.piece-editor').getByRole('button', { name: 'Sink template', exact: true }).click();
      await panel(page).getByRole('heading', { name: 'Sink template' }).waitFor();
      await give(page, 'sink.dxf', '0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n');
      await panel(page).locator('[role=alert]').waitFor();
      await give(page, 'sink.dxf', oddOutline());
      await panel(page).locator('.import-preview').waitFor();
      for (const size of SIZES) {
        await page.setViewportSize(size);
        await axe(page);
        if (process.env.SHOTS)
          await page
            .locator('.piece-editor')
            .screenshot({ path: `${process.env.SHOTS}/template-read-${size.width}.png` });
      }
      await page.setViewportSize({ width: 1280, height: 900 });
      same(
        await panel(page).getByRole('button', { name: 'Use it', exact: true }).count(),
        0,
        'as an outline',
      );
      await panel(page).getByRole('button', { name: 'Use it as a cut-out' }).click();
      await panel(page).getByRole('heading', { name: 'sink' }).waitFor();
      same(await holes(page).count(), before + 1, 'cut-outs');
      await panel(page).getByText('its shape as in the drawing it came from').waitFor();

      const left = await field(page, 'Centre from the left').inputValue();
      const at = await drawnBox(page, before);
      await page.mouse.move(at.x + at.width / 2, at.y + at.height / 2);
      await page.mouse.down();
      await page.mouse.move(at.x + at.width / 2 + 30, at.y + at.height / 2, { steps: 5 });
      await page.mouse.up();
      const dragged = await field(page, 'Centre from the left').inputValue();
      same(dragged === left, false, `dragged from ${left} to ${dragged}`);
      await page.locator(`[data-pick="cut-out ${before}"]`).focus();
      await page.keyboard.press('Shift+ArrowLeft');
      same((await field(page, 'Centre from the left').inputValue()) === dragged, false, 'a step by key');
      await field(page, 'Centre from the left').fill('14 in');
      await field(page, 'Centre from the front').fill('10 in');

      const lying = await drawnBox(page, before);
      same(lying.width > lying.height, true, 'lies along the front');
      await panel(page).getByRole('button', { name: 'Turn left by 90 degrees' }).click();
      same(await field(page, 'Turned left, degrees').inputValue(), '90 degrees', 'its turn');
      const across = await drawnBox(page, before);
      same(across.height > across.width, true, 'stands across after a quarter turn');
      await field(page, 'Turned left, degrees').fill('soon');
      await field(page, 'Turned left, degrees').blur();
      await panel(page).getByText('soon').first().waitFor();
      await field(page, 'Turned left, degrees').fill('15');
      await page.locator(`[data-pick="cut-out ${before}"][aria-label*="turned 15 degrees"]`).waitFor();
      for (const size of SIZES) {
        await page.setViewportSize(size);
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        same(over <= 1, true, `no wider than ${size.width} px (${over})`);
        await axe(page);
        if (process.env.SHOTS)
          await page
            .locator('#piece')
            .screenshot({ path: `${process.env.SHOTS}/template-${size.width}.png` });
      }
      await page.setViewportSize({ width: 1280, height: 900 });
      await panel(page).getByRole('button', { name: 'Remove sink' }).click();
      same(await holes(page).count(), before, 'cut-outs at the end');
      await page.keyboard.press('Control+z');
      same(await holes(page).count(), before + 1, 'after undo');
      await page.keyboard.press('Control+Shift+z');
      await saved(page);
    },
  },
];
