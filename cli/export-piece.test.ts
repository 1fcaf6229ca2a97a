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
