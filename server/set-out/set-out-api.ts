/** Routes for the set-out sheet and the true-scale template of a job, as PDF. */

import { type Context, Hono } from 'hono';
import type { JobDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { problemInOneUnit } from '#core/job/one-unit.ts';
import { atPieceField } from '#core/job/piece-field.ts';
import { readPiece } from '#core/job/read-piece.ts';
import type { Piece } from '#core/piece/piece.ts';
import type { Paper } from '#core/piece/set-out/paper.ts';
import { usualPaper } from '#core/piece/set-out/paper.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { newShop } from '#store/shop.ts';
import type { Store } from '#store/store.ts';
import { type AppEnv, errorOf } from '../context.ts';
import { idOf, query } from '../read-request.ts';
import { SheetQuery, TemplateQuery } from './queries.ts';
import { revisionOf } from './revision.ts';
import { setOutRoutes } from './routes.ts';
import { setOutPdf } from './set-out-pdf.ts';
import { templatePdf } from './template-pdf.ts';

const PAPERS: Readonly<Record<'a4' | 'letter', Paper>> = { a4: 'A4', letter: 'Letter' };

export function setOutApi(store: Store, now: () => string) {
  return new Hono<AppEnv>()
    .get(setOutRoutes.setOutSheet.path, query(SheetQuery), async (c) => {
      const { paper, units } = c.req.valid('query');
      const job = await store.getJob(idOf(c));
      if (job === null) return noJob(c);
      const system = units ?? (await shopSystem(store));
      const piece = pieceOf(job.document, system);
      if (!piece.ok) return refuse(c, piece.problems);
      const made = await setOutPdf(piece.value, {
        paper: PAPERS[paper ?? usualPaper(system)],
        system,
        ...wordsOf(job, now),
      });
      if (!made.ok) return refuse(c, atFields(made.problems, job.document, system));
      return answer(c, made.value, job.document.title, 'set-out');
    })
    .get(setOutRoutes.template.path, query(TemplateQuery), async (c) => {
      const { paper } = c.req.valid('query');
      const job = await store.getJob(idOf(c));
      if (job === null) return noJob(c);
      const system = await shopSystem(store);
      const piece = pieceOf(job.document, system);
      if (!piece.ok) return refuse(c, piece.problems);
      const made = await templatePdf(piece.value, {
        paper: PAPERS[paper ?? usualPaper(system)],
        ...wordsOf(job, now),
      });
      if (!made.ok) return refuse(c, atFields(made.problems, job.document, system));
      return answer(c, made.value.bytes, job.document.title, 'template');
    });
}

async function shopSystem(store: Store): Promise<System> {
  return ((await store.getShop())?.shop ?? newShop()).system;
}

function wordsOf(job: { readonly version: number; readonly document: JobDocument }, now: () => string) {
  const { document, version } = job;
  return {
    title: document.title,
    customer: document.customer.name,
    revision: revisionOf(document, version),
    at: now(),
  };
}

/** The piece of a job, or what is wrong with it and what it still needs. */
function pieceOf(document: JobDocument, system: System): Result<Piece> {
  const notes = new Notes(system);
  const { piece } = readPiece(document.piece, notes);
  if (piece !== null) return good(piece);
  const missing = notes.missing
    .filter(({ path }) => path.startsWith('piece'))
    .map(
      ({ path, needs }): Problem => ({
        path,
        code: 'piece.missing',
        message: `Nothing can be set out yet: still needed is ${needs}.`,
      }),
    );
  return bad(...notes.problems, ...missing);
}

function atFields(problems: readonly Problem[], document: JobDocument, system: System): Problem[] {
  return problems.map((p) => problemInOneUnit(atPieceField(p, document.piece), system));
}

function noJob(c: Context<AppEnv>) {
  return c.json({ error: errorOf(c, 'job.missing', 'There is no such job.') }, 404);
}

function refuse(c: Context<AppEnv>, problems: readonly Problem[]) {
  const message = 'The piece cannot be set out as it stands; the problems say what to give or to change.';
  return c.json({ error: errorOf(c, 'set-out.piece', message), problems: [...problems] }, 422);
}

function answer(c: Context<AppEnv>, bytes: Uint8Array<ArrayBuffer>, title: string, what: string) {
  return c.body(bytes, 200, {
    'Content-Type': 'application/pdf',
    'Content-Disposition': pdfName(title, what),
  });
}

/** As for job files: letters and digits of any script, and plain ASCII for programs that know no `filename*`. */
function pdfName(title: string, what: string): string {
  const words = [
    ...title
      .normalize('NFC')
      .toWellFormed()
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-'),
  ];
  const stem =
    words
      .slice(0, 60)
      .join('')
      .replaceAll(/^-+|-+$/g, '') || 'job';
  const ascii = stem.replaceAll(/[^A-Za-z0-9-]+/g, '').replaceAll(/^-+|-+$/g, '') || 'job';
  return `attachment; filename="${ascii}-${what}.pdf"; filename*=UTF-8''${encodeURIComponent(stem)}-${what}.pdf`;
}
