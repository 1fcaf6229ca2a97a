import { describe, expect, it } from 'vitest';
import { emptyFit, type FitDocument } from '#core/job/fit-document.ts';
import { fitPicture } from './fit-picture.ts';
import { jointWords, loadWords, madeSizes, makeWords, swingWords, wallWords, wayLines } from './fit-words.ts';

const inch = 0.0254;
const width = (text: string, at: string) => ({ width: text, at });
const alcove: FitDocument = {
  ...emptyFit(),
  depth: '21 in',
  backGap: '1/16 in',
  alcove: {
    back: width('48 1/8 in', '0 in'),
    middle: width('48 1/16 in', '11 in'),
    front: width('48 1/8 in', '22 in'),
    reach: '22 in',
  },
  door: { width: '28 in', height: '79 in' },
  passage: { before: '18 in', after: '18 in', height: '24 in' },
};
const top = {
  corners: [
    { x_m: 0, y_m: 0 },
    { x_m: 47.75 * inch, y_m: 0 },
    { x_m: 47.75 * inch, y_m: 22 * inch },
    { x_m: 0, y_m: 22 * inch },
  ],
  load: { longest_m: 52.5 * inch, short_m: 22 * inch, thickness_m: 1.5 * inch, mass_kg: 20 },
  withResin: true,
};
const words = (document: FitDocument) => {
  const { walls, piece } = fitPicture(document, null);
  return {
    make: makeWords(walls, piece!, 'us'),
    joint: jointWords(walls, piece!, 'us'),
    wall: wallWords(walls, piece!, 'us'),
  };
};

describe('what the walls ask for, in words', () => {
  it('says the length and the depth with the figures they come from', () => {
    expect(words(alcove).make).toEqual([
      'Make it 47 13/16 in long: the alcove is narrowest in the middle, 48 1/16 in, less 1/8 in at each end.',
      'Make it 21 7/8 in deep: 21 in of cabinet, 1 in over the front, less 1/8 in at the back wall.',
    ]);
    expect(words(alcove).joint).toEqual([
      'Back: caulk, the joint is 1/8 in to 3/16 in wide.',
      'Ends: caulk, the joint is 1/8 in to 3/16 in wide.',
    ]);
  });

  it('asks for a scribe where the walls are uneven, before any coat is on', () => {
    const uneven = { ...alcove, alcove: { ...alcove.alcove, front: width('47 5/8 in', '22 in') } };
    const { make, joint, wall } = words(uneven);
    expect(make[0]).toBe(
      'Leave it 48 3/8 in long and cut the ends to the walls: the alcove is narrowest at the front, 47 5/8 in, and the widths differ by 1/2 in.',
    );
    expect(joint[1]).toContain('Ends: scribe.');
    expect(joint[2]).toContain('bare body before the first coat');
    expect(wall[0]).toBe(
      'The side walls close by 1/2 in towards the front over 22 in, more than the 15/32 in that DIN 18202 allows two walls.',
    );
    expect(wall[1]).toContain('turned or lowered in');
  });

  it('says what is still to be measured', () => {
    const { make, joint } = words(emptyFit());
    expect(make[0]).toContain('smallest of the three');
    expect(make[1]).toContain('Measure from the back wall');
    expect(joint[0]).toContain('straightedge');
    const open = words({ ...emptyFit(), ends: 'left' });
    expect(open.make[0]).toContain('length of the cabinet');
  });

  it('gives sizes on the marks of the tape', () => {
    const { piece } = fitPicture(alcove, null);
    const { length_m, depth_m } = madeSizes(piece!, 'metric');
    expect(length_m).toBeCloseTo(1.214, 9);
    expect(depth_m).toBeCloseTo(0.555, 9);
  });

  it('says whether it slides, turns or is lowered in', () => {
    const { turning } = fitPicture(alcove, top);
    const said = swingWords(turning!.swing, turning!.length_m, turning!.width_m, turning!.tilt, 'us');
    expect(said[0]).toBe('It slides in straight, 5/16 in to spare.');
    expect(said[1]).toMatch(
      /^Lying flat, its back at the wall, it turns \d+\.\d° either way before it binds\.$/,
    );
    expect(said[2]).toBe('Lowered in one end first it goes, 9/32 in to spare.');
    const long = fitPicture(
      { ...alcove, alcove: { ...alcove.alcove, middle: width('47 in', '11 in') } },
      top,
    );
    const refused = swingWords(
      long.turning!.swing,
      long.turning!.length_m,
      long.turning!.width_m,
      long.turning!.tilt,
      'us',
    );
    expect(refused[0]).toBe('It does not go in: 3/4 in longer than the alcove is wide at its narrowest.');
  });

  it('answers each narrow place that was measured, and how many carry', () => {
    const { way, answers } = fitPicture(alcove, top);
    const lines = wayLines(top.load, way, answers!, 'us');
    expect(lines.map(({ place, goes }) => [place, goes])).toEqual([
      ['Door', true],
      ['Passage', false],
    ]);
    expect(lines[0]!.words).toBe('goes through on edge, 26 1/2 in to spare');
    expect(lines[1]!.words).toMatch(/^does not go round the corner on edge: .* short$/);
    expect(loadWords(top.load, answers!.people, way.liftEach_kg, true, 'us')).toBe(
      '52 1/2 in corner to corner, 22 in across, 1 1/2 in thick, about 44 lb with its resin: one person carries it, 55 lb at most.',
    );
  });
});
