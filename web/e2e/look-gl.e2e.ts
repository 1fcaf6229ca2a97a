/** The two renderings of a look, by the processor and by a graphics card, held against each other in a real browser. */
import { dirname, join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { anyLook } from '#core/look/render/any-look.ts';
import { unfoldedDrawing } from '#core/look/render/drawing.ts';
import { fitInto } from '#core/look/render/grid.ts';
import { renderScene } from '#core/look/render/render.ts';
import { sceneOf } from '#core/look/render/scene.ts';
import { CHROMIUM_FLAGS, chromiumOrInstall } from '../../scripts/chromium.ts';
import type { BrowserTest } from '../../scripts/e2e-types.ts';
import { type Agreement, fnv } from '../look/gl/agreement-page.ts';

/** WebGL2 worked out by the processor, the same on every machine. */
const SOFTWARE_GL = ['--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];
const SEEDS = [1, 2, 3];
const MOVES = 60;
const COLUMNS = 320;
const ROWS = 240;
/** Mean CIEDE2000 over the picture, and the share of pixels that may be more than 1 apart (threads thinner than a pixel). */
const MEAN = 0.1;
const APART = 0.01;

let made: Promise<string> | null = null;

/** The test page as one script, so that it runs on a page of no server. */
async function bundle(): Promise<string> {
  const entry = join(dirname(import.meta.dirname), 'look', 'gl', 'agreement-page.ts');
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, minify: false, lib: { entry, formats: ['iife'], name: 'lookTest' } },
  });
  const [first] = Array.isArray(built) ? built : [built];
  if (first === undefined || !('output' in first)) throw new Error('no script was made');
  return first.output[0].code;
}

async function onPage(run: (page: Page) => Promise<void>): Promise<void> {
  const browser = await chromium.launch({
    executablePath: chromiumOrInstall(),
    headless: true,
    args: [...CHROMIUM_FLAGS, ...SOFTWARE_GL],
  });
  try {
    made ??= bundle();
    const page = await browser.newPage();
    await page.addScriptTag({ content: await made });
    await run(page);
  } finally {
    await browser.close();
  }
}

async function agree(): Promise<void> {
  await onPage(async (page) => {
    for (const seed of SEEDS) {
      const found = (await page.evaluate(
        `lookTest.agreement(${seed}, ${MOVES}, ${COLUMNS}, ${ROWS})`,
      )) as Agreement;
      console.log(
        `        seed ${seed}: mean ${found.mean.toFixed(4)}, largest ${found.max.toFixed(1)} at pixel (${found.column}, ${found.row}), ` +
          `${(100 * found.apart).toFixed(3)} % more than 1 apart; ${found.renderer}`,
      );
      if (!(found.mean < MEAN)) throw new Error(`seed ${seed}: mean difference ${found.mean}`);
      if (!(found.apart < APART)) throw new Error(`seed ${seed}: ${found.apart} of the pixels differ`);
    }
  });
}

async function sameBytes(): Promise<void> {
  const look = anyLook(1, MOVES);
  const drawing = unfoldedDrawing(look.panels);
  const scene = sceneOf({ look, drawing, sheet: fitInto(drawing, 128, 96), gloss: 0.5 });
  const here = fnv(renderScene(scene));
  await onPage(async (page) => {
    const { hash } = (await page.evaluate(`lookTest.agreement(1, ${MOVES}, 128, 96)`)) as Agreement;
    if (hash !== here) throw new Error(`the browser renders ${hash}, Node ${here}`);
  });
}

export const tests: readonly BrowserTest[] = [
  { name: 'look: graphics card and processor show the same picture', run: agree },
  {
    name: 'look: the processor shows the same picture in the browser as in Node, byte for byte',
    run: sameBytes,
  },
];
