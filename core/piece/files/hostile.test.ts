import { describe, expect, it } from 'vitest';
import { readDxf } from './read-dxf.ts';
import { readSvg } from './read-svg.ts';

const dxf = (entities: string, header = '  9\n$INSUNITS\n 70\n4\n', blocks = ''): string =>
  `0\nSECTION\n2\nHEADER\n${header}0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n${blocks}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;
const line = (x1: number | string, y1: number, x2: number, y2: number): string =>
  `0\nLINE\n8\n0\n10\n${x1}\n20\n${y1}\n11\n${x2}\n21\n${y2}\n`;
const box = line(0, 0, 500, 0) + line(500, 0, 500, 300) + line(500, 300, 0, 300) + line(0, 300, 0, 0);
const svg = (inside: string, size = 'width="100mm" height="100mm" viewBox="0 0 100 100"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${inside}</svg>`;
const codes = (read: ReturnType<typeof readDxf>): string[] =>
  read.ok ? [] : read.problems.map((p) => p.code);
/** Every answer is promised within 5 s on a quiet machine; here only a reader that hangs is caught. */
const HANGS = 60_000;

describe('drawings that cannot be used', () => {
  it('asks for the unit when the file does not say it, with the size in its units', () => {
    const read = readDxf(dxf(box, ''));
    expect(codes(read)).toEqual(['file.unit']);
    expect(!read.ok && read.problems[0]!.read).toBe('500 by 300 of its units over everything');
    const told = readDxf(dxf(box, ''), { unit: 'in' });
    expect(told.ok && told.value.bounds.maxX_m).toBeCloseTo(12.7, 12);
    expect(codes(readSvg(svg('<rect width="9" height="5"/>', 'width="9" height="5"')))).toEqual([
      'file.unit',
    ]);
  });

  it('closes gaps up to the joining distance and says where a wider one is', () => {
    const gap = (by: number) => dxf(box.replace('11\n500\n21\n0', `11\n${500 - by}\n21\n0`));
    const joined = readDxf(gap(0.05));
    expect(joined.ok && joined.value.joined.largestGap_m).toBeCloseTo(5e-5, 9);
    const open = readDxf(gap(2));
    expect(codes(open)).toEqual(['file.open-loop', 'file.open-loop']);
    expect(!open.ok && open.problems[0]!.read).toContain('gap 2.000 mm');
  });

  it('says where a shape crosses itself', () => {
    const bow = line(0, 0, 100, 100) + line(100, 100, 100, 0) + line(100, 0, 0, 100) + line(0, 100, 0, 0);
    const read = readDxf(dxf(bow));
    expect(codes(read)).toEqual(['file.crosses-itself']);
    expect(!read.ok && read.problems[0]!.read).toBe('at x 50.00 mm, y 50.00 mm');
  });

  it('refuses what is no number, naming the line', () => {
    for (const word of ['NaN', 'inf', '1e999', 'x'])
      expect(codes(readDxf(dxf(line(word, 0, 1, 1))))).toEqual(['file.number']);
    expect(codes(readSvg(svg('<circle r="NaN"/>')))).toEqual(['file.number']);
    expect(codes(readSvg(svg('<path d="M0 0 L nan 3Z"/>')))).toEqual(['file.path']);
    expect(codes(readSvg(svg('<path d="M0 0 L1e999 3Z"/>')))).toEqual(['file.number']);
  });

  it('refuses what is no drawing', () => {
    for (const text of [
      '',
      'hello',
      '{}',
      '\u0000\u0001',
      'AutoCAD Binary DXF\r\n',
      '0\nSECTION\n2\nENTITIES\n',
    ])
      expect(readDxf(text).ok).toBe(false);
    for (const text of ['', 'hello', '<html/>', '<svg', '<svg><g></svg>'])
      expect(readSvg(text).ok).toBe(false);
  });

  it(
    'answers files over 10 MB, 100,000 points and tangles',
    () => {
      expect(codes(readDxf('0\n'.repeat(6_000_000)))).toEqual(['file.too-large']);
      expect(codes(readSvg('<'.repeat(10_000_001)))).toEqual(['file.too-large']);
      const many = Array.from({ length: 100_001 }, (_, i) => `10\n${i}\n20\n${i % 7}\n`).join('');
      expect(codes(readDxf(dxf(`0\nLWPOLYLINE\n8\n0\n70\n1\n${many}`)))).toEqual(['file.too-many-points']);
      const points = Array.from({ length: 100_002 }, (_, i) => `${i},${i % 7}`).join(' ');
      expect(codes(readSvg(svg(`<polygon points="${points}"/>`)))).toEqual(['file.too-many-points']);
      // A comb of long teeth: nothing crosses, every tooth lies over every other along one axis.
      const comb = Array.from(
        { length: 20_000 },
        (_, i) => `${i % 4 === 1 || i % 4 === 2 ? 900 : 0},${i * 0.01}`,
      );
      const toothed = readSvg(svg(`<polygon points="-1,0 ${comb.join(' ')} -1,200"/>`));
      expect(codes(toothed)).toEqual([]);
      const fan = Array.from({ length: 40_000 }, (_, i) => `${i % 2 === 0 ? 0 : 900},${(i * 7919) % 900}`);
      expect(codes(readSvg(svg(`<polygon points="${fan.join(' ')}"/>`)))).toEqual(['file.crosses-itself']);
      const knot = Array.from({ length: 50_000 }, (_, i) => line(0, 0, Math.cos(i), Math.sin(i))).join('');
      expect(codes(readDxf(dxf(knot)))).toEqual(['file.knot']);
    },
    HANGS,
  );

  it(
    'answers bombs of blocks and of entities',
    () => {
      const insert = (name: string, extra = '') => `0\nINSERT\n8\n0\n2\n${name}\n10\n0\n20\n0\n${extra}`;
      const block = (name: string, inside: string) =>
        `0\nBLOCK\n2\n${name}\n10\n0\n20\n0\n${inside}0\nENDBLK\n`;
      const tower = Array.from({ length: 12 }, (_, i) => block(`b${i}`, insert(`b${i + 1}`).repeat(10))).join(
        '',
      );
      expect(codes(readDxf(dxf(insert('b0'), undefined, tower)))).toEqual(['file.blocks']);
      expect(codes(readDxf(dxf(insert('a'), undefined, block('a', insert('a')))))).toEqual(['file.blocks']);
      const grid = insert('a', '70\n32000\n71\n32000\n');
      expect(codes(readDxf(dxf(grid, undefined, block('a', box))))).toEqual(['file.blocks']);
      const laughs = '<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><svg>&b;</svg>';
      expect(codes(readSvg(laughs))).toEqual(['file.doctype']);
      expect(codes(readSvg(svg('&nope;')))).toEqual(['file.not-xml']);
      expect(codes(readSvg(svg('<g>'.repeat(300_000))))).toEqual(['file.too-deep']);
    },
    HANGS,
  );

  it('judges how far out an arc lies by its points, not by its centre', () => {
    // Rises by 0.002 mm over half a metre: its centre is 16 km away.
    const flat = (x: number) =>
      dxf(
        `0\nLWPOLYLINE\n8\n0\n90\n4\n70\n1\n10\n0\n20\n0\n42\n0.000008\n10\n${x}\n20\n0\n10\n${x}\n20\n300\n10\n0\n20\n300\n`,
      );
    const read = readDxf(flat(500));
    expect(codes(read)).toEqual([]);
    expect(read.ok && read.value.bounds.minY_m).toBeCloseTo(-2e-6, 8);
    expect(codes(readDxf(flat(2e9)))).toEqual(['file.far-away']);
    const arc = '0\nARC\n8\n0\n10\n0\n20\n0\n40\n2000000\n50\n0\n51\n90\n';
    expect(codes(readDxf(dxf(arc)))).toEqual(['file.far-away']);
    const circle = '0\nCIRCLE\n8\n0\n10\n0\n20\n0\n40\n2000000\n';
    expect(codes(readDxf(dxf(circle)))).toEqual(['file.far-away']);
  });

  it('places blocks, mirrored and scaled, and turns y up', () => {
    const block = `0\nBLOCK\n2\nsink\n10\n0\n20\n0\n0\nCIRCLE\n8\n0\n10\n10\n20\n10\n40\n5\n0\nENDBLK\n`;
    const insert = '0\nINSERT\n8\nholes\n2\nsink\n10\n300\n20\n100\n41\n-2\n42\n2\n';
    const read = readDxf(dxf(box + insert, undefined, block));
    expect(read.ok && read.value.cutOuts[0]!.layer).toBe('holes');
    expect(read.ok && Math.min(...read.value.cutOuts[0]!.path.map((s) => s.from.x_m))).toBeCloseTo(0.27, 9);
  });
});
