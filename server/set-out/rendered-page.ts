/** For tests: PDFs read back by other programs (poppler), as words and as pixels. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { debianTools, findProgram } from '../../scripts/debian-tools.ts';

export const POPPLER = debianTools(['poppler-utils'], () =>
  ['pdftotext', 'pdftoppm', 'pdfinfo', 'pdffonts'].every((name) => findProgram(name) !== null),
);

export interface Pixels {
  readonly wide: number;
  readonly high: number;
  /** 0 black to 255 white, row by row. */
  readonly grey: Uint8Array;
}

function inFolder<T>(bytes: Uint8Array, read: (file: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'pdf-'));
  try {
    const file = join(folder, 'in.pdf');
    writeFileSync(file, bytes);
    return read(file, folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The words of each page. */
export function pageTexts(bytes: Uint8Array): string[] {
  return inFolder(bytes, (file) =>
    execFileSync('pdftotext', ['-layout', '-enc', 'UTF-8', file, '-'], { encoding: 'utf8' })
      .split('\f')
      .slice(0, -1),
  );
}

export interface Facts {
  readonly pages: number;
  readonly width_pt: number;
  readonly height_pt: number;
  readonly fonts: string;
}

export function pdfFacts(bytes: Uint8Array): Facts {
  return inFolder(bytes, (file) => {
    const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
    const size = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(info);
    return {
      pages: Number(/Pages:\s+(\d+)/.exec(info)?.[1]),
      width_pt: Number(size?.[1]),
      height_pt: Number(size?.[2]),
      fonts: execFileSync('pdffonts', [file], { encoding: 'utf8' }),
    };
  });
}

/** A page (1 first) as drawn at so many dots an inch. */
export function pixelsOf(bytes: Uint8Array, page: number, perInch: number): Pixels {
  return inFolder(bytes, (file, folder) => {
    const from = String(page);
    execFileSync('pdftoppm', [
      '-gray',
      '-r',
      String(perInch),
      '-f',
      from,
      '-l',
      from,
      file,
      join(folder, 'page'),
    ]);
    const pgm = readFileSync(join(folder, readdirSync(folder).find((name) => name.endsWith('.pgm'))!));
    // "P5", width, height, 255, each followed by one white space, then a byte for each pixel.
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 60).toString('latin1'))!;
    const [wide, high] = [Number(head[1]), Number(head[2])];
    return { wide, high, grey: pgm.subarray(head[0].length) };
  });
}
