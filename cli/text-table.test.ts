import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TABLE_WIDTH, table, wrap } from './text-table.ts';

describe('a table in plain text', () => {
  it('is as wide as what stands in it, two spaces apart, figures to the right', () => {
    expect(
      table(
        ['cup', 'colour'],
        [
          ['1', 'ink'],
          ['12', 'sea green'],
        ],
        { right: [0] },
      ),
    ).toEqual(['  cup  colour', '  ---  ---------', '    1  ink', '   12  sea green']);
  });

  it('goes on in further lines where it would be too wide, the widest column first', () => {
    expect(table(['a', 'b'], [['1', 'one two three four']], { right: [0] }, 16)).toEqual([
      '  a  b',
      '  -  -----------',
      '  1  one two',
      '     three four',
    ]);
  });

  it('never breaks a column that has to stay whole', () => {
    const lines = table(['a', 'b'], [['a long cell of text', 'another long cell']], { whole: [0] }, 34);
    expect(lines[2]).toContain('a long cell of text');
  });

  it('is told as a head and a rule when there is no row', () => {
    expect(table(['a', 'bc'], [])).toEqual(['  a  bc', '  -  --']);
  });

  it('stays within its width and loses no letter, whatever stands in it', () => {
    const cell = fc.string({ maxLength: 300 });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { maxLength: 6 }), (rows) => {
        const lines = table(['first', 'second', 'third'], rows);
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(TABLE_WIDTH);
        const letters = (text: string) => [...text.replace(/\s/g, '')].sort().join('');
        expect(letters(lines.slice(2).join(''))).toBe(letters(rows.flat().join('')));
      }),
      { seed: 3 },
    );
  });
});

describe('breaking a text into lines', () => {
  it('puts the mark on the first line and indents the rest', () => {
    expect(wrap('one two three', 9, '- ', '  ')).toEqual(['- one two', '  three']);
  });

  it('keeps a figure with its unit and its fraction', () => {
    expect(wrap('wrapped along 123 5/8 in of edge', 22)).toEqual(['wrapped along', '123 5/8 in of edge']);
    expect(wrap('closes after 3 h 56 at last', 16)).toEqual(['closes after', '3 h 56 at last']);
    expect(wrap('this holds 4.4 fl oz of it', 16)).toEqual(['this holds', '4.4 fl oz of it']);
    expect(wrap('it is now 104 °F here', 12)).toEqual(['it is now', '104 °F here']);
  });

  it('breaks a word longer than a line, and gives one empty line for no text', () => {
    expect(wrap('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']);
    expect(wrap('', 10)).toEqual(['']);
    expect(wrap('  ', 10, '- ')).toEqual(['- ']);
  });

  it('never makes a longer line than asked', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 400 }), fc.integer({ min: 3, max: 60 }), (text, width) => {
        for (const line of wrap(text, width, '- ')) expect(line.length).toBeLessThanOrEqual(width);
      }),
      { seed: 4 },
    );
  });
});
