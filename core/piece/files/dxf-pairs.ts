/** The entities of a piece as DXF group codes (Autodesk, DXF Reference for AutoCAD 2000, ENTITIES section). */

import type { Path, Point } from '../piece.ts';
import type { FileDrawing, FileLine, FileLoop, FileNote } from './piece-loops.ts';
import { loopPath } from './piece-loops.ts';

export type Pair = readonly [code: number, value: string | number];

export const LAYERS = ['OUTLINE', 'CUT-OUTS', 'CENTRE-LINES', 'EDGES'] as const;
export type Layer = (typeof LAYERS)[number];

export interface DxfStyle {
  /** R12 has no LWPOLYLINE and no ELLIPSE. */
  readonly r12: boolean;
  /** Units of the file in a metre. */
  readonly perMetre: number;
  /** Height of notes, in units of the file. */
  readonly noteHeight: number;
  /** The next handle and the owner of what is drawn; R12 needs neither. */
  readonly handle: () => string;
  readonly owner: string;
}

export function entityPairs(drawing: FileDrawing, style: DxfStyle): Pair[] {
  return [
    ...loopPairs(drawing.outline, 'OUTLINE', style),
    ...drawing.cutOuts.flatMap((loop) => loopPairs(loop, 'CUT-OUTS', style)),
    ...drawing.centreLines.flatMap((line) => linePairs(line, style)),
    ...drawing.notes.flatMap((note) => notePairs(note, style)),
  ];
}

function head(type: string, layer: Layer, style: DxfStyle, subclass: string): Pair[] {
  if (style.r12)
    return [
      [0, type],
      [8, layer],
    ];
  return [
    [0, type],
    [5, style.handle()],
    [330, style.owner],
    [100, 'AcDbEntity'],
    [8, layer],
    [100, subclass],
  ];
}

function at(p: Point, style: DxfStyle, code = 10): Pair[] {
  return [
    [code, p.x_m * style.perMetre],
    [code + 10, p.y_m * style.perMetre],
    [code + 20, 0],
  ];
}

function loopPairs(loop: FileLoop, layer: Layer, style: DxfStyle): Pair[] {
  if (loop.kind === 'circle')
    return [
      ...head('CIRCLE', layer, style, 'AcDbCircle'),
      ...at(loop.centre, style),
      [40, loop.radius_m * style.perMetre],
    ];
  if (loop.kind === 'ellipse' && !style.r12) {
    // The major axis comes first; the ratio is at most 1.
    const wide = loop.width_m > loop.length_m;
    const half = Math.max(loop.length_m, loop.width_m) / 2;
    const turn = loop.rotation_rad + (wide ? Math.PI / 2 : 0);
    return [
      ...head('ELLIPSE', layer, style, 'AcDbEllipse'),
      ...at(loop.centre, style),
      ...at({ x_m: half * Math.cos(turn), y_m: half * Math.sin(turn) }, style, 11),
      [40, Math.min(loop.length_m, loop.width_m) / (2 * half)],
      [41, 0],
      [42, 2 * Math.PI],
    ];
  }
  return polylinePairs(loopPath(loop), layer, style);
}

function polylinePairs(path: Path, layer: Layer, style: DxfStyle): Pair[] {
  if (style.r12)
    return [
      ...head('POLYLINE', layer, style, ''),
      [66, 1],
      ...at({ x_m: 0, y_m: 0 }, style),
      [70, 1],
      ...path.flatMap((s): Pair[] => [
        ...head('VERTEX', layer, style, ''),
        ...at(s.from, style),
        [42, s.bulge],
      ]),
      ...head('SEQEND', layer, style, ''),
    ];
  return [
    ...head('LWPOLYLINE', layer, style, 'AcDbPolyline'),
    [90, path.length],
    [70, 1],
    ...path.flatMap((s): Pair[] => [...at(s.from, style).slice(0, 2), [42, s.bulge]]),
  ];
}

function linePairs(line: FileLine, style: DxfStyle): Pair[] {
  return [
    ...head('LINE', 'CENTRE-LINES', style, 'AcDbLine'),
    ...at(line.from, style),
    ...at(line.to, style, 11),
  ];
}

function notePairs(note: FileNote, style: DxfStyle): Pair[] {
  const pairs: Pair[] = [
    ...head('TEXT', 'EDGES', style, 'AcDbText'),
    ...at(note.at, style),
    [40, style.noteHeight],
    [1, plainText(note.text)],
  ];
  return style.r12 ? pairs : [...pairs, [100, 'AcDbText']];
}

/** One line; letters outside ASCII as the format's own \\U+XXXX. */
function plainText(text: string): string {
  let made = '';
  for (const letter of text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').slice(0, 200)) {
    const code = letter.codePointAt(0)!;
    // % and ^ begin codes of their own.
    if (code > 0xffff) made += '?';
    else if (code > 126) made += `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    else made += letter === '^' ? '^ ' : letter;
  }
  return made.replaceAll('%%', '% %');
}

/** Pairs as text. Numbers keep 12 decimals at most and never an exponent. */
export function dxfText(pairs: readonly Pair[]): string {
  return pairs
    .map(([code, value]) => `${code}\n${typeof value === 'number' ? plain(code, value) : value}\n`)
    .join('');
}

function plain(code: number, value: number): string {
  if (!Number.isFinite(value))
    throw new RangeError(`writeDxf: ${value} at group code ${code}; allowed: finite`);
  if (!((code >= 10 && code <= 59) || (code >= 140 && code <= 147))) return String(value);
  const text = value.toFixed(12).replace(/0+$/, '');
  const short = text.endsWith('.') ? `${text}0` : text;
  return short === '-0.0' ? '0.0' : short;
}
