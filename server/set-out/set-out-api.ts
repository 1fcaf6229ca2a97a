/** Routes for the set-out sheet and the true-scale template of a job, as PDF. */

import { type Context, Hono } from 'hono';
import type { JobDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { problemInOneUnit } from '#core/job/one-unit.ts';
import { atPieceField } from '#core/job/piece-field.ts';
import { type PiecePlace, piecesOf } from '#core/job/pieces.ts';
import { readPiece } from '#core/job/read-piece.ts';
import type { Paper } from '#core/piece/set-out/paper.ts';
import { usualPaper } from '#core/piece/set-out/paper.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { newShop, type Shop } from '#store/shop.ts';
import type { Store } from '#store/store.ts';
import { type AppEnv, errorOf } from '../context.ts';
import { attachment } from '../job-file-name.ts';
import { idOf, query } from '../read-request.ts';
import { SheetQuery, TemplateQuery } from './queries.ts';
import { revisionOf } from './revision.ts';
import { setOutRoutes } from './routes.ts';
import { type SheetPiece, setOutsPdf } from './set-out-pdf.ts';
import { titleOf } from './sheet-head.ts';
import { templatePdf } from './template-pdf.ts';

export const PAPERS: Readonly<Record<'a4' | 'letter', Paper>> = { a4: 'A4', letter: 'Letter' };

export function setOutApi(store: Store, now: () => string) {
  return new Hono<AppEnv>()
    .get(setOutRoutes.setOutSheet.path, query(SheetQuery), async (c) => {
      const { paper, units, piece: wanted } = c.req.valid('query');
      const job = await store.getJob(idOf(c));
      if (job === null) return noJob(c);
      const shop = await shopOf(store);
      const system = units ?? shop.system;
      const pieces = chosenOf(job.document, wanted);
      if (pieces.length === 0) return noPiece(c);
      const read = pieces.map((each) => sheetPiece(each, job.document, system));
      const problems = read.flatMap((each) => (each.ok ? [] : each.problems));
      if (problems.length > 0) return refuse(c, problems);
      const made = await setOutsPdf(
        read.flatMap((each) => (each.ok ? [each.value] : [])),
        { paper: PAPERS[paper ?? usualPaper(system)], system, rules: shop.rates, ...wordsOf(job, now) },
      );
      if (!made.ok) return refuse(c, made.problems);
      return answer(c, made.value, titleWith(job.document, wanted), 'set-out');
    })
    .get(setOutRoutes.template.path, query(TemplateQuery), async (c) => {
      const { paper, piece: wanted } = c.req.valid('query');
      const job = await store.getJob(idOf(c));
      if (job === null) return noJob(c);
      const shop = await shopOf(store);
      const { system } = shop;
      const [chosen] = chosenOf(job.document, wanted);
      if (chosen === undefined) return noPiece(c);
      const read = sheetPiece(chosen, job.document, system);
      if (!read.ok) return refuse(c, read.problems);
      const { name, piece, tell } = read.value;
      const words = wordsOf(job, now);
      const made = await templatePdf(piece, {
        paper: PAPERS[paper ?? usualPaper(system)],
        rules: shop.rates,
        ...words,
        ...(name === '' ? {} : { title: `${titleOf(words)}: ${name}` }),
      });
      if (!made.ok) return refuse(c, made.problems.map(tell));
      return answer(c, made.value.bytes, titleWith(job.document, wanted), 'template');
    });
}

/** The piece asked for, or all of them; none where the job has no such piece. */
function chosenOf(document: JobDocument, wanted: string | undefined): readonly PiecePlace[] {
  const pieces = piecesOf(document);
  return wanted === undefined ? pieces : pieces.filter(({ id }) => id === wanted);
}

/** For the name of a file: that of the job, and of the piece where one of several was asked for. */
function titleWith(document: JobDocument, wanted: string | undefined): string {
  const [named, ...others] = chosenOf(document, wanted);
  if (wanted === undefined || others.length > 0 || document.otherPieces.length === 0) return document.title;
  return `${document.title} ${named?.name ?? ''}`;
}

async function shopOf(store: Store): Promise<Pick<Shop, 'system' | 'rates'>> {
  return (await store.getShop())?.shop ?? newShop();
}

export async function shopSystem(store: Store): Promise<System> {
  return (await shopOf(store)).system;
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

/** A piece of a job, or what is wrong with it and what it still needs. */
function sheetPiece(
  { name, path, document: typed }: PiecePlace,
  document: JobDocument,
  system: System,
): Result<Required<SheetPiece>> {
  const notes = new Notes(system);
  const { piece, splashes } = readPiece(typed, notes, path);
  const tell = (problem: Problem) => problemInOneUnit(atPieceField(problem, typed, path), system);
  if (piece !== null)
    return good({ name: document.otherPieces.length === 0 ? '' : name, piece, splashes, tell });
  const missing = notes.missing.map(
    ({ path: at, needs }): Problem => ({
      path: at,
      code: 'piece.missing',
      message: `Nothing can be set out yet: still needed is ${needs}.`,
    }),
  );
  return bad(...notes.problems, ...missing);
}

function noPiece(c: Context<AppEnv>) {
  return c.json({ error: errorOf(c, 'piece.missing', 'There is no such piece in this job.') }, 404);
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
    'Content-Disposition': attachment(title, `-${what}.pdf`),
  });
}
