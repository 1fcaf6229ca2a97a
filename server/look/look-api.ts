/** Routes for the printed sheets and the picture of a look. */

import { type Context, Hono } from 'hono';
import type { JobDocument } from '#core/job/document.ts';
import { topDrawing, unfoldedDrawing } from '#core/look/render/drawing.ts';
import { atPixel } from '#core/look/render/grid.ts';
import { sceneOf } from '#core/look/render/scene.ts';
import { usualPaper } from '#core/piece/set-out/paper.ts';
import { good, type Problem, type Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { newShop } from '#store/shop.ts';
import type { Store } from '#store/store.ts';
import { type AppEnv, errorOf } from '../context.ts';
import { attachment } from '../job-file-name.ts';
import { idOf, query } from '../read-request.ts';
import { revisionOf } from '../set-out/revision.ts';
import { PAPERS } from '../set-out/set-out-api.ts';
import type { ShopCards } from '../shop-cards.ts';
import { approvalPdf } from './approval-pdf.ts';
import { fullSizePdf } from './full-size-pdf.ts';
import type { LookSheet } from './look-sheet.ts';
import { paintScene } from './paint.ts';
import { png } from './png.ts';
import { pourMapPdf } from './pour-map-pdf.ts';
import { LookSheetQuery, PICTURE_SIZE, PictureQuery } from './queries.ts';
import { coatIndex, readSheetLook, type SheetLook } from './read-sheet.ts';
import { lookRoutes } from './routes.ts';

type Bytes = Uint8Array<ArrayBuffer>;
type Print = (sheet: LookSheet) => Promise<Result<Bytes>>;

interface Found {
  readonly title: string;
  readonly job: { readonly version: number; readonly document: JobDocument };
  readonly system: System;
  readonly sheet: SheetLook;
}

export function lookApi(store: Store, cards: ShopCards, now: () => string) {
  /** The look of a job, or the answer that says why there is none. */
  const find = async (c: Context<AppEnv>, coat: string | undefined, units: System | undefined) => {
    const job = await store.getJob(idOf(c));
    if (job === null) return c.json({ error: errorOf(c, 'job.missing', 'There is no such job.') }, 404);
    const { coats } = job.document;
    const index = coatIndex(coats, coat);
    if (index === null && coat !== undefined) {
      const names = coats.map(({ id, name }) => `${id}${name === '' ? '' : ` (${name})`}`).join(', ');
      const message = `The job has no coat "${coat}". Allowed: ${names || 'none, it has no coats'}.`;
      return c.json({ error: errorOf(c, 'coat.missing', message) }, 404);
    }
    const shop = (await store.getShop())?.shop ?? newShop();
    const system = units ?? shop.system;
    if (index === null)
      return refuse(c, [
        { path: 'coats', code: 'look.no-coat', message: 'There is no look yet: the job has no coat.' },
      ]);
    const known = (await cards.all()).map(({ card }) => card);
    const read = readSheetLook(job.document, index, { system, rates: shop.rates, cards: known });
    if (!read.ok) return refuse(c, read.problems);
    return { title: job.document.title, job, system, sheet: read.value } satisfies Found;
  };
  const sheet =
    (print: Print, what: string) =>
    async (
      c: Context<AppEnv>,
      asked: { coat?: string | undefined; paper?: 'a4' | 'letter' | undefined; units?: System | undefined },
    ) => {
      const found = await find(c, asked.coat, asked.units);
      if (found instanceof Response) return found;
      const { job, system, title } = found;
      const { document, version } = job;
      const made = await print({
        ...found.sheet,
        title,
        customer: document.customer.name,
        revision: revisionOf(document, version),
        at: now(),
        paper: PAPERS[asked.paper ?? usualPaper(system)],
        system,
      });
      if (!made.ok) return refuse(c, made.problems);
      return c.body(made.value, 200, {
        'Content-Type': 'application/pdf',
        'Content-Disposition': attachment(title, `-${what}.pdf`),
      });
    };
  const approval = sheet(async (look) => good(await approvalPdf(look)), 'look');
  const pourMap = sheet(async (look) => good(await pourMapPdf(look)), 'pour-map');
  const fullSize = sheet(async (look) => {
    const made = await fullSizePdf(look);
    return made.ok ? good(made.value.bytes, made.warnings) : made;
  }, 'full-size');
  return new Hono<AppEnv>()
    .get(lookRoutes.lookApproval.path, query(LookSheetQuery), (c) => approval(c, c.req.valid('query')))
    .get(lookRoutes.lookPourMap.path, query(LookSheetQuery), (c) => pourMap(c, c.req.valid('query')))
    .get(lookRoutes.lookFullSize.path, query(LookSheetQuery), (c) => fullSize(c, c.req.valid('query')))
    .get(lookRoutes.lookPicture.path, query(PictureQuery), async (c) => {
      const { coat, width = PICTURE_SIZE.usual, show = 'unfolded' } = c.req.valid('query');
      const found = await find(c, coat, undefined);
      if (found instanceof Response) return found;
      const { look } = found.sheet;
      const drawing = show === 'top' ? topDrawing(look.panels) : unfoldedDrawing(look.panels);
      const pixel_m = drawing.width_m / width;
      const at = atPixel(drawing, pixel_m);
      const { columns, rows } = at.window;
      const pixels = await paintScene(sceneOf({ look, drawing, sheet: at }));
      return c.body(png(pixels, columns, rows, { pixel_m }), 200, {
        'Content-Type': 'image/png',
        'Content-Disposition': attachment(found.title, '-look.png'),
      });
    });
}

function refuse(c: Context<AppEnv>, problems: readonly Problem[]) {
  const message = 'The look cannot be shown as it stands; the problems say what to give or to change.';
  return c.json({ error: errorOf(c, 'look.job', message), problems: [...problems] }, 422);
}
