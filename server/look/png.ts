/** PNG files (ISO/IEC 15948): eight bits a channel, with the size of a pixel. */
import { crc32, deflateSync } from 'node:zlib';

const SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];

export interface PngWishes {
  /** Size of a pixel on the real thing, m; kept in whole pixels a metre. */
  readonly pixel_m?: number;
  /** Laid on white, without transparency. */
  readonly onWhite?: boolean;
}

/**
 * @param pixels RGBA, four bytes a pixel, row by row.
 * @throws RangeError unless `pixels` holds columns times rows of them.
 */
export function png(
  pixels: Uint8Array | Uint8ClampedArray,
  columns: number,
  rows: number,
  { pixel_m, onWhite = false }: PngWishes = {},
): Uint8Array<ArrayBuffer> {
  if (pixels.length !== 4 * columns * rows)
    throw new RangeError(
      `${columns} by ${rows} pixels need ${4 * columns * rows} bytes, not ${pixels.length}`,
    );
  const each = onWhite ? 3 : 4;
  const wide = each * columns;
  // Each row says how it is packed: 1, as differences to the pixel on its left; films of one colour become zeros.
  const lines = new Uint8Array(rows * (wide + 1));
  const value = (at: number, channel: number): number => {
    if (!onWhite) return pixels[at + channel]!;
    const alpha = pixels[at + 3]!;
    return alpha === 255
      ? pixels[at + channel]!
      : 255 + Math.round(((pixels[at + channel]! - 255) * alpha) / 255);
  };
  for (let row = 0; row < rows; row++) {
    let to = row * (wide + 1);
    lines[to++] = 1;
    for (let column = 0; column < columns; column++)
      for (let channel = 0; channel < each; channel++) {
        const at = 4 * (row * columns + column);
        lines[to++] = value(at, channel) - (column === 0 ? 0 : value(at - 4, channel));
      }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(columns, 0);
  header.writeUInt32BE(rows, 4);
  header.set([8, onWhite ? 2 : 6, 0, 0, 0], 8);
  const chunks = [chunk('IHDR', header), chunk('sRGB', Buffer.of(0))];
  if (pixel_m !== undefined) {
    const density = Buffer.alloc(9);
    const perMetre = Math.min(0xffffffff, Math.max(1, Math.round(1 / pixel_m)));
    density.writeUInt32BE(perMetre, 0);
    density.writeUInt32BE(perMetre, 4);
    density[8] = 1;
    chunks.push(chunk('pHYs', density));
  }
  chunks.push(chunk('IDAT', deflateSync(lines, { level: 6 })), chunk('IEND', Buffer.alloc(0)));
  return new Uint8Array(Buffer.concat([Buffer.from(SIGNATURE), ...chunks]));
}

function chunk(name: string, data: Uint8Array): Buffer {
  const out = Buffer.alloc(12 + data.length);
  out.writeUInt32BE(data.length, 0);
  out.write(name, 4, 'latin1');
  out.set(data, 8);
  out.writeUInt32BE(crc32(out.subarray(4, 8 + data.length)), 8 + data.length);
  return out;
}
