import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDxf } from '#core/piece/files/read-dxf.ts';
import { readSvg } from '#core/piece/files/read-svg.ts';
import { run } from './run.ts';

const vanity = readFileSync(new URL('../examples/vanity-vessel-sink.json', import.meta.url), 'utf8');
const asked = (args: string, text = vanity) => run(args.split(' '), () => text);

describe('a piece as a drawing', () => {
  it('is written in every kind, and reads as the same size', () => {
    const sizes = [
      readDxf(asked('export a.json').out),
      readDxf(asked('export a.json --as dxf-r12 --units metric').out),
      readSvg(asked('export a.json --as svg').out),
    ].map((read) => {
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      return read.value.bounds.maxX_m - read.value.bounds.minX_m;
    });
    expect(sizes[1]).toBeCloseTo(sizes[0]!, 9);
    expect(sizes[2]).toBeCloseTo(sizes[0]!, 9);
  });

  it('refuses an unknown kind, and a job without a sound piece', () => {
    expect(asked('export a.json --as dwg')).toMatchObject({ exitCode: 1, out: '' });
    const job = JSON.parse(vanity) as { piece: unknown };
    job.piece = {};
    expect(asked('export a.json', JSON.stringify(job))).toMatchObject({ exitCode: 2, out: '' });
  });
});

describe('a job of several pieces', () => {
  const job = JSON.parse(vanity) as { piece: object; otherPieces: object[] };
  const shelf = { id: 'b', name: 'shelf', bodyThickness: '1 in' };
  const outline = { shape: 'rectangle', length: '36 in', width: '10 in' };
  job.otherPieces = [{ ...shelf, outline }, { id: 'c' }];
  const text = JSON.stringify(job);

  it('hands out the one that is named, by name or id', () => {
    const found = readDxf(asked('export a.json --piece shelf', text).out);
    expect(found.ok && found.value.bounds.maxX_m - found.value.bounds.minX_m).toBeCloseTo(0.9144, 9);
    expect(asked('export a.json --piece b', text)).toEqual(asked('export a.json --piece shelf', text));
    expect(asked('export a.json', text).out).toBe(asked('export a.json').out);
  });

  it('says which there are, and which cannot be drawn', () => {
    expect(asked('export a.json --piece stool', text)).toMatchObject({ exitCode: 1, out: '' });
    expect(asked('export a.json --piece stool', text).err).toContain('piece 1, shelf, piece 3');
    expect(asked('export a.json --piece c', text)).toMatchObject({ exitCode: 2, out: '' });
  });

  it('lists all of them in the plan, and where each coat goes', () => {
    job.otherPieces.pop();
    const plan = asked('plan a.json', JSON.stringify(job)).out;
    expect(plan).toMatch(/^piece {2}piece 1: 42 in x 21 1\/2 in/m);
    expect(plan).toMatch(/^piece {2}shelf: 36 in x 10 in/m);
    expect(plan).toMatch(/ON PIECE 1, SHELF/);
    expect(asked('plan a.json').out).not.toMatch(/ON PIECE|piece 1/);
  });
});
