/** The look of a coat as the section shows it: ready to paint, what is wrong with it, and how to change it. */
import { useMemo, useRef } from 'react';
import type { CoatDocument, JobDocument } from '#core/job/document.ts';
import { type CoatLook, coatLook } from '#core/job/look-of-coat.ts';
import { readJob } from '#core/job/read-job.ts';
import type { Look } from '#core/look/look.ts';
import type { LookDocument } from '#core/look/look-document.ts';
import { type LookSetting, readLook } from '#core/look/read-look.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { useCards } from '#web/api/resin-queries.ts';
import { useSheet } from '#web/sheet/context.tsx';
import { putLook } from './edit-look.ts';

export interface SeenLook {
  readonly index: number;
  readonly coat: CoatDocument;
  /** null: the film or the piece is not there yet. */
  readonly made: CoatLook | null;
  /** null: it cannot be painted. */
  readonly look: Look | null;
  /** What is wrong with it or doubtful; paths of the job. */
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
  /** One step of undo; cups follow. */
  readonly put: (label: string, look: LookDocument | null, slack?: number) => void;
}

export function useCoatLook(index: number): SeenLook {
  const { document, system, edit } = useSheet();
  const { all } = useCards();
  const coat = document.coats[index]!;
  const shape = JSON.stringify([
    coat.film,
    coat.faceFilm,
    coat.edges,
    coat.pieces,
    coat.look?.beside,
    coat.look?.faces,
    document.piece,
    document.otherPieces,
  ]);
  const kept = useRef<{ readonly shape: string; readonly setting: LookSetting } | null>(null);
  const seen = useMemo(() => {
    const read = readJob(document, all, system);
    const density = all.find((card) => card.id === coat.resin)?.model.density_kg_m3;
    const made = coatLook(document, read, index, density, system);
    if (!made.ok) return { made: null, look: null, problems: made.problems, warnings: [] };
    // Panels of the same work stay the same object: the picture lays out its pixels by them.
    if (kept.current?.shape !== shape) kept.current = { shape, setting: made.value.setting };
    const { panels, edges } = kept.current.setting;
    const value: CoatLook = { ...made.value, setting: { ...made.value.setting, panels, edges } };
    const ready = readLook(value.look, value.setting);
    const at = (problem: Problem) => ({ ...problem, path: `coats.${index}.look.${problem.path}` });
    return ready.ok
      ? {
          made: value,
          look: ready.value,
          problems: [],
          warnings: [...made.warnings, ...ready.warnings.map(at)],
        }
      : { made: value, look: null, problems: ready.problems.map(at), warnings: made.warnings };
  }, [document, all, system, coat, index, shape]);
  return useMemo(
    () => ({
      index,
      coat,
      ...seen,
      put: (label, look, slack) =>
        edit(label, '', (d: JobDocument) => putLook(d, index, look, seen.made?.whole_m3 ?? 1, slack)),
    }),
    [index, coat, seen, edit],
  );
}
