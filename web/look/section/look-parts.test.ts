import { describe, expect, it } from 'vitest';
import { emptyLook, LookMoveDocument } from '#core/look/look-document.ts';
import { approvalState, sampleWords } from './approval.ts';
import { drawnMove, type Spot, thinned } from './board-place.ts';
import { lookCautions } from './look-cautions.ts';
import { fieldsOf, fieldText, readField } from './move-fields.ts';
import { firstTools } from './tools.ts';

const tools = firstTools('2', 0.001, [0.5, 0.3]);
const line: Spot[] = [
  [0.1, 0.1],
  [0.15, 0.1001],
  [0.2, 0.1],
  [0.3, 0.2],
];

describe('a hand on the picture', () => {
  it('pours a round puddle by a tap and a ribbon by a drag', () => {
    expect(drawnMove(tools.puddle, [[0.2, 0.3]], 0.002)).toMatchObject({ path: [[0.2, 0.3]] });
    expect(drawnMove(tools.puddle, line, 0.001)).toMatchObject({
      path: [
        [0.1, 0.1],
        [0.2, 0.1],
        [0.3, 0.2],
      ],
    });
  });

  it('pulls and combs only by a drag', () => {
    expect(drawnMove(tools.stroke, [[0.2, 0.3]], 0.002)).toBeNull();
    expect(drawnMove(tools.comb, [[0.2, 0.3]], 0.002)).toBeNull();
    expect(
      drawnMove(
        tools.comb,
        [
          [0.2, 0],
          [0.2, 0.1],
        ],
        0.001,
      ),
    ).toMatchObject({ pull_m: 0.1, heading_rad: Math.PI / 2 });
  });

  it('makes a long path short without leaving out its bends', () => {
    const circle = Array.from(
      { length: 400 },
      (_, i): Spot => [Math.cos((i / 400) * 6), Math.sin((i / 400) * 6)],
    );
    const short = thinned(circle, 1e-4, 24);
    expect(short.length).toBeLessThanOrEqual(24);
    expect(short.length).toBeGreaterThan(8);
  });
});

describe('a move by figures', () => {
  it('reads every figure it writes, in both systems', () => {
    for (const move of Object.values(tools))
      for (const field of fieldsOf(move))
        for (const system of ['us', 'metric'] as const) {
          const read = readField(fieldText(field, system), field, system);
          if (!read.ok) throw new Error(`${move.kind} ${field.key}: ${read.problems[0]!.message}`);
          expect(Math.abs(read.value - field.value)).toBeLessThanOrEqual(
            Math.max(0.0009, Math.abs(field.value) * 0.03),
          );
        }
  });

  it('stays a move the document takes', () => {
    for (const move of Object.values(tools))
      for (const field of fieldsOf(move))
        expect(
          LookMoveDocument.safeParse(field.put(Math.max(field.least, 1e-4))).success ||
            field.kind === 'count',
        ).toBe(true);
  });

  it('says what is allowed of a figure it cannot use', () => {
    const teeth = fieldsOf(tools.comb).find(({ key }) => key === 'teeth')!;
    const read = readField('2.5', teeth, 'us');
    expect(read.ok ? null : read.problems[0]!.allowed).toBe('a whole number from 1 to 100');
  });

  it('takes a place left of the work', () => {
    const x = fieldsOf(tools.puddle).find(({ key }) => key === 'place-0-x')!;
    expect(readField(fieldText({ ...x, value: -0.03 }, 'metric'), x, 'metric')).toMatchObject({
      ok: true,
      value: -0.03,
    });
  });
});

describe('cautions', () => {
  it('stand where a colourant calls for them', () => {
    const colour = { name: 'copper', load: '4 %' };
    expect(lookCautions([{ ...colour, colourant: 'none', load: '' }])).toEqual([]);
    expect(lookCautions([{ ...colour, colourant: 'mica powder' }]).join(' ')).toMatch(
      /6 %.*copper, 4 %.*dust/s,
    );
    expect(lookCautions([{ ...colour, colourant: 'alcohol ink' }]).join(' ')).toMatch(/no flame/);
    expect(lookCautions([{ ...colour, colourant: 'pigment paste', load: '8 %' }])[0]).toMatch(
      /Too much here/,
    );
  });
});

describe('approval', () => {
  it('tells the look that was approved from one changed since', () => {
    const approved = { hash: 'a', sample: '' };
    expect(approvalState(emptyLook().approved, 'a')).toBe('none');
    expect(approvalState(approved, 'a')).toBe('as it is');
    expect(approvalState(approved, 'b')).toBe('changed');
  });

  it('names the panel and who approved', () => {
    expect(sampleWords(' A. Hart ', 'B3')).toBe('panel B3, by A. Hart.');
    expect(sampleWords('A. Hart', '')).toBe('by A. Hart, without a sample.');
  });
});
