/** An SVG drawing read into outline and cut-outs. */

import { SaxesParser } from 'saxes';
import { bad, type Result } from '#core/quantity/problem.ts';
import { type Affine, after } from './affine.ts';
import { assemble } from './assemble.ts';
import { type ChainMaker, chainMaker, tooMany } from './chain.ts';
import {
  checkOptions,
  type ImportedDrawing,
  isMarkLayer,
  leftOutWarning,
  MOST_VERTICES,
  type ReadOptions,
  Refused,
  refuse,
  refuseTooLarge,
} from './imported-drawing.ts';
import { shapeSegments } from './shape.ts';
import { svgTransform } from './svg-number.ts';
import { elementShapes } from './svg-shapes.ts';
import { type SvgSize, svgSize } from './svg-size.ts';
import { unitQuestion } from './unit-question.ts';

const DEEPEST = 256;
/** Their contents are not drawn where they stand. */
const NOT_DRAWN = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'pattern',
  'marker',
  'metadata',
  'style',
  'script',
  'foreignObject',
  'title',
  'desc',
]);
/** Said in the report, since a person sees them in the picture. */
const SEEN = new Set(['text', 'image', 'use', 'svg', 'switch', 'foreignObject']);

interface Level {
  readonly m: Affine;
  readonly layer: string;
  readonly drawn: boolean;
}

/**
 * Reads an SVG drawing: path (arcs and Bezier curves too), rect, circle, ellipse, polygon, polyline and line, with groups
 * and transforms; lengths in metres, curves to `tolerance_m`, y turned upwards. Answers `file.unit` when width and height
 * do not say a length, and a Problem for every file that cannot be used; a document type, and so entities, is refused.
 * Throws RangeError for options outside their range.
 */
export function readSvg(text: string, options: ReadOptions = {}): Result<ImportedDrawing> {
  const { tolerance_m, join_m } = checkOptions(options);
  try {
    refuseTooLarge(text);
    const maker = chainMaker();
    const { size, layers, leftOut } = walk(text, options, tolerance_m, maker);
    const drawing = assemble({
      format: 'svg',
      chains: maker.chains,
      layers: [...layers].map(([name, l]) => ({ name, ...l })),
      leftOut,
      unit: size.unit,
      unitFrom: options.unit === undefined ? 'file' : 'person',
      tolerance_m,
      join_m,
      warnings: leftOutWarning(leftOut),
    });
    return size.said ? drawing : unitQuestion(drawing, size.unit, ['mm', 'in', 'px', 'pt']);
  } catch (error) {
    if (error instanceof Refused) return bad(...error.problems);
    throw error;
  }
}

function walk(text: string, options: ReadOptions, tolerance_m: number, maker: ChainMaker) {
  const levels: Level[] = [];
  const layers = new Map<string, { count: number; used: boolean }>();
  const leftOut: Record<string, number> = {};
  let size: SvgSize | undefined;
  let vertices = 0;
  const parser = new SaxesParser();
  const trouble = (message: string): never =>
    refuse('file.not-xml', 'The file is not a sound SVG drawing.', message.slice(0, 120), 'well-formed SVG');
  parser.on('error', (error) => trouble(error.message));
  parser.on('doctype', () =>
    refuse(
      'file.doctype',
      'The file declares a document type.',
      undefined,
      'SVG without DOCTYPE and entities; save it as plain SVG',
    ),
  );
  parser.on('opentag', (tag) => {
    const attributes = tag.attributes as Readonly<Record<string, string>>;
    const name = tag.name.replace(/^svg:/, '');
    const above = levels[levels.length - 1];
    if (above === undefined) {
      if (name !== 'svg') trouble(`The file begins with ${name}.`);
      size = svgSize(attributes, options.unit);
      levels.push({ m: size.toMetres, layer: '', drawn: true });
      return;
    }
    if (levels.length >= DEEPEST)
      refuse(
        'file.too-deep',
        'Groups lie within groups too deep.',
        String(levels.length),
        `up to ${DEEPEST}`,
      );
    const skipped = above.drawn && SEEN.has(name);
    if (skipped) leftOut[name] = (leftOut[name] ?? 0) + 1;
    const drawn = above.drawn && !skipped && !NOT_DRAWN.has(name) && !hidden(attributes);
    const m =
      drawn && attributes.transform !== undefined
        ? after(above.m, svgTransform(attributes.transform))
        : above.m;
    const label = attributes['inkscape:label'] ?? attributes.id;
    const layer = name === 'g' && above.layer === '' && label !== undefined ? label : above.layer;
    levels.push({ m, layer, drawn });
    const subPaths = drawn ? elementShapes(name, attributes) : undefined;
    if (subPaths === undefined) return;
    const used = options.layers?.includes(layer) ?? !isMarkLayer(layer);
    const known = layers.get(layer) ?? { count: 0, used };
    known.count += 1;
    layers.set(layer, known);
    if (!used) return;
    for (const { shapes, closed } of subPaths) {
      vertices += shapes.length;
      if (vertices > MOST_VERTICES) tooMany();
      maker.add(
        shapes.flatMap((s) => shapeSegments(s, m, tolerance_m)),
        layer,
        closed,
      );
    }
  });
  parser.on('closetag', () => {
    levels.pop();
  });
  parser.write(text.replace(/^\uFEFF/, '')).close();
  if (size === undefined) return trouble('There is no svg element.');
  return { size, layers, leftOut };
}

function hidden(attributes: Readonly<Record<string, string>>): boolean {
  const style = (attributes.style ?? '').replace(/\s/g, '');
  return (
    attributes.display === 'none' ||
    attributes.visibility === 'hidden' ||
    /(^|;)(display:none|visibility:hidden)/.test(style)
  );
}
