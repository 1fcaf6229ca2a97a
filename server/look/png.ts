/** PNG files (ISO/IEC 15948): eight bits a channel, red, green, blue and alpha, with the size of a pixel. */
import { crc32, deflateSync } from 'node:zlib';

const SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];

/**
 * @param pixels RGBA, four bytes a pixel, row by row.
 * @param pixel_m size of a pixel on the real thing, m; kept in whole pixels a metre.
 * @throws RangeError unless `pixels` holds columns times rows of them.
 */
export function png(
  pixels: Uint8Array | Uint8ClampedArray,
  columns: number,
  rows: number,
  pixel_m?: number,
): Uint8Array<ArrayBuffer> {
  if (pixels.length !== 4 * columns * rows)
    throw new RangeError(
      `${columns} by ${rows} pixels need ${4 * columns * rows} bytes, not ${pixels.length}`,
    );
  const wide = 4 * columns;
  // Each row says how it is packed: 1, as differences to the pixel on its left; films of one colour become zeros.
  const lines = new Uint8Array(rows * (wide + 1));
  for (let row = 0; row < rows; row++) {
    const to = row * (wide + 1);
    const from = row * wide;
    lines[to] = 1;
    for (let i = 0; i < wide; i++)
      lines[to + 1 + i] = pixels[from + i]! - (i < 4 ? 0 : pixels[from + i - 4]!);
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(columns, 0);
  header.writeUInt32BE(rows, 4);
  header.set([8, 6, 0, 0, 0], 8);
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
