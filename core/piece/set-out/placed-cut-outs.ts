/** Cut-outs as they are marked: centre and edges from the two datum edges. */

import { cutOutSize } from '../cut-out-size.ts';
import { cutOutPath } from '../outline.ts';
import { bounds } from '../path.ts';
import type { Bounds, CutOut } from '../piece.ts';
import { type Coordinates, type Datums, fromDatums } from './datum.ts';

export interface SetOutCutOut {
  readonly name: string;
  readonly shape: CutOut['shape'];
  /** Along its own axes; a round one has the same for both. */
  readonly length_m: number;
  readonly width_m: number;
  /** 0 for all but a rectangle. */
  readonly cornerRadius_m: number;
  /** Counter-clockwise seen from above. */
  readonly rotation_rad: number;
  readonly rim: CutOut['rim'];
  readonly centre: Coordinates;
  /** Nearest and furthest point of the rim from each datum. */
  readonly near: Coordinates;
  readonly far: Coordinates;
  /** From the rim to the side of the box round the piece opposite each datum. */
  readonly beyond: Coordinates;
}

export function placeCutOut(cutOut: CutOut, box: Bounds, datums: Datums): SetOutCutOut {
  const rim = bounds(cutOutPath(cutOut));
  const one = fromDatums({ x_m: rim.minX_m, y_m: rim.minY_m }, datums);
  const two = fromDatums({ x_m: rim.maxX_m, y_m: rim.maxY_m }, datums);
  const near = { across_m: Math.min(one.across_m, two.across_m), up_m: Math.min(one.up_m, two.up_m) };
  const far = { across_m: Math.max(one.across_m, two.across_m), up_m: Math.max(one.up_m, two.up_m) };
  return {
    name: cutOut.name,
    shape: cutOut.shape,
    ...cutOutSize(cutOut),
    cornerRadius_m: cutOut.shape === 'rectangle' ? cutOut.cornerRadius_m : 0,
    rotation_rad: cutOut.rotation_rad ?? 0,
    rim: cutOut.rim,
    centre: fromDatums(cutOut.centre, datums),
    near,
    far,
    beyond: {
      across_m: box.maxX_m - box.minX_m - far.across_m,
      up_m: box.maxY_m - box.minY_m - far.up_m,
    },
  };
}
