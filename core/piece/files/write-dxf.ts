/** A piece as a DXF file: outline, cut-outs, centre lines and notes on the edges, each on its layer. */

import type { Piece } from '../piece.ts';
import { unitLength_m } from './drawing-unit.ts';
import { blocks2000, FIRST_HANDLE, LAYER_COLOURS, MODEL_SPACE, objects2000, tables2000 } from './dxf-2000.ts';
import { dxfText, entityPairs, LAYERS, type Pair } from './dxf-pairs.ts';
import { type FileDrawing, pieceLoops } from './piece-loops.ts';

export interface DxfFormat {
  /** R12 (AC1009) is read by everything; R2000 (AC1015) keeps true ellipses and says its unit. */
  readonly version: 'R12' | 'R2000';
  readonly unit: 'mm' | 'in';
}

const NOTE_HEIGHT_M = 0.01;

/**
 * The piece seen from above, full size, in the file's unit, its axes those of the piece. Arcs stay arcs (bulges). In
 * R2000 ovals are true ellipses, in R12 arcs within 0.002 mm of them. Throws RangeError when the piece's sizes cannot be built: ask
 * `reviewPiece` first.
 */
export function writeDxf(piece: Piece, format: DxfFormat): string {
  const drawing = pieceLoops(piece);
  return format.version === 'R12' ? r12(drawing, format.unit) : r2000(drawing, format.unit);
}

function extents(drawing: FileDrawing, perMetre: number): Pair[] {
  const corner = (name: string, p: FileDrawing['from']): Pair[] => [
    [9, name],
    [10, p.x_m * perMetre],
    [20, p.y_m * perMetre],
    [30, 0],
  ];
  return [...corner('$EXTMIN', drawing.from), ...corner('$EXTMAX', drawing.to)];
}

function r12(drawing: FileDrawing, unit: DxfFormat['unit']): string {
  const perMetre = 1 / unitLength_m(unit);
  const dashes = (name: string, text: string, lengths: readonly number[]): Pair[] => [
    [0, 'LTYPE'],
    [2, name],
    [70, 0],
    [3, text],
    [72, 65],
    [73, lengths.length],
    [40, lengths.reduce((sum, l) => sum + Math.abs(l), 0)],
    ...lengths.map((l): Pair => [49, l]),
  ];
  const layer = (name: string, colour: number, line: string): Pair[] => [
    [0, 'LAYER'],
    [2, name],
    [70, 0],
    [62, colour],
    [6, line],
  ];
  return dxfText([
    // R12 has no variable for the unit; a comment says it.
    [999, `unit: ${unit}`],
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    ...extents(drawing, perMetre),
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'TABLES'],
    [0, 'TABLE'],
    [2, 'LTYPE'],
    [70, 2],
    ...dashes('CONTINUOUS', 'Solid line', []),
    ...dashes('CENTER', 'Long and short dashes', [32, -6, 6, -6]),
    [0, 'ENDTAB'],
    [0, 'TABLE'],
    [2, 'LAYER'],
    [70, LAYERS.length + 1],
    ...layer('0', 7, 'CONTINUOUS'),
    ...LAYERS.flatMap((name) =>
      layer(name, LAYER_COLOURS[name], name === 'CENTRE-LINES' ? 'CENTER' : 'CONTINUOUS'),
    ),
    [0, 'ENDTAB'],
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...entityPairs(drawing, {
      r12: true,
      perMetre,
      noteHeight: NOTE_HEIGHT_M * perMetre,
      handle: () => '',
      owner: '',
    }),
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ]);
}

function r2000(drawing: FileDrawing, unit: DxfFormat['unit']): string {
  const perMetre = 1 / unitLength_m(unit);
  let last = FIRST_HANDLE;
  const handle = (): string => {
    last += 1;
    return last.toString(16).toUpperCase();
  };
  const body: Pair[] = [
    [0, 'SECTION'],
    [2, 'CLASSES'],
    [0, 'ENDSEC'],
    ...tables2000(handle),
    ...blocks2000(handle),
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...entityPairs(drawing, {
      r12: false,
      perMetre,
      noteHeight: NOTE_HEIGHT_M * perMetre,
      handle,
      owner: MODEL_SPACE,
    }),
    [0, 'ENDSEC'],
    ...objects2000(),
    [0, 'EOF'],
  ];
  return dxfText([
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1015'],
    [9, '$HANDSEED'],
    [5, handle()],
    [9, '$INSUNITS'],
    [70, unit === 'mm' ? 4 : 1],
    [9, '$MEASUREMENT'],
    [70, unit === 'mm' ? 1 : 0],
    ...extents(drawing, perMetre),
    [0, 'ENDSEC'],
    ...body,
  ]);
}
