/** How long a user unit of an SVG drawing is (W3C, Scalable Vector Graphics 1.1, chapters 7.2 to 7.10). */

import { type Affine, stretch } from './affine.ts';
import { type DrawingUnit, unitLength_m, unitOfWord } from './drawing-unit.ts';
import { refuse } from './imported-drawing.ts';
import { svgLength, svgNumbers } from './svg-number.ts';

export interface SvgSize {
  /** From user units to metres, y up. */
  readonly toMetres: Affine;
  readonly unit: DrawingUnit;
  readonly said: boolean;
}

/**
 * Width and height in mm, cm, in, pt or pc over a viewBox say how long a user unit is; bare numbers and px do not, since
 * programs disagree how many go to the inch. `asked` is then the unit of a user unit.
 */
export function svgSize(
  attributes: Readonly<Record<string, string>>,
  asked: DrawingUnit | undefined,
): SvgSize {
  const box = attributes.viewBox === undefined ? undefined : svgNumbers(attributes.viewBox);
  if (box !== undefined && !(box.length === 4 && box[2]! > 0 && box[3]! > 0))
    refuse(
      'file.view-box',
      'The viewBox of the drawing has no size.',
      attributes.viewBox!.slice(0, 40),
      'four numbers, the last two above 0',
    );
  const along = (
    key: 'width' | 'height',
    size: number | undefined,
  ): { scale: number; unit: DrawingUnit } | undefined => {
    const length = svgLength(attributes[key]);
    const unit = length === undefined ? undefined : unitOfWord(length.unit);
    if (length === undefined || unit === undefined || unit === 'px' || !(length.value > 0)) return undefined;
    // Without a viewBox a user unit is a CSS pixel whatever the width is in.
    return {
      unit,
      scale: size === undefined ? unitLength_m('px') : (length.value * unitLength_m(unit)) / size,
    };
  };
  const x = along('width', box?.[2]);
  const y = along('height', box?.[3]);
  const first = x ?? y;
  if (asked !== undefined || first === undefined) {
    const unit = asked ?? 'px';
    const scale = unitLength_m(unit);
    return { toMetres: stretch(scale, -scale), unit, said: asked !== undefined };
  }
  const own = attributes.preserveAspectRatio?.trim() === 'none';
  const even = Math.min(x?.scale ?? Infinity, y?.scale ?? Infinity);
  const sx = own ? (x ?? first).scale : even;
  const sy = own ? (y ?? first).scale : even;
  return { toMetres: stretch(sx, -sy), unit: first.unit, said: true };
}
