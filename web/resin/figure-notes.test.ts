import { describe, expect, it } from 'vitest';
import { fitCard } from '#core/resin/fit-card.ts';
import { readCard } from '#core/resin/read-card.ts';
import { figureNotes } from './figure-notes.ts';

const notesOf = (label: readonly object[]) => {
  const read = readCard({
    format: 'pourwright resin 1',
    id: 'x',
    name: 'X',
    mix: { byVolume: '2:1' },
    label,
  });
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const { account } = fitCard(read.value);
  return read.value.label.figures.map((figure) => figureNotes(figure, account));
};

describe('notes beside the figures of a label', () => {
  it('name both figures that contradict each other, at both', () => {
    const [film, cup] = notesOf([
      { kind: 'working time', value: '90 min', temperature: '24 C', film: '2.5 mm' },
      { kind: 'pot life', value: '6 min', mass: '100 g', temperature: '24 C', end: '40 C' },
    ]);
    for (const note of [film![0]!, cup![0]!]) {
      expect(note.tone).toBe('stop');
      expect(note.words).toMatch(/working time/i);
      expect(note.words).toMatch(/pot life/i);
    }
  });

  it('say of the first figure what it narrows, and of one that repeats the rest that it tells nothing', () => {
    const [working, cure] = notesOf([
      { kind: 'working time', value: '40 min', temperature: '24 C' },
      { kind: 'full cure', value: '7 d' },
    ]);
    expect(working![0]!.words).toMatch(/^Tells most about how fast it is: \d+ % narrower/);
    expect(cure).toEqual([{ tone: 'quiet', words: 'Agrees with the rest and tells nothing new.' }]);
  });
});
