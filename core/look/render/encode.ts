/** Linear light to the bytes of a picture, by a table: a picture has millions of them. */
import { encodeSrgb } from '../srgb.ts';

/** Steps of a twentieth of a code value in the darkest part, less elsewhere. */
const STEPS = 65_535;

const bytes = Uint8Array.from({ length: STEPS + 1 }, (_, step) => Math.round(encodeSrgb(step / STEPS) * 255));

/** Code value 0 to 255; light outside 0 to 1 is cut off. */
export function byteOfLight(light: number): number {
  return light <= 0 ? 0 : light >= 1 ? 255 : bytes[(light * STEPS + 0.5) | 0]!;
}
