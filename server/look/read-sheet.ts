/** A job's look with everything its sheets show, or what it still needs. */
import { shopCards as allCards, computeJob, type ShopKnowledge } from '#core/job/compute-job.ts';
import type { CoatDocument, JobDocument } from '#core/job/document.ts';
import { coatLook } from '#core/job/look-of-coat.ts';
import { coatedIds, piecesOf } from '#core/job/pieces.ts';
import { readJob } from '#core/job/read-job.ts';
import type { LaidPiece } from '#core/look/panels.ts';
import { readLook } from '#core/look/read-look.ts';
import { lookPours } from '#core/mix/look-pours.ts';
import { pouredShares } from '#core/mix/look-shares.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import type { LookSheet } from './look-sheet.ts';

export type SheetLook = Omit<LookSheet, 'title' | 'customer' | 'revision' | 'at' | 'paper' | 'system'>;

/** The coat asked for by id; else the first with a look, the first colour coat, the first. Null where there is none. */
export function coatIndex(coats: readonly CoatDocument[], id: string | undefined): number | null {
  const tries: ((coat: CoatDocument) => boolean)[] =
    id === undefined
      ? [({ look }) => look !== null, ({ kind }) => kind === 'colour coat', () => true]
      : [(coat) => coat.id === id];
  for (const fits of tries) {
    const found = coats.findIndex(fits);
    if (found >= 0) return found;
  }
  return null;
}

/** @param index of a coat that is there. */
export function readSheetLook(
  document: JobDocument,
  index: number,
  shop: ShopKnowledge & { readonly system: LookSheet['system'] },
): Result<SheetLook> {
  const coat = document.coats[index]!;
  const read = readJob(document, allCards(shop), shop.system);
  const density = read.coats[index]?.coat?.card.model.density_kg_m3;
  const made = coatLook(document, read, index, density, shop.system);
  if (!made.ok) return made;
  const { look: described, setting, whole_m3, hash } = made.value;
  const ready = readLook(described, setting);
  const at = (problem: Problem): Problem => ({ ...problem, path: `coats.${index}.look.${problem.path}` });
  if (!ready.ok) return bad(...ready.problems.map(at));
  const look = ready.value;
  const keys = look.colours.map(({ key }) => key);
  const shares = pouredShares(described, keys, whole_m3);
  const plan = computeJob(document, shop).coats[index]?.plan ?? null;
  const cups = plan?.cups ?? [];
  const labels = look.colours.map(({ key, name }) => ({ key, label: name }));
  return good(
    {
      coat: read.coats[index]?.name ?? coat.name,
      look,
      document: described,
      pieces: laidPieces(document, read, coat, look.panels),
      colours: look.colours.map(({ key, name, light }, i) => ({
        ...{ key, light, label: name },
        share: shares.get(key) ?? 0,
        colourant: colourantOf(coat.colours[i]),
      })),
      mark: hash,
      cups,
      pours: cups.length === 0 ? [] : lookPours({ look: described, colours: labels, cups, whole_m3 }),
    },
    [...made.warnings, ...ready.warnings.map(at)],
  );
}

function colourantOf(colour: CoatDocument['colours'][number] | undefined): string {
  if (colour === undefined || colour.colourant === 'none') return '';
  return colour.load.trim() === '' ? colour.colourant : `${colour.colourant} ${colour.load.trim()}`;
}

/** The pieces behind the tops of the look, in their order: those of the job, then the look's own rectangles. */
function laidPieces(
  document: JobDocument,
  read: Pick<ReturnType<typeof readJob>, 'pieces'>,
  coat: CoatDocument,
  panels: SheetLook['look']['panels'],
): LaidPiece[] {
  const ids = coatedIds(coat, piecesOf(document));
  const sound = read.pieces.filter(({ id, piece }) => ids.includes(id) && piece !== null);
  const tops = panels.filter(({ kind }) => kind === 'top' || kind === 'piece');
  return tops.map(({ name, width_m, depth_m, toPlane }, i): LaidPiece => {
    const [a, b] = [toPlane(0, 0), toPlane(1, 0)];
    return {
      name,
      at: a,
      turn_rad: Math.atan2(b[1] - a[1], b[0] - a[0]),
      splashes: [],
      piece: sound[i]?.piece ?? {
        outline: { shape: 'rectangle', length_m: width_m, width_m: depth_m },
        edges: {},
        cutOuts: [],
        bodyThickness_m: 0,
      },
    };
  });
}
