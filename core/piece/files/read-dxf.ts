/** A DXF drawing read into outline and cut-outs. */

import { bad, type Result } from '#core/quantity/problem.ts';
import { type Affine, after, rotation, shift, stretch } from './affine.ts';
import { assemble } from './assemble.ts';
import { chainMaker, tooMany } from './chain.ts';
import { type DrawingUnit, unitLength_m, unitOfInsunits, unitOfWord } from './drawing-unit.ts';
import { dxfRun, facing, ownAxes } from './dxf-shapes.ts';
import {
  type Entity,
  needNumber,
  numberAt,
  numberOf,
  readSections,
  readTags,
  type Sections,
  wordAt,
} from './dxf-tags.ts';
import {
  checkOptions,
  type ImportedDrawing,
  isMarkLayer,
  leftOutWarning,
  MOST_VERTICES,
  type ReadOptions,
  Refused,
  refuse,
} from './imported-drawing.ts';
import { shapeSegments } from './shape.ts';
import { unitQuestion } from './unit-question.ts';

/** Blocks placed within blocks deeper than this are a mistake or a bomb. */
const DEEPEST = 16;
const MOST_PLACED = 20_000;

/**
 * Reads an ASCII DXF drawing (R12 and later): LINE, LWPOLYLINE and POLYLINE with bulge, ARC, CIRCLE, ELLIPSE, SPLINE,
 * and INSERT of blocks; lengths in metres, curves to `tolerance_m` (0.005 mm unless asked), axes as in the file. Answers
 * `file.unit` when neither the file nor `options.unit` says the unit, and a Problem for every file that cannot be used.
 * Throws RangeError for options outside their range.
 */
export function readDxf(text: string, options: ReadOptions = {}): Result<ImportedDrawing> {
  const { tolerance_m, join_m } = checkOptions(options);
  try {
    const sections = readSections(readTags(text));
    const said = options.unit ?? unitOfFile(sections);
    const unit = said ?? 'mm';
    const gathered = gather(sections, unit, tolerance_m, options.layers);
    const drawing = assemble({
      ...gathered,
      format: 'dxf',
      unit,
      unitFrom: options.unit === undefined ? 'file' : 'person',
      tolerance_m,
      join_m,
    });
    return said === undefined ? unitQuestion(drawing, unit, ['in', 'mm', 'cm', 'm', 'ft']) : drawing;
  } catch (error) {
    if (error instanceof Refused) return bad(...error.problems);
    throw error;
  }
}

function unitOfFile({ header, comments }: Sections): DrawingUnit | undefined {
  const insunits = header.get('$INSUNITS');
  const named = insunits === undefined ? undefined : unitOfInsunits(numberOf(insunits));
  if (named !== undefined) return named;
  const measurement = header.get('$MEASUREMENT');
  if (measurement !== undefined) return numberOf(measurement) === 0 ? 'in' : 'mm';
  for (const comment of comments) {
    const unit = /^unit: (\w+)$/.exec(comment)?.[1];
    if (unit !== undefined) return unitOfWord(unit);
  }
  return undefined;
}

function gather(
  { tables, blocks, entities }: Sections,
  unit: DrawingUnit,
  tolerance_m: number,
  asked: readonly string[] | undefined,
) {
  const layerTable = new Map(tables.filter((t) => t.type === 'LAYER').map((t) => [wordAt(t, 2) ?? '', t]));
  const library = blockLibrary(blocks);
  const maker = chainMaker();
  const layers = new Map<string, { count: number; used: boolean }>();
  const leftOut: Record<string, number> = {};
  const skip = (kind: string): void => {
    leftOut[kind] = (leftOut[kind] ?? 0) + 1;
  };
  let vertices = 0;
  let placed = 0;
  const draw = (list: readonly Entity[], m: Affine, depth: number, outerLayer: string): void => {
    for (let i = 0; i < list.length; i += 1) {
      const entity = list[i]!;
      const parts: Entity[] = [];
      while (['VERTEX', 'SEQEND', 'ATTRIB'].includes(list[i + 1]?.type ?? '')) {
        if (list[i + 1]!.type === 'VERTEX') parts.push(list[i + 1]!);
        i += 1;
      }
      // 67: drawn on paper, not on the piece.
      if (numberAt(entity, 67) === 1) continue;
      const own = wordAt(entity, 8) ?? '0';
      const layer = own === '0' && depth > 0 ? outerLayer : own;
      if (entity.type === 'INSERT') {
        if (facing(entity) === 0) {
          skip('tilted INSERT');
          continue;
        }
        const block = library.get(wordAt(entity, 2) ?? '');
        if (block === undefined) {
          skip('INSERT of a missing block');
          continue;
        }
        if (depth >= DEEPEST)
          refuse(
            'file.blocks',
            'Blocks are placed within blocks too deep.',
            wordAt(entity, 2)?.slice(0, 60),
            `up to ${DEEPEST} deep`,
          );
        for (const at of placings(entity, block.base)) {
          placed += 1;
          if (placed > MOST_PLACED) bomb();
          draw(block.entities, after(m, at), depth + 1, layer);
        }
        continue;
      }
      const run = facing(entity) === 0 ? undefined : dxfRun(entity, parts);
      if (run === undefined) {
        skip(facing(entity) === 0 ? `tilted ${entity.type}` : entity.type);
        continue;
      }
      vertices += run.vertices;
      if (vertices > MOST_VERTICES) tooMany();
      const used = asked === undefined ? visible(entity, layer, layerTable) : asked.includes(layer);
      const known = layers.get(layer);
      if (known === undefined) layers.set(layer, { count: 1, used });
      else {
        known.count += 1;
        known.used ||= used;
      }
      if (!used) continue;
      const where = after(m, ownAxes(entity));
      maker.add(
        run.shapes.flatMap((s) => shapeSegments(s, where, tolerance_m)),
        layer,
        run.closed,
      );
    }
  };
  const scale = unitLength_m(unit);
  draw(entities, stretch(scale, scale), 0, '0');
  return {
    chains: maker.chains,
    layers: [...layers].map(([name, l]) => ({ name, ...l })),
    leftOut,
    warnings: leftOutWarning(leftOut),
  };
}

/** Not frozen, not off, no centre line, no layer of notes. */
function visible(entity: Entity, layer: string, table: ReadonlyMap<string, Entity>): boolean {
  const entry = table.get(layer);
  const frozen = entry !== undefined && ((numberAt(entry, 70) ?? 0) & 1) !== 0;
  const off = entry !== undefined && (numberAt(entry, 62) ?? 7) < 0;
  const own = wordAt(entity, 6)?.toUpperCase() ?? 'BYLAYER';
  const dashes = own === 'BYLAYER' && entry !== undefined ? (wordAt(entry, 6) ?? '').toUpperCase() : own;
  return !(frozen || off || numberAt(entity, 60) === 1 || dashes.startsWith('CENTER') || isMarkLayer(layer));
}

interface Block {
  readonly base: { readonly x: number; readonly y: number };
  readonly entities: Entity[];
}

function blockLibrary(blocks: readonly Entity[]): Map<string, Block> {
  const library = new Map<string, Block>();
  let current: Block | undefined;
  for (const entity of blocks) {
    if (entity.type === 'BLOCK') {
      current = { base: { x: numberAt(entity, 10) ?? 0, y: numberAt(entity, 20) ?? 0 }, entities: [] };
      library.set(wordAt(entity, 2) ?? '', current);
    } else if (entity.type === 'ENDBLK') current = undefined;
    else current?.entities.push(entity);
  }
  return library;
}

/** Where an INSERT puts its block: once, or in rows and columns. */
function* placings(entity: Entity, base: { readonly x: number; readonly y: number }): Generator<Affine> {
  const columns = Math.max(1, Math.trunc(numberAt(entity, 70) ?? 1));
  const rows = Math.max(1, Math.trunc(numberAt(entity, 71) ?? 1));
  if (columns * rows > MOST_PLACED) bomb();
  const turned = after(
    shift(needNumber(entity, 10), needNumber(entity, 20)),
    rotation((numberAt(entity, 50) ?? 0) * (Math.PI / 180)),
  );
  const size = stretch(numberAt(entity, 41) ?? 1, numberAt(entity, 42) ?? 1);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const step = shift(column * (numberAt(entity, 44) ?? 0), row * (numberAt(entity, 45) ?? 0));
      yield after(ownAxes(entity), after(turned, after(step, after(size, shift(-base.x, -base.y)))));
    }
}

function bomb(): never {
  refuse(
    'file.blocks',
    'Blocks are placed too many times.',
    `more than ${MOST_PLACED.toLocaleString('en-US')}`,
    `up to ${MOST_PLACED.toLocaleString('en-US')}`,
  );
}
