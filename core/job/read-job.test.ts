import { describe, expect, it, test } from 'vitest';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import { emptyJob, type JobDocument } from './document.ts';
import { checkJob, readJob } from './read-job.ts';
import { changed, edgeOf, job, withCoat, withPiece } from './sample.check.ts';

const read = (document: JobDocument) => readJob(document, GENERIC_CARDS);
const problemsOf = (input: unknown) => {
  const checked = checkJob(input, GENERIC_CARDS);
  return checked.ok ? [] : checked.problems;
};

describe('a job that is all there', () => {
  it('is read into SI without a word of complaint', () => {
    const { problems, missing, pieces, room, coats } = read(job);
    const { piece, board } = pieces[0]!;
    expect(problems).toEqual([]);
    expect(missing).toEqual([]);
    expect(piece!.outline).toMatchObject({ shape: 'rectangle', length_m: 42 * 0.0254 });
    expect(piece!.bodyThickness_m).toBeCloseTo(0.0381, 12);
    expect(piece!.edges.front).toEqual({
      kind: 'finished',
      faceHeight_m: 0.0381,
      profile: { kind: 'square eased', radius_m: 0.003175 },
      undersideReturn_m: 0.0127,
    });
    expect(piece!.cutOuts[0]).toMatchObject({ shape: 'round', diameter_m: 0.04445, rim: 'dammed' });
    expect(board.thickness_m).toBeCloseTo(0.01905, 12);
    expect(room.air_K).toBeCloseTo(((73 + 459.67) * 5) / 9, 9);
    expect(room.humidity).toBeCloseTo(0.48, 12);
    const coat = coats[0]!.coat!;
    expect(coat.film_m).toBeCloseTo(0.00127331, 8);
    expect(coat.faceFilm_m).toBeCloseTo(0.0005, 12);
    expect(coat.colours.map((colour) => [colour.share, colour.load])).toEqual([
      [0.6, 0.03],
      [0.28, 0.025],
      [0.12, 0.04],
    ]);
    expect(coat.allowance).toBeCloseTo(0.08, 12);
    expect(coat.resin.temperature_K).toBeCloseTo(((74 + 459.67) * 5) / 9, 9);
    expect(coat.board_K).toBeCloseTo(((72 + 459.67) * 5) / 9, 9);
  });
});

/** Each text with a unit: where it stands, something nobody can read, something out of range. */
const texts: readonly (readonly [path: string, unreadable: string, outside: string])[] = [
  ['piece.outline.length', 'long', '60 ft'],
  ['piece.outline.width', '22 apples', '1 mm'],
  ['piece.outline.cornerRadius', 'round', '-1 in'],
  ['piece.bodyThickness', 'thick', '2 ft'],
  ['piece.boardThickness', 'x', '12 in'],
  ['piece.edges.0.faceHeight', 'tall', '9 ft'],
  ['piece.edges.0.profileSize', '?', '10 in'],
  ['piece.edges.0.undersideReturn', 'some', '3 ft'],
  ['piece.cutOuts.0.length', 'hole', '0.1 mm'],
  ['piece.cutOuts.0.fromLeft', 'middle', '90 ft'],
  ['piece.cutOuts.0.fromFront', 'back', '-90 ft'],
  ['room.air', 'warm', '120 F'],
  ['room.humidity', 'damp', '140 %'],
  ['room.board', 'cold', '20 F'],
  ['coats.0.film', 'thin', '1 m'],
  ['coats.0.faceFilm', 'thin', '5 cm'],
  ['coats.0.allowance', 'some', '300 %'],
  ['coats.0.resinTemperature', 'hot', '200 F'],
  ['coats.0.largestCup', 'big', '90 kg'],
  ['coats.0.colours.0.share', 'half', '140 %'],
  ['coats.0.colours.0.load', 'little', '-3 %'],
];

describe.each(texts)('%s', (path, unreadable, outside) => {
  it.each([unreadable, outside])('refuses "%s" with the field, what was read and what is allowed', (text) => {
    const [problem, ...more] = problemsOf(changed(job, path, text));
    expect(more.filter((each) => each.path === path)).toEqual([]);
    expect(problem).toMatchObject({ path, read: text });
    expect(problem!.allowed!.length).toBeGreaterThan(3);
    expect(problem!.message).toMatch(/\.$/);
  });

  it('is a text: a number there is refused with its kind', () => {
    expect(problemsOf(changed(job, path, 7))).toMatchObject([{ path, read: '7', allowed: 'a text' }]);
  });

  it('may be empty', () => {
    expect(problemsOf(changed(job, path, ''))).toEqual([]);
  });
});

test.each([
  'piece.outline.length',
  'piece.outline.width',
  'piece.bodyThickness',
  'piece.cutOuts.0.length',
  'piece.cutOuts.0.fromLeft',
  'piece.cutOuts.0.fromFront',
  'room.air',
  'coats.0.resin',
  'coats.0.film',
  'coats.0.faceFilm',
  'coats.0.colours.0.share',
  'coats.0.colours.0.load',
])('%s is asked for when it is empty, and nothing is guessed', (path) => {
  const { missing, problems } = read(changed(job, path, ''));
  expect(problems).toEqual([]);
  expect(missing.map((each) => each.path)).toEqual([path]);
  expect(missing[0]!.needs.length).toBeGreaterThan(3);
});

describe('what an empty field means where it need not be given', () => {
  it('takes the body for a face, no return, the usual arris, the air for board and resin, a tenth spare', () => {
    const bare = changed(
      changed(changed(changed(job, 'piece.edges', []), 'room.board', ''), 'coats.0.resinTemperature', ''),
      'coats.0.allowance',
      '',
    );
    const { pieces, coats, room } = read(bare);
    const piece = pieces[0]!.piece;
    expect(piece!.edges.back).toEqual({
      kind: 'finished',
      faceHeight_m: 0.0381,
      profile: { kind: 'square eased', radius_m: 0.003175 },
      undersideReturn_m: 0,
    });
    expect(coats[0]!.coat!.board_K).toBe(room.air_K);
    expect(coats[0]!.coat!.resin.temperature_K).toBe(room.air_K);
    expect(coats[0]!.coat!.allowance).toBe(0.1);
  });

  it('pours a coat without colours clear, and asks nothing of a single colour’s share', () => {
    expect(read(withCoat({ colours: [] })).coats[0]!.coat!.colours).toMatchObject([
      { name: 'clear', share: 1 },
    ]);
    const one = { ...job.coats[0]!.colours[0]!, share: '' };
    expect(read(withCoat({ colours: [one] })).coats[0]!.coat!.colours[0]!.share).toBe(1);
  });

  it('asks of an empty job for piece, air and a coat', () => {
    expect(read(emptyJob()).missing.map((each) => each.path)).toEqual([
      'piece.bodyThickness',
      'piece.outline',
      'room.air',
      'coats',
    ]);
  });
});

describe('edges by name', () => {
  it.each(['constructor', '__proto__', 'toString', 'rim'])('refuses "%s" on a rectangle', (edge) => {
    const problems = problemsOf(withPiece({ edges: [edgeOf(edge)] }));
    expect(problems).toMatchObject([
      { path: 'piece.edges.0.edge', code: 'edge.unknown', read: edge, allowed: 'front, right, back, left' },
    ]);
  });

  it('refuses an edge given twice at the second', () => {
    expect(
      problemsOf(withPiece({ edges: [edgeOf('front'), edgeOf('back'), edgeOf('front')] })),
    ).toMatchObject([{ path: 'piece.edges.2.edge', code: 'edge.twice', read: 'front' }]);
  });

  it('reads every profile', () => {
    const profile = (kind: Parameters<typeof edgeOf>[1]) =>
      read(withPiece({ edges: [edgeOf('front', kind)] })).pieces[0]!.piece!.edges.front!.profile;
    expect(profile({ profile: 'round-over', profileSize: '' })).toEqual({
      kind: 'round-over',
      radius_m: 0.00635,
    });
    expect(profile({ profile: 'bevel', profileSize: '3 mm' })).toEqual({ kind: 'bevel', leg_m: 0.003 });
    expect(profile({ profile: 'bullnose' })).toEqual({ kind: 'bullnose' });
    expect(profile({ profile: 'chiselled', profileSize: '1.5' })).toEqual({ kind: 'chiselled', factor: 1.5 });
  });
});

describe('days and hours', () => {
  it.each([
    '2026-02-31T09:00',
    '2025-02-29T09:00',
    '2026-13-01T09:00',
    '2026-05-14T24:00',
    '2026-05-14T09:60',
  ])('refuses the start %s', (startsAt) => {
    expect(problemsOf(withCoat({ startsAt }, 1))).toMatchObject([
      { path: 'coats.1.startsAt', code: 'date.none', read: startsAt },
    ]);
  });

  it.each(['2026-02-31', '2026-00-10', '2026-06-31'])('refuses the hand-over day %s', (handOver) => {
    expect(problemsOf({ ...job, agreed: { ...job.agreed, handOver } })).toMatchObject([
      { path: 'agreed.handOver', code: 'date.none', read: handOver },
    ]);
  });

  it('says how a start is written when it is something else', () => {
    expect(problemsOf(withCoat({ startsAt: 'tomorrow' }))).toMatchObject([
      {
        path: 'coats.0.startsAt',
        read: 'tomorrow',
        allowed: 'a day and time as 2026-05-14T09:00, or nothing',
      },
    ]);
  });

  it('takes a leap day', () => {
    expect(problemsOf(withCoat({ startsAt: '2028-02-29T23:59' }))).toEqual([]);
  });
});

describe('what does not go together', () => {
  it('refuses two coats with one id, an unknown resin, a film thicker than the resin allows', () => {
    expect(problemsOf(withCoat({ id: 'colour' }, 1))).toMatchObject([{ path: 'coats.1.id', read: 'colour' }]);
    expect(problemsOf(withCoat({ resin: 'glue' }))).toMatchObject([
      { path: 'coats.0.resin', read: 'glue', allowed: GENERIC_CARDS.map((card) => card.id).join(', ') },
    ]);
    const thick = withCoat({ film: '20 mm' });
    expect(problemsOf(thick)).toMatchObject([{ path: 'coats.0.film', code: 'coat.film-too-thick' }]);
    expect(problemsOf(thick)[0]!.allowed).toMatch(/^up to [\d.]+ fl oz\/sq ft$/);
    const metric = checkJob(thick, GENERIC_CARDS, 'metric');
    expect(metric.ok ? '' : metric.problems[0]!.allowed).toMatch(/^up to [\d.]+ mm$/);
  });

  it('refuses shares that are not a whole, at the colours', () => {
    const problems = problemsOf(changed(job, 'coats.0.colours.0.share', '40 %'));
    expect(problems).toMatchObject([{ path: 'coats.0.colours', read: '80%' }]);
  });

  it('refuses readings that go back in time', () => {
    const readings = [
      { at: '6 h', air: '70 F' },
      { at: '2 h', air: '66 F' },
    ];
    expect(problemsOf({ ...job, room: { ...job.room, readings } })).toMatchObject([
      { path: 'room.readings.1.at', read: '2 h', allowed: 'later than 6 h' },
    ]);
  });

  it('starts with the first reading where no air is typed', () => {
    const readings = [{ at: '0 h', air: '68 F' }];
    const { room, missing } = read({ ...job, room: { ...job.room, air: '', readings } });
    expect(missing).toEqual([]);
    expect(room.air_K).toBeCloseTo(293.15, 9);
  });
});
