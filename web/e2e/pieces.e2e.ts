import type { Page } from 'playwright-core';
import type { BrowserTest } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';

async function openPieces(page: Page, baseUrl: string) {
  await page.goto(baseUrl + VANITY);
  await open(page, 'piece');
  return page.getByRole('region', { name: 'Pieces of this job' });
}

async function open(page: Page, section: string) {
  const head = page.locator(`#${section}-button`);
  await head.waitFor();
  if ((await head.getAttribute('aria-expanded')) === 'false') await head.click();
}

/** A shelf of its own beside the vanity top, its sizes typed. */
async function addShelf(page: Page, baseUrl: string) {
  const pieces = await openPieces(page, baseUrl);
  if ((await pieces.getByRole('button', { name: 'shelf', exact: true }).count()) > 0) {
    await pieces.getByRole('button', { name: 'shelf', exact: true }).click();
    return pieces;
  }
  await pieces.getByRole('button', { name: '+ Add a piece' }).click();
  await pieces.getByLabel('Name of this piece').fill('shelf');
  await page.locator('#f-otherPieces-0-outline-shape').selectOption('rectangle');
  await page.locator('#f-otherPieces-0-outline-length').fill('36 in');
  await page.locator('#f-otherPieces-0-outline-width').fill('10 in');
  await page.locator('#f-otherPieces-0-bodyThickness').fill('1 in');
  await pieces.getByText('Together:', { exact: false }).waitFor();
  await page.locator('#piece-button').getByText('shelf 36 in x 10 in', { exact: false }).waitFor();
  return pieces;
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'pieces: a shelf is added, named and measured; the coats take it with the top',
    run: async ({ page, baseUrl }) => {
      await addShelf(page, baseUrl);
      await page.locator('#piece-body dl.figures').getByText('2.5 sq ft', { exact: false }).waitFor();
      await open(page, 'coats');
      const on = page.getByRole('group', { name: 'Poured on' }).first();
      const shelf = on.getByRole('checkbox', { name: 'shelf' });
      await shelf.waitFor();
      if (!(await shelf.isChecked())) throw new Error('a new piece is coated with the rest');
      const mix = page.locator('#mix-button .part-summary');
      const before = (await mix.textContent()) ?? '';
      await shelf.uncheck();
      await page.waitForFunction(
        (text) => document.querySelector('#mix-button .part-summary')?.textContent !== text,
        before,
      );
      // The last piece of a coat cannot be taken from it.
      if (await on.getByRole('checkbox', { name: 'piece 1' }).isEnabled())
        throw new Error('a coat is poured on something');
      await shelf.check();
    },
  },
  {
    name: 'pieces: a copy is made and removed, and undo brings it back',
    run: async ({ page, baseUrl }) => {
      const pieces = await addShelf(page, baseUrl);
      await pieces.getByRole('button', { name: 'Duplicate shelf' }).click();
      const copy = pieces.getByRole('button', { name: 'shelf copy', exact: true });
      await copy.waitFor();
      if ((await copy.getAttribute('aria-pressed')) !== 'true') throw new Error('the copy is chosen');
      await pieces.getByRole('button', { name: 'Remove shelf copy' }).click();
      await copy.waitFor({ state: 'detached' });
      await page.getByRole('button', { name: /^Undo/ }).first().click();
      await copy.waitFor();
      await copy.click();
      await pieces.getByRole('button', { name: 'Remove shelf copy' }).click();
      await copy.waitFor({ state: 'detached' });
    },
  },
  {
    name: 'pieces: what cannot be read is said at the piece it stands in',
    run: async ({ page, baseUrl }) => {
      const pieces = await addShelf(page, baseUrl);
      const thickness = page.locator('#f-otherPieces-0-bodyThickness');
      await thickness.fill('thick');
      await thickness.blur();
      await pieces.getByRole('button', { name: /^shelf\b.*1 to mend$/ }).waitFor();
      await thickness.fill('1 in');
      await thickness.blur();
      await pieces.getByRole('button', { name: 'shelf', exact: true }).waitFor();
    },
  },
  ...[390, 1024, 1920].map(
    (width): BrowserTest => ({
      name: `pieces: chooser, coats and film fit ${width} px and pass axe`,
      run: async ({ newPage, baseUrl, axe }) => {
        const page = await newPage({ width, height: 900 });
        const pieces = await addShelf(page, baseUrl);
        await open(page, 'coats');
        await open(page, 'forecast');
        await page.getByLabel('looked at on', { exact: false }).first().selectOption({ label: 'shelf' });
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        if (wide > 0) throw new Error(`${wide} px wider than the page`);
        await pieces.scrollIntoViewIfNeeded();
        await axe(page);
      },
    }),
  ),
  {
    name: 'the cut list cuts the parts of all pieces out of the same sheets, and puts the offcuts on the shelf',
    run: async ({ page, baseUrl, axe }) => {
      const pieces = await openPieces(page, baseUrl);
      await pieces
        .getByRole('button', { name: /^Duplicate / })
        .first()
        .click();
      const list = page.locator('#cut-list');
      const head = list.locator('.fold-head button');
      await head.waitFor();
      if ((await head.getAttribute('aria-expanded')) === 'false') await head.click();
      await list.getByText('of all pieces together').waitFor();
      await list.locator('.cutting-sheet').first().waitFor();
      const words = (await list.locator('.cutting-sheet svg').first().getAttribute('aria-label')) ?? '';
      const fields = words.match(/: field/g) ?? [];
      if (fields.length < 2) throw new Error(`one sheet holds the fields of two pieces: ${words}`);
      for (const width of [390, 1024, 1920]) {
        await page.setViewportSize({ width, height: 900 });
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        if (over > 1) throw new Error(`the cut list is ${over} px wider than ${width} px`);
        await page.evaluate(() => scrollTo(0, 0));
        await axe(page);
        if (process.env.SHOTS) await list.screenshot({ path: `${process.env.SHOTS}/cut-list-${width}.png` });
      }
      await page.setViewportSize({ width: 1280, height: 900 });
      await page.locator('.connection', { hasText: 'Saved' }).waitFor();
      const cut = list.getByRole('button', { name: 'Cut as planned' });
      if (await cut.isEnabled()) {
        await cut.click();
        await list.getByRole('button', { name: 'Undo the cut' }).click();
        await cut.waitFor();
      }
    },
  },
];
