import type { Locator, Page } from 'playwright-core';
import type { BrowserTest, E2E } from '../../scripts/e2e-types.ts';

const VANITY = '/jobs/0190d000-0000-7000-8000-000000000001';

/** The thickness map of the first coat, not yet drawn. */
async function openMap(page: Page, baseUrl: string): Promise<Locator> {
  await page.goto(baseUrl + VANITY);
  const section = page.locator('#forecast-button');
  await section.waitFor();
  if ((await section.getAttribute('aria-expanded')) === 'false') await section.click();
  await page.locator('.film-part').first().locator('h4 button').click();
  const map = page.locator('.film-map').first();
  await map.waitFor();
  return map;
}

async function drawn(map: Locator): Promise<void> {
  await map.getByText('The map is drawn.').waitFor();
}

async function drawPuddles(page: Page, baseUrl: string): Promise<Locator> {
  const map = await openMap(page, baseUrl);
  await map.getByLabel('Start from').selectOption('puddles');
  await map.getByRole('button', { name: 'Draw the thickness map' }).click();
  await drawn(map);
  return map;
}

async function words(map: Locator): Promise<string> {
  return (await map.locator('.film-map-says').textContent()) ?? '';
}

/** Waits until the map says something else than before, and answers it. */
async function wordsOtherThan(map: Locator, before: string): Promise<string> {
  for (let waited = 0; waited < 15_000; waited += 100) {
    const now = await words(map);
    if (now !== before) return now;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`the map still says: ${before}`);
}

/** Different tones on a canvas: 1 when it is empty. */
function tones(canvas: Locator): Promise<number> {
  return canvas.evaluate((element) => {
    const { width, height } = element as HTMLCanvasElement;
    const data = (element as HTMLCanvasElement).getContext('2d')!.getImageData(0, 0, width, height).data;
    const seen = new Set<number>();
    for (let i = 0; i < data.length; i += 4 * 97)
      seen.add((data[i]! << 16) | (data[i + 1]! << 8) | data[i + 2]!);
    return seen.size;
  });
}

function expectText(text: string, part: RegExp, what: string): void {
  if (!part.test(text)) throw new Error(`${what}: ${JSON.stringify(text)} has no ${part}`);
}

async function noSidewaysScroll(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  if (over > 0) throw new Error(`${over} px wider than the screen`);
}

async function drawsUnderTheContentPolicy({ page, baseUrl }: E2E): Promise<void> {
  const refused: string[] = [];
  page.on('console', (message) => {
    if (/content security policy/i.test(message.text())) refused.push(message.text());
  });
  const answer = await page.goto(baseUrl + VANITY);
  expectText(answer?.headers()['content-security-policy'] ?? '', /default-src|script-src/, 'policy');
  const map = await drawPuddles(page, baseUrl);
  if ((await tones(map.locator('canvas'))) < 50) throw new Error('no picture on the canvas');
  const said = await words(map);
  expectText(said, /Thinnest [\d.]+ mil, .* from the left and .* from the front\./, 'words');
  const least = /Thinnest ([\d.]+ mil)/.exec(said)![1]!;
  await map.locator('.film-map-stage .film-map-thinnest').waitFor();
  await map.locator('.film-map-stage').getByText(`thinnest ${least}`).waitFor();
  const scale = map.locator('.film-map-legend');
  await scale.getByText(`thinnest ${least}`).waitFor();
  expectText((await scale.getAttribute('aria-label')) ?? '', /Lines at .* mil/, 'scale');
  const films = map.locator('.film-map-films');
  expectText(
    (await films.locator('tr', { hasText: 'Thinnest' }).first().textContent()) ?? '',
    new RegExp(least),
    'table',
  );
  if (refused.length > 0) throw new Error(refused.join('; '));
}

/** The rows of the account by name: fl oz, and per cent. */
async function account(map: Locator): Promise<Map<string, readonly [number, number]>> {
  const rows = await map
    .locator('.film-map-account :is(tbody, tfoot) tr')
    .evaluateAll((list) => list.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));
  return new Map(
    rows.map(([name, volume, share]) => [
      name!,
      [Number.parseFloat(volume!), Number.parseFloat(share!)] as const,
    ]),
  );
}

async function accountsForAllResin({ page, baseUrl }: E2E): Promise<void> {
  const map = await drawPuddles(page, baseUrl);
  const rows = await account(map);
  const [on, off, poured] = ['On the piece', 'Run off in all', 'Poured'].map((name) => rows.get(name)!);
  if (Math.abs(on![0] + off![0] - poured![0]) > 0.11)
    throw new Error(`${on![0]} on the piece and ${off![0]} off it are not the ${poured![0]} fl oz poured`);
  if (Math.abs(on![1] + off![1] - 100) > 0.11 || !(off![1] > 1))
    throw new Error(`shares ${on![1]}, ${off![1]} %`);
  if (![...rows.keys()].some((name) => name.startsWith('Run off over '))) throw new Error('no edge named');
}

async function showsProgressAndCancels({ page, baseUrl }: E2E): Promise<void> {
  const map = await drawPuddles(page, baseUrl);
  const before = await words(map);
  await map.getByLabel('Cell size').fill('1 mm');
  const bar = map.getByRole('progressbar');
  await bar.waitFor();
  const share = () => bar.evaluate((element) => (element as HTMLProgressElement).value);
  const first = await share();
  for (let waited = 0; (await share()) <= first; waited += 50) {
    if (waited > 10_000) throw new Error(`progress stays at ${first}`);
    await page.waitForTimeout(50);
  }
  await map.getByRole('button', { name: 'Cancel' }).click();
  await map.getByText('Cancelled. Nothing below has changed.').waitFor();
  await bar.waitFor({ state: 'detached' });
  if ((await words(map)) !== before) throw new Error('a cancelled map changed the one on the page');
  await map.getByLabel('Cell size').fill('5 mm');
  await map.getByRole('button', { name: 'Draw the thickness map' }).click();
  await drawn(map);
}

async function movesPuddles({ page, baseUrl }: E2E): Promise<void> {
  const map = await drawPuddles(page, baseUrl);
  let said = await words(map);
  const puddle = map.getByRole('button', { name: /^Puddle 1\.1 of/ });
  const name = await puddle.getAttribute('aria-label');
  await puddle.focus();
  for (let i = 0; i < 6; i++) await page.keyboard.press('Shift+ArrowRight');
  if ((await puddle.getAttribute('aria-label')) === name) throw new Error('the puddle says the same place');
  said = await wordsOtherThan(map, said);

  const handle = await puddle.boundingBox();
  const stage = await map.locator('.film-map-stage').boundingBox();
  await page.mouse.move(handle!.x + handle!.width / 2, handle!.y + handle!.height / 2);
  await page.mouse.down();
  await page.mouse.move(stage!.x + stage!.width * 0.1, stage!.y + stage!.height * 0.2, { steps: 8 });
  await page.mouse.up();
  await drawn(map);
  said = await wordsOtherThan(map, said);

  await map.getByLabel('Puddle', { exact: true }).selectOption('1.2');
  await map.getByLabel('By', { exact: true }).selectOption('5');
  for (let i = 0; i < 3; i++) await map.getByRole('button', { name: 'To the back' }).click();
  said = await wordsOtherThan(map, said);
  for (let i = 0; i < 12; i++) await map.getByRole('button', { name: 'To the back' }).click();
  await map.getByText('Puddle 1.2 stays where it is').waitFor();

  await map.getByRole('button', { name: 'Puddles back to their places' }).click();
  await wordsOtherThan(map, said);
  if ((await puddle.getAttribute('aria-label')) !== name) throw new Error('the puddle did not go back');
}

/** No figure of a line touches a puddle's handle. */
async function keepsFiguresClear(map: Locator): Promise<void> {
  const touching = await map.locator('.film-map-stage').evaluate((stage) => {
    const boxes = (what: string) =>
      [...stage.querySelectorAll(what)].map((one) => one.getBoundingClientRect());
    const handles = boxes('.film-map-puddle');
    return [...stage.querySelectorAll('.film-map-label')].flatMap((label) => {
      const a = label.getBoundingClientRect();
      const near = handles.some(
        (b) => a.left < b.right + 1 && a.right > b.left - 1 && a.top < b.bottom + 1 && a.bottom > b.top - 1,
      );
      return near ? [label.textContent ?? ''] : [];
    });
  });
  if (touching.length > 0) throw new Error(`figures that touch a handle: ${touching.join(', ')}`);
}

/** Drags one puddle onto another: both handles stay whole. */
async function keepsHandlesApart({ page, baseUrl, axe }: E2E): Promise<void> {
  await page.setViewportSize({ width: 390, height: 844 });
  const map = await drawPuddles(page, baseUrl);
  const [one, other] = [map.locator('.film-map-puddle').nth(0), map.locator('.film-map-puddle').nth(1)];
  await one.scrollIntoViewIfNeeded();
  const [from, to] = [await one.boundingBox(), await other.boundingBox()];
  await page.mouse.move(from!.x + from!.width / 2, from!.y + from!.height / 2);
  await page.mouse.down();
  await page.mouse.move(to!.x + to!.width / 2, to!.y + to!.height / 2, { steps: 5 });
  await page.mouse.up();
  await drawn(map);
  const boxes = await Promise.all([one.boundingBox(), other.boundingBox()]);
  const apart = Math.hypot(boxes[0]!.x - boxes[1]!.x, boxes[0]!.y - boxes[1]!.y);
  if (apart < 26) throw new Error(`handles ${apart} px apart`);
  await map.locator('.film-map-leader').first().waitFor({ state: 'attached' });
  await keepsFiguresClear(map);
  await map.getByRole('button', { name: 'Read a place with the arrow keys' }).focus();
  await page.keyboard.press('ArrowLeft');
  expectText((await map.locator('output').textContent()) ?? '', /mil, .* from the left/, 'place read');
  await axe(page);
  await noSidewaysScroll(page);
}

async function saysWhatCannotBeRead({ page, baseUrl }: E2E): Promise<void> {
  const map = await drawPuddles(page, baseUrl);
  const before = await words(map);
  for (const [label, typed, problem] of [
    ['Cell size', '9 mm', /Cell size.*Read: .?9 mm.*Allowed: 1 mm to 5 mm/],
    ['Cell size', 'small', /Cell size.*Read: .?small.*Allowed: 1 mm to 5 mm/],
    [
      'Bench falls to the right, mm per m',
      '80',
      /Fall of the bench to the right.*Read: .?80.*−50 to 50 mm per m/,
    ],
    [
      'Bench falls to the back, mm per m',
      'a bit',
      /Fall of the bench to the back.*Read: .?a bit.*−50 to 50 mm per m/,
    ],
  ] as const) {
    const field = map.getByLabel(label);
    const good = await field.inputValue();
    await field.fill(typed);
    if ((await field.getAttribute('aria-invalid')) !== 'true')
      throw new Error(`${typed} is taken as ${label}`);
    const told = await field.getAttribute('aria-describedby');
    expectText((await page.locator(`[id="${told}"]`).textContent()) ?? '', problem, label);
    if (!(await map.getByRole('button', { name: 'Draw the thickness map' }).isDisabled()))
      throw new Error('a map may be asked for with what cannot be read');
    if ((await field.inputValue()) !== typed) throw new Error('what was typed is gone');
    if ((await words(map)) !== before) throw new Error('the map changed');
    await field.fill(good);
  }
  await map.getByLabel('Bench falls to the right, mm per m').fill('5');
  await wordsOtherThan(map, before);
  await map.getByText('The film at gel, on a bench that falls 5 mm per m to the right').waitFor();
  await map.getByLabel('Moment shown').selectOption('minute');
  await map.getByLabel('Minutes from the first mix').fill('0.5e9');
  await map.getByText('Minute shown is not a number.').waitFor();
}

async function printsTheMap({ page, baseUrl }: E2E): Promise<void> {
  await drawPuddles(page, baseUrl);
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  const paper = page.locator('.film-map-paper');
  await paper.getByRole('heading', { name: /^Thickness map of/ }).waitFor();
  await paper
    .locator('.film-map-legend')
    .getByText(/^thinnest/)
    .waitFor();
  await paper.getByText('Where the resin is at gel').waitFor();
  if ((await tones(paper.locator('canvas'))) < 50) throw new Error('the printed map is empty');
  const box = await paper.locator('.film-map-stage').boundingBox();
  if (!(box !== null && box.width > 300 && box.width <= 700))
    throw new Error(`${box?.width} px wide on paper`);
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await paper.waitFor({ state: 'detached' });
}

async function fitsScreens({ page, baseUrl, axe }: E2E): Promise<void> {
  await drawPuddles(page, baseUrl);
  for (const width of [1280, 390]) {
    await page.setViewportSize({ width, height: 844 });
    await page.evaluate(() => window.scrollTo(0, 0));
    await page.waitForTimeout(300);
    await noSidewaysScroll(page);
    await axe(page);
  }
}

export const tests: readonly BrowserTest[] = [
  {
    name: 'map: drawn in a worker under the content policy, thinnest place marked and said',
    run: drawsUnderTheContentPolicy,
  },
  {
    name: 'map: what was poured is on the piece or ran off, in volume and per cent',
    run: accountsForAllResin,
  },
  { name: 'map: shows how far it is; a cancel keeps the map before', run: showsProgressAndCancels },
  { name: 'map: puddles moved by keys, by dragging and by buttons change the film', run: movesPuddles },
  { name: 'map: puddles on top of each other keep their handles, on a phone', run: keepsHandlesApart },
  {
    name: 'map: what cannot be read is said at its field, and nothing typed is lost',
    run: saysWhatCannotBeRead,
  },
  { name: 'map: printed with scale and account', run: printsTheMap },
  { name: 'map: no barrier axe can find, and no page wider than its screen', run: fitsScreens },
];
