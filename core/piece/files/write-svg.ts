/** A piece as an SVG file: true scale in mm, one group a layer. */

import { turning_rad } from '../arc.ts';
import type { Path, Piece, Point } from '../piece.ts';
import { type FileLoop, pieceLoops } from './piece-loops.ts';

/** Margin round everything, m. */
const MARGIN_M = 0.005;

/**
 * The piece seen from above, one user unit a millimetre, width and height in mm, y pointing down as SVG has it (so the
 * front edge is at the bottom). Ovals are true ellipses. Throws RangeError when the piece's sizes cannot be built: ask
 * `reviewPiece` first.
 */
export function writeSvg(piece: Piece): string {
  const { outline, cutOuts, centreLines, notes, from, to } = pieceLoops(piece);
  const width = mm(to.x_m - from.x_m + 2 * MARGIN_M);
  const height = mm(to.y_m - from.y_m + 2 * MARGIN_M);
  const box = `${mm(from.x_m - MARGIN_M)} ${mm(-to.y_m - MARGIN_M)} ${width} ${height}`;
  const group = (id: string, attributes: string, lines: readonly string[]): string =>
    `  <g id="${id}" ${attributes}>\n${lines.map((line) => `    ${line}\n`).join('')}  </g>\n`;
  const pen = (colour: string): string => `fill="none" stroke="${colour}" stroke-width="0.25"`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>\n',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${box}">\n`,
    group('outline', pen('#222222'), [loopElement(outline)]),
    group('cut-outs', pen('#b02a1a'), cutOuts.map(loopElement)),
    group(
      'centre-lines',
      `${pen('#2a6f97')} stroke-dasharray="8 1.5 1.5 1.5"`,
      centreLines.map(
        (l) =>
          `<line x1="${mm(l.from.x_m)}" y1="${mm(-l.from.y_m)}" x2="${mm(l.to.x_m)}" y2="${mm(-l.to.y_m)}"/>`,
      ),
    ),
    group(
      'edges',
      'fill="#222222" font-family="sans-serif" font-size="8" text-anchor="middle"',
      notes.map((n) => `<text x="${mm(n.at.x_m)}" y="${mm(-n.at.y_m)}">${escaped(n.text)}</text>`),
    ),
    '</svg>\n',
  ].join('');
}

function loopElement(loop: FileLoop): string {
  if (loop.kind === 'path') return `<path d="${pathData(loop.path)}"/>`;
  const { x_m, y_m } = loop.centre;
  if (loop.kind === 'circle') return `<circle cx="${mm(x_m)}" cy="${mm(-y_m)}" r="${mm(loop.radius_m)}"/>`;
  const turn = (-loop.rotation_rad * 180) / Math.PI;
  const turned = turn === 0 ? '' : ` transform="rotate(${plain(turn)} ${mm(x_m)} ${mm(-y_m)})"`;
  return `<ellipse cx="${mm(x_m)}" cy="${mm(-y_m)}" rx="${mm(loop.length_m / 2)}" ry="${mm(loop.width_m / 2)}"${turned}/>`;
}

function pathData(path: Path): string {
  const spot = (p: Point): string => `${mm(p.x_m)} ${mm(-p.y_m)}`;
  const steps = path.map((s) => {
    if (s.bulge === 0) return `L${spot(s.to)}`;
    const chord = Math.hypot(s.to.x_m - s.from.x_m, s.to.y_m - s.from.y_m);
    const radius = mm((chord * (1 + s.bulge * s.bulge)) / (4 * Math.abs(s.bulge)));
    const large = Math.abs(turning_rad(s)) > Math.PI ? 1 : 0;
    // Counter-clockwise here is the negative way round with y down.
    return `A${radius} ${radius} 0 ${large} ${s.bulge > 0 ? 0 : 1} ${spot(s.to)}`;
  });
  return `M${spot(path[0]!.from)}${steps.join('')}Z`;
}

function mm(length_m: number): string {
  return plain(length_m * 1000);
}

function plain(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`writeSvg: ${value}; allowed: finite`);
  const text = value.toFixed(9).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/** XML text: no control characters, no lone surrogates, nothing that could be a tag. */
function escaped(text: string): string {
  return text
    .slice(0, 200)
    .toWellFormed()
    .replace(/[\p{Cc}\uFFFE\uFFFF]/gu, ' ')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;');
}
