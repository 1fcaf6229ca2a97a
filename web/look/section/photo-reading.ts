/** A photograph of a finished top beside its plan: which part is the top, what is known to be grey or white, and what comes of it. Pure. */
import { type Lab, labOfLinear } from '#core/look/lab.ts';
import { type PatchSizes, patchSizes } from '#core/look/photo-brief.ts';
import { byWhite, correctPhoto } from '#core/look/photo-reference.ts';
import {
  differencesToPlan,
  type PhotoColour,
  type PlanDifference,
  photoColours,
} from '#core/look/photo-shares.ts';
import { decodeSrgb, type LinearRgb } from '#core/look/srgb.ts';

/** Parts of the width and the height, 0 to 1, from the top left. */
export interface PhotoFrame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface PhotoReferenceSpot {
  readonly x: number;
  readonly y: number;
  /** What it gives back: 0.18 for a grey card, 0.82 for a white one. */
  readonly known: number;
}

export interface PhotoPixels {
  readonly columns: number;
  readonly rows: number;
  /** Four bytes a pixel. */
  readonly rgba: Uint8ClampedArray;
}

export interface PhotoReading {
  readonly colours: readonly PhotoColour[];
  readonly differences: readonly PlanDifference[];
  readonly sizes: PatchSizes;
  /** Delta E 2000 of a colour read this way; null without a reference. */
  readonly error: number | null;
  /** The reference is too dark, cut off, or not there. */
  readonly referenceUsed: boolean;
}

const PATCH = 4;

/** Mean light round a spot. */
export function lightAt({ columns, rows, rgba }: PhotoPixels, x: number, y: number): LinearRgb {
  const [column, row] = [Math.round(x * (columns - 1)), Math.round(y * (rows - 1))];
  const sum = [0, 0, 0];
  let count = 0;
  for (let r = Math.max(0, row - PATCH); r <= Math.min(rows - 1, row + PATCH); r++)
    for (let c = Math.max(0, column - PATCH); c <= Math.min(columns - 1, column + PATCH); c++) {
      for (const i of [0, 1, 2]) sum[i]! += decodeSrgb(rgba[4 * (r * columns + c) + i]! / 255);
      count++;
    }
  return [sum[0]! / count, sum[1]! / count, sum[2]! / count];
}

/**
 * Colours and shares of the framed part beside those of the plan, and the size of its patches for a top this wide, m above 0.
 * @throws RangeError where no pixel lies in the frame, or there is no plan.
 */
export function readPhoto(
  pixels: PhotoPixels,
  frame: PhotoFrame,
  reference: PhotoReferenceSpot | null,
  plan: readonly { readonly key: string; readonly lab: Lab; readonly share: number }[],
  width_m: number,
): PhotoReading {
  const { columns, rows, rgba } = pixels;
  const rgb = new Uint8Array(columns * rows * 3);
  for (let at = 0; at < columns * rows; at++) for (const i of [0, 1, 2]) rgb[3 * at + i] = rgba[4 * at + i]!;
  const read = reference === null ? null : lightAt(pixels, reference.x, reference.y);
  const correct = reference === null || read === null ? null : byWhite(read, reference.known);
  const found = photoColours(
    {
      columns,
      rows,
      rgb,
      inside: (column, row) =>
        column >= frame.left * columns &&
        column < frame.right * columns &&
        row >= frame.top * rows &&
        row < frame.bottom * rows,
      ...(correct === null ? {} : { correct }),
    },
    { middles: plan.map(({ lab }) => lab) },
  );
  const error =
    correct === null || reference === null || read === null
      ? null
      : (correctPhoto(lightAt(pixels, (frame.left + frame.right) / 2, (frame.top + frame.bottom) / 2), [
          { read, known: reference.known },
        ])?.error ?? null);
  return {
    colours: found.colours,
    differences: differencesToPlan(plan, found.colours),
    sizes: patchSizes(found, columns, rows, width_m / ((frame.right - frame.left) * columns)),
    error,
    referenceUsed: correct !== null,
  };
}

export const planOf = (
  colours: readonly { readonly key: string; readonly light: LinearRgb }[],
  shares: ReadonlyMap<string, number>,
) => colours.map(({ key, light }) => ({ key, lab: labOfLinear(light), share: shares.get(key) ?? 0 }));
