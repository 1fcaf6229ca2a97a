import { describe, expect, test } from 'vitest';
import { composeLook } from '#core/look/compose.ts';
import { emptyLook, type LookDocument } from '#core/look/look-document.ts';
import { readLook } from '#core/look/read-look.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import { vanityVesselSink as vanity } from '#examples/jobs.ts';
import type { JobDocument } from './document.ts';
import { coatLook, colourKey } from './look-of-coat.ts';
import { readJob } from './read-job.ts';

const AT = vanity.coats.findIndex((coat) => coat.kind === 'colour coat');
const asked = (job: JobDocument, index = AT) => coatLook(job, readJob(job, GENERIC_CARDS), index);
const withCoat = (change: Partial<JobDocument['coats'][number]>): JobDocument => ({
  ...vanity,
  coats: vanity.coats.map((coat, at) => (at === AT ? { ...coat, ...change } : coat)),
});
const ready = (job: JobDocument) => {
  const made = asked(job);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
};

describe('a look in a job', () => {
  const warnings = (change: Partial<LookDocument>) =>
    readJob(withCoat({ look: { ...emptyLook(), ...change } }), GENERIC_CARDS).warnings;

  test('is no reason to refuse the job, but its faults are told at their field', () => {
    const puddle = {
      kind: 'puddle',
      id: 'a',
      kept: true,
      name: '',
      colour: 'blue',
      volume_m3: 1e-5,
      path: [[0.3, 0.3]],
    } as const;
    const move = { ...puddle, path: [[0.3, 0.3] as [number, number]] };
    expect(warnings({ moves: [move] })).toContainEqual(
      expect.objectContaining({
        path: `coats.${AT}.look.moves.0.colour`,
        code: 'warning.look.colour',
        read: 'blue',
      }),
    );
    expect(readJob(withCoat({ look: { ...emptyLook(), moves: [move] } }), GENERIC_CARDS).problems).toEqual(
      [],
    );
  });

  test('whose puddles do not take what the cups hold says so at the share', () => {
    const told = warnings({}).filter((problem) => problem.code === 'warning.look-cups');
    expect(told.length).toBe(vanity.coats[AT]!.colours.length);
    expect(told[0]).toMatchObject({
      path: `coats.${AT}.colours.0.share`,
      allowed: '100 %, as poured in the look',
    });
  });

  test('composed to the shares of the coat has nothing to tell but what runs off', () => {
    const { look, setting } = ready(vanity);
    const shares = new Map(
      vanity.coats[AT]!.colours.map((colour, at) => [colourKey(colour, at), Number.parseFloat(colour.share)]),
    );
    const made = composeLook(look, shares, setting);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const found = warnings(made.value.look);
    expect(found.filter((problem) => problem.path.includes('.look.'))).toEqual([]);
  });
});

describe('the look of a coat', () => {
  test('can be composed from a job as it stands', () => {
    const { look, setting, known } = ready(vanity);
    expect(setting.colours.map((colour) => colour.key)).toEqual(vanity.coats[AT]!.colours.map(colourKey));
    expect(known.every((one) => one.trust.length > 10)).toBe(true);
    const shares = new Map(setting.colours.map((colour) => [colour.key, 1]));
    const made = composeLook(look, shares, setting);
    expect(made.ok).toBe(true);
    if (made.ok) expect(readLook(made.value.look, setting).ok).toBe(true);
  });

  test('without a film or a piece says what is missing, by the field of the job', () => {
    const noFilm = asked(withCoat({ film: '' }));
    expect(!noFilm.ok && noFilm.problems[0]!.path).toBe(`coats.${AT}.film`);
    const noPiece = asked({ ...vanity, piece: { ...vanity.piece, outline: null } });
    expect(!noPiece.ok && noPiece.problems[0]).toMatchObject({ path: 'piece', code: 'look.no-piece' });
  });

  test('goes on over a further piece beside the work', () => {
    const beside = {
      id: 'b',
      name: 'Shelf',
      length: '24 in',
      width: '8 in',
      at: [2, 0] as [number, number],
      turn_rad: 0,
    };
    const { setting, whole_m3 } = ready(withCoat({ look: { ...emptyLook(), beside: [beside] } }));
    expect(setting.panels.some((panel) => panel.name === 'Shelf')).toBe(true);
    expect(whole_m3).toBeGreaterThan(ready(vanity).whole_m3);
    const wrong = asked(withCoat({ look: { ...emptyLook(), beside: [{ ...beside, width: 'wide' }] } }));
    expect(!wrong.ok && wrong.problems[0]!.path).toBe(`coats.${AT}.look.beside.0.width`);
  });

  test('keeps its name while nothing that shows changes, and has another when something does', () => {
    const name = (look: Partial<LookDocument>, coat: Partial<JobDocument['coats'][number]> = {}) =>
      ready(withCoat({ ...coat, look: { ...emptyLook(), ...look } })).hash;
    const was = name({});
    expect(was).toMatch(/^[0-9a-f]{16}$/);
    expect(name({ brief: { ...emptyLook().brief, restless: 1 } })).toBe(was);
    expect(name({ approved: { hash: was, sample: '' } })).toBe(was);
    expect(name({}, { allowance: '30 %', crew: 3 })).toBe(was);
    expect(name({ undercoat: '#000000' })).not.toBe(was);
    expect(name({}, { film: '2 mm' })).not.toBe(was);
  });
});
