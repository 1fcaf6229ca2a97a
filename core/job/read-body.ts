/** How a body is built and cut, from the texts of a job. */
import type { CutPart } from '#core/piece/cutting/cutting.ts';
import { readDensity_kg_m3, readLength_m } from '#core/quantity/read.ts';
import type { BodyDocument } from './body-document.ts';
import type { Notes } from './notes.ts';
import { readSheet, type SheetRead } from './read-sheet.ts';
import { BODY_LIMITS, type BodyFigure, type BodyFigures } from './shop-body.ts';

export interface BodyRead {
  /** What the job says; a figure that is left out is the shop's. */
  readonly figures: Partial<Omit<BodyFigures, 'boardThickness_m'>>;
  readonly density_kg_m3: number | null;
  readonly grain: Readonly<Partial<Record<'field' | 'strip' | 'rim' | 'splash', CutPart['grain']>>>;
  readonly overhangs: readonly { readonly edge: string; readonly overhang_m: number }[];
  /** null: not to be checked. */
  readonly accessible: { readonly topHeight_m: number | null; readonly kneeWidth_m: number | null } | null;
  /** Sheets of this job alone; null: those of the shop. */
  readonly sheets: readonly SheetRead[] | null;
  readonly useOffcuts: boolean;
  /** False when something typed cannot be used: nothing should be cut by it. */
  readonly sound: boolean;
}

const FIELDS = {
  stripWidth: ['stripWidth_m', 'width of the strips'],
  oversize: ['oversize_m', 'oversize of the field'],
  longest: ['longest_m', 'longest part'],
  screw: ['screwLength_m', 'length of the screws'],
  kerf: ['kerf_m', 'saw cut'],
  trim: ['trim_m', 'trim of a sheet'],
  keepLength: ['keepLength_m', 'length of an offcut to keep'],
  keepWidth: ['keepWidth_m', 'width of an offcut to keep'],
} as const satisfies Partial<Record<keyof BodyDocument, readonly [BodyFigure, string]>>;

const KINDS = { field: 'field', strips: 'strip', rims: 'rim', splashes: 'splash' } as const;

/**
 * Reads every text; empty ones are left to the shop. `edges`: names the outline has, null where it cannot be read.
 * @param path where the body stands in its document.
 */
export function readBody(
  document: BodyDocument,
  path: string,
  edges: readonly string[] | null,
  notes: Notes,
): BodyRead {
  const before = notes.problems.length;
  const length = (at: string, text: string, what: string, min: number, max: number) =>
    notes.take(`${path}.${at}`, text, (typed, ask) => readLength_m(typed, { ...ask, what, min, max }));
  const figures: { -readonly [K in keyof BodyRead['figures']]: BodyRead['figures'][K] } = {};
  for (const [key, [figure, what]] of Object.entries(FIELDS)) {
    const value = length(key, document[key as keyof typeof FIELDS], what, ...BODY_LIMITS[figure]);
    if (value !== null) figures[figure] = value;
  }
  const density_kg_m3 = notes.take(`${path}.density`, document.density, (text, ask) =>
    readDensity_kg_m3(text, { ...ask, what: 'density of the board', min: 100, max: 3000 }),
  );
  const grain = Object.fromEntries(
    Object.entries(KINDS).flatMap(([key, kind]) => {
      const said = document.grain[key as keyof typeof KINDS];
      return said === 'as the board' ? [] : [[kind, said === 'none' ? 'free' : 'fixed']];
    }),
  ) as BodyRead['grain'];
  const overhangs = document.overhangs.flatMap(({ edge, overhang }, index) => {
    const overhang_m = length(`overhangs.${index}.overhang`, overhang, 'overhang', 0, 5);
    if (edges === null) return [];
    if (!edges.includes(edge)) {
      notes.problem(
        `${path}.overhangs.${index}.edge`,
        'edge.unknown',
        'Overhang: this outline has no such edge.',
        edge,
        edges.join(', '),
      );
      return [];
    }
    return overhang_m === null ? [] : [{ edge, overhang_m }];
  });
  const { accessible } = document;
  return {
    figures,
    density_kg_m3,
    grain,
    overhangs,
    accessible:
      accessible === null
        ? null
        : {
            topHeight_m: length('accessible.topHeight', accessible.topHeight, 'height of the top', 0.1, 3),
            kneeWidth_m: length('accessible.kneeWidth', accessible.kneeWidth, 'width under the top', 0.1, 5),
          },
    sheets:
      document.sheets?.flatMap((sheet, index) => readSheet(sheet, `${path}.sheets.${index}`, notes) ?? []) ??
      null,
    useOffcuts: document.useOffcuts,
    sound: notes.problems.length === before,
  };
}
