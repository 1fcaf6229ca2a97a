/**
 * sRGB code values and linear light (IEC 61966-2-1), both in 0 to 1 per channel. Blending, counting and Kubelka-Munk are
 * done in linear light; code values are for screens and files only. Linear values outside 0 to 1 (saturated resin colours)
 * are kept until a code is asked for.
 */

export type Triple = readonly [number, number, number];

/** Linear light in the three sRGB channels, 1 = the white of the screen. */
export type LinearRgb = Triple;

/** Code value 0 to 1 to linear light. IEC 61966-2-1. */
export function decodeSrgb(code: number): number {
  return code <= 0.04045 ? code / 12.92 : ((code + 0.055) / 1.055) ** 2.4;
}

/** Linear light to the code value 0 to 1; light outside 0 to 1 is cut off. IEC 61966-2-1. */
export function encodeSrgb(linear: number): number {
  const light = Math.min(1, Math.max(0, linear));
  return light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
}

/**
 * Linear light of a colour as "#1f3a5f". Throws RangeError for any other text.
 *
 * linearOfHex('#808080') is 0.215861 three times.
 */
export function linearOfHex(hex: string): LinearRgb {
  if (!/^#[0-9a-f]{6}$/i.test(hex)) throw new RangeError(`a colour as #1f3a5f is needed, not "${hex}"`);
  const code = (at: number) => decodeSrgb(Number.parseInt(hex.slice(at, at + 2), 16) / 255);
  return [code(1), code(3), code(5)];
}

/** The nearest colour a screen can show, as "#1f3a5f". Throws RangeError unless all three are finite. */
export function hexOfLinear(light: LinearRgb): string {
  if (!light.every(Number.isFinite)) throw new RangeError(`finite light is needed, not ${light.join(', ')}`);
  return `#${light
    .map((c) =>
      Math.round(encodeSrgb(c) * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}
