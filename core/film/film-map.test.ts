import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CutOut, Outline } from '#core/piece/piece.ts';
import { arrisShare } from './arris.ts';
import { freeEdgeLoss_m2 } from './edge-profile.ts';
import { type FilmMapRequest, filmMap, filmMapAtOnce } from './film-map.ts';
import { type EdgeFlow, edgeFlowsOf, heldShareFor } from './map-edges.ts';
import { filmGrid } from './map-grid.ts';

const board = (
  length_m: number,
  width_m: number,
  cutOuts: readonly CutOut[] = [],
): FilmMapRequest['piece'] => ({
  outline: { shape: 'rectangle', length_m, width_m },
  cutOuts,
});
const open: EdgeFlow = { kind: 'wetted' };
const allOpen = { front: open, back: open, left: open, right: open };
const bowl: CutOut = {
  shape: 'oval',
  length_m: 0.1,
  width_m: 0.06,
  name: 'bowl',
  centre: { x_m: 0.15, y_m: 0.1 },
  rotation_rad: 0.4,
  rim: 'wrapped',
};

describe('resin is kept', () => {
  const outline: fc.Arbitrary<Outline> = fc.oneof(
    fc.record({
      shape: fc.constant('rectangle' as const),
      length_m: fc.double({ min: 0.1, max: 0.4, noNaN: true }),
      width_m: fc.double({ min: 0.1, max: 0.3, noNaN: true }),
      cornerRadius_m: fc.double({ min: 0, max: 0.04, noNaN: true }),
    }),
    fc.record({
      shape: fc.constant('round' as const),
      diameter_m: fc.double({ min: 0.1, max: 0.3, noNaN: true }),
    }),
  );
  it('to 1e-12 with every kind of edge, tilt and puddle, and films are never negative', () => {
    fc.assert(
      fc.property(
        outline,
        fc.array(fc.constantFrom('dam', 'wetted', 'held', 'dry', 'worked'), { minLength: 4, maxLength: 4 }),
        fc.double({ min: 0, max: 1.2, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        fc.double({ min: 0.0003, max: 0.004, noNaN: true }),
        fc.double({ min: 0, max: 600, noNaN: true }),
        fc.boolean(),
        (shape, kinds, part, x, y, film_m, theta_per_Pa, level) => {
          const names = shape.shape === 'round' ? ['rim'] : ['front', 'right', 'back', 'left'];
          const flow = (kind: string): EdgeFlow =>
            kind === 'dam'
              ? { kind }
              : kind === 'dry'
                ? { kind, holds_m: film_m * 1.2, heldFilm_m: film_m / 4 }
                : kind === 'worked'
                  ? {
                      kind: 'wetted',
                      heldFilm_m: film_m / 3,
                      dryUntil: { theta_per_Pa: part * theta_per_Pa, holds_m: film_m * 1.1 },
                    }
                  : { kind: 'wetted', heldFilm_m: kind === 'held' ? film_m / 2 : 0 };
          const map = filmMapAtOnce({
            piece: { outline: shape, cutOuts: [] },
            cell_m: 0.007,
            theta_per_Pa,
            evenFilm_m: film_m,
            puddles: [
              { x_m: 0.05, y_m: 0.05, volume_m3: 1e-5, radius_m: 0.02 },
              { x_m: 0.06, y_m: 0.05, volume_m3: 2e-5, radius_m: 0.03, theta_per_Pa: theta_per_Pa / 2 },
            ],
            edges: Object.fromEntries(names.map((name, i) => [name, flow(kinds[i]!)])),
            slope: level ? { x: 0, y: 0 } : { x, y },
            growth: 0.1,
          });
          expect(Math.abs(map.balance)).toBeLessThan(1e-12);
          expect(map.thinnest.thickness_m).toBeGreaterThanOrEqual(0);
          expect(Number.isFinite(map.thickest.thickness_m)).toBe(true);
          expect(map.onTop_m3).toBeLessThanOrEqual(map.poured_m3 * (1 + 1e-12));
          for (const [i, name] of names.entries()) {
            const lost = map.lostOver.find((each) => each.edge === name)!.volume_m3;
            if (kinds[i] === 'dam') expect(lost).toBe(0);
            else expect(lost).toBeGreaterThanOrEqual(-1e-9 * map.poured_m3);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
  it('keeps the sum over the edges, the cut-out among them', () => {
    const map = filmMapAtOnce({
      piece: board(0.3, 0.2, [bowl]),
      cell_m: 0.004,
      theta_per_Pa: 100,
      evenFilm_m: 0.002,
      edges: { ...allOpen, bowl: open },
    });
    expect(map.lostOver.map((each) => each.edge).sort()).toEqual(['back', 'bowl', 'front', 'left', 'right']);
    expect(map.lostOver.reduce((sum, each) => sum + each.volume_m3, 0)).toBeCloseTo(map.lost_m3, 15);
    for (const each of map.lostOver) expect(each.volume_m3).toBeGreaterThan(0);
    expect(map.area_m2).toBeCloseTo(0.06 - Math.PI * 0.05 * 0.03, 3);
  });
});

describe('more film, more flow, more loss', () => {
  it('holds for thickness, budget and weight', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0005, max: 0.003, noNaN: true }),
        fc.double({ min: 1, max: 400, noNaN: true }),
        fc.double({ min: 1.1, max: 2, noNaN: true }),
        (film_m, theta, by) => {
          const base: FilmMapRequest = {
            piece: board(0.3, 0.2),
            cell_m: 0.01,
            theta_per_Pa: theta,
            evenFilm_m: film_m,
            edges: allOpen,
          };
          const lost = filmMapAtOnce(base).lost_m3;
          expect(filmMapAtOnce({ ...base, evenFilm_m: film_m * by }).lost_m3).toBeGreaterThan(lost);
          expect(filmMapAtOnce({ ...base, theta_per_Pa: theta * by }).lost_m3).toBeGreaterThan(lost);
          const liquid = { density_kg_m3: 1100 * by, surfaceTension_N_m: 0.035 };
          // weight and budget stand only as a product
          const heavier = filmMapAtOnce({ ...base, liquid }).lost_m3;
          expect(heavier / filmMapAtOnce({ ...base, theta_per_Pa: theta * by }).lost_m3).toBeCloseTo(1, 9);
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('limits', () => {
  it('an even film between dams, or before any flow, stays as it was poured', () => {
    for (const request of [
      { theta_per_Pa: 500 },
      { theta_per_Pa: 0, edges: allOpen, slope: { x: 0.02, y: 0 } },
    ]) {
      const map = filmMapAtOnce({
        piece: board(0.3, 0.2, [bowl]),
        cell_m: 0.005,
        evenFilm_m: 0.0015,
        ...request,
      });
      expect(map.thinnest.thickness_m).toBeCloseTo(0.0015, 15);
      expect(map.thickest.thickness_m).toBeCloseTo(0.0015, 15);
      expect(map.lost_m3).toBe(0);
    }
  });
  it('a dry edge holds below its limit and lets go above it, and says when', () => {
    const base: FilmMapRequest = {
      piece: board(0.3, 0.2),
      cell_m: 0.005,
      theta_per_Pa: 200,
      evenFilm_m: 0.0015,
      edges: { front: { kind: 'dry', holds_m: 0.0016 } },
    };
    const held = filmMapAtOnce(base);
    expect(held.lost_m3).toBe(0);
    expect(held.letGo).toEqual([]);
    const tilted = filmMapAtOnce({ ...base, slope: { x: 0, y: -0.02 } });
    expect(tilted.letGo.map((each) => each.edge)).toEqual(['front']);
    expect(tilted.letGo[0]!.theta_per_Pa).toBeGreaterThan(0);
    expect(tilted.lost_m3).toBeGreaterThan(0);
  });
  it('in the end a tilted dammed top stands as a wedge of the slope', () => {
    const map = filmMapAtOnce({
      piece: board(0.1, 0.02),
      cell_m: 0.002,
      theta_per_Pa: 1e5,
      evenFilm_m: 0.002,
      slope: { x: 0.01, y: 0 },
    });
    expect((map.thickest.thickness_m - map.thinnest.thickness_m) / (0.1 - map.cellX_m)).toBeCloseTo(0.01, 4);
  });
  it('a level pour is as symmetric as its top', () => {
    const map = filmMapAtOnce({
      piece: board(0.2, 0.2),
      cell_m: 0.01,
      theta_per_Pa: 90,
      evenFilm_m: 0.002,
      edges: allOpen,
    });
    const at = (column: number, row: number) => map.thickness_m[row * map.columns + column]!;
    for (const [i, j] of [
      [0, 3],
      [2, 7],
      [5, 9],
    ] as const) {
      expect(at(i, j) / at(map.columns - 1 - i, j)).toBeCloseTo(1, 6);
      expect(at(i, j) / at(i, map.rows - 1 - j)).toBeCloseTo(1, 6);
      // the turning order of sweeps leaves a trace far below the accuracy of the map
      expect(Math.abs(at(i, j) / at(j, i) - 1)).toBeLessThan(0.01);
    }
    expect(map.thinnestInside!.thickness_m).toBeGreaterThan(map.thinnest.thickness_m);
  });
});

describe('an edge that is worked after a while', () => {
  const base: FilmMapRequest = {
    piece: board(0.3, 0.2, [bowl]),
    cell_m: 0.005,
    theta_per_Pa: 200,
    evenFilm_m: 0.0015,
  };
  const worked = (theta_per_Pa: number, holds_m: number) => {
    const flow: EdgeFlow = { kind: 'wetted', heldFilm_m: 0.0004, dryUntil: { theta_per_Pa, holds_m } };
    return filmMapAtOnce({ ...base, edges: { front: flow, left: flow, bowl: flow } });
  };
  const wetted: EdgeFlow = { kind: 'wetted', heldFilm_m: 0.0004 };
  const lostBy = (theta_per_Pa: number) =>
    filmMapAtOnce({ ...base, theta_per_Pa, edges: { front: wetted, left: wetted, bowl: wetted } }).lost_m3;

  it('holds an even film until then, and from then on loses what a wiped one does with the budget left; no resin is lost count of', () => {
    const map = worked(120, 0.0016);
    expect(map.lost_m3 / lostBy(80)).toBeCloseTo(1, 9);
    expect(map.lostOver.filter(({ volume_m3 }) => volume_m3 > 0).map(({ edge }) => edge)).toEqual([
      'front',
      'left',
      'bowl',
    ]);
    expect(map.letGo).toEqual([]);
    expect(Math.abs(map.balance)).toBeLessThan(1e-12);
  });
  it('worked at the start is a wiped one, worked after the moment shown a dry one', () => {
    expect(worked(0, 0.0016).lost_m3).toBe(lostBy(200));
    expect(worked(200, 0.0016).lost_m3).toBe(0);
    expect(worked(500, 0.0016).lost_m3).toBe(0);
  });
  it('lets go before it is worked where the film is too thick for it, and says so', () => {
    const map = worked(120, 0.001);
    expect(map.letGo.map(({ edge }) => edge).sort()).toEqual(['bowl', 'front', 'left']);
    for (const { theta_per_Pa } of map.letGo) expect(theta_per_Pa).toBe(0);
    // let go at the start, it was a wiped one all along; only the steps fall elsewhere
    expect(Math.abs(map.lost_m3 / lostBy(200) - 1)).toBeLessThan(0.005);
    expect(Math.abs(map.balance)).toBeLessThan(1e-12);
  });
  it('loses less the later it is worked', () => {
    const lost = [0, 20, 60, 120, 190].map((theta) => worked(theta, 0.0016).lost_m3);
    for (let i = 1; i < lost.length; i++) expect(lost[i]!).toBeLessThan(lost[i - 1]!);
  });
});

describe('an edge with an arris', () => {
  it('loses what the arris table says: within 5 % on a wide top', () => {
    const piece = {
      ...board(0.5, 0.02),
      bodyThickness_m: 0.038,
      edges: Object.fromEntries(
        ['front', 'right', 'back', 'left'].map((name) => [
          name,
          {
            kind: name === 'left' ? ('finished' as const) : ('wall' as const),
            faceHeight_m: 0.038,
            profile: { kind: 'round-over' as const, radius_m: 0.003 },
            undersideReturn_m: 0,
          },
        ]),
      ),
    };
    const edges = edgeFlowsOf({ piece, wrapped: true, film_m: 0.0015, theta_per_Pa: 240 });
    expect(edges.right).toEqual({ kind: 'dam' });
    const map = filmMapAtOnce({ piece, cell_m: 0.0025, theta_per_Pa: 240, evenFilm_m: 0.0015, edges });
    const expected = freeEdgeLoss_m2(0.0015, 240) * arrisShare(0.0015, 0.003);
    expect(Math.abs(map.lost_m3 / 0.02 / expected - 1)).toBeLessThan(0.05);
    expect(edgeFlowsOf({ piece, wrapped: false, film_m: 0.0015, theta_per_Pa: 240 }).left).toMatchObject({
      kind: 'dry',
    });
    const later = edgeFlowsOf({
      piece,
      wrapped: true,
      film_m: 0.0015,
      theta_per_Pa: 240,
      thetaDry_per_Pa: 50,
    });
    expect(later.left).toMatchObject({ ...edges.left, dryUntil: { theta_per_Pa: 50 } });
  });
  it('the film it holds back is the inverse of the loss constant', () => {
    expect(heldShareFor(1)).toBeLessThan(0.01);
    expect(heldShareFor(0)).toBeCloseTo(1, 6);
    expect(heldShareFor(0.5)).toBeGreaterThan(heldShareFor(0.6));
  });
});

describe('running', () => {
  const request: FilmMapRequest = {
    piece: board(0.2, 0.1),
    cell_m: 0.005,
    theta_per_Pa: 50,
    puddles: [{ x_m: 0.1, y_m: 0.05, volume_m3: 2e-5, radius_m: 0.03 }],
  };
  it('reports rising progress up to the end and gives the same map twice', () => {
    const shares: number[] = [];
    const run = filmMap(request);
    let next = run.next();
    while (!next.done) {
      shares.push(next.value.share);
      next = run.next();
    }
    expect(shares.length).toBeGreaterThan(10);
    expect(shares.every((share, i) => share <= 1 && (i === 0 || share > shares[i - 1]!))).toBe(true);
    expect(next.value.thickness_m).toEqual(filmMapAtOnce(request).thickness_m);
  });
  it('can be left at any report', () => {
    const run = filmMap(request);
    expect(run.next().done).toBe(false);
    const left = run.return(undefined as never);
    expect(left.done).toBe(true);
  });
  it('refuses nonsense, naming it', () => {
    const bad = (change: Partial<FilmMapRequest>) => () => filmMapAtOnce({ ...request, ...change });
    expect(bad({ theta_per_Pa: -1 })).toThrow(/theta_per_Pa/);
    expect(bad({ cell_m: 0 })).toThrow(/cell_m/);
    expect(bad({ cell_m: 1e-6 })).toThrow(/cells/);
    expect(bad({ growth: 1 })).toThrow(/growth/);
    expect(bad({ slope: { x: 0.1, y: 0 } })).toThrow(/slope.x/);
    expect(bad({ edges: { top: open } })).toThrow(/"top".*front/);
    const dry = (theta: number, holds_m: number): EdgeFlow => ({
      kind: 'wetted',
      dryUntil: { theta_per_Pa: theta, holds_m },
    });
    expect(bad({ edges: { front: dry(-1, 0.001) } })).toThrow(/dryUntil theta_per_Pa/);
    expect(bad({ edges: { front: dry(1, 0) } })).toThrow(/holds_m/);
    expect(bad({ puddles: [] })).toThrow(/puddles/);
    expect(bad({ puddles: [{ x_m: 5, y_m: 0, volume_m3: 1e-5, radius_m: 0.01 }] })).toThrow(/over the top/);
    expect(
      bad({ puddles: [{ x_m: 0.1, y_m: 0, volume_m3: 1e-5, radius_m: 0.01, theta_per_Pa: 51 }] }),
    ).toThrow(/puddle theta/);
  });
});

it('the grid gives each border face the edge it lies on', () => {
  const grid = filmGrid(board(0.3, 0.2, [bowl]), 0.01);
  expect([grid.columns, grid.rows, grid.edges]).toEqual([30, 20, ['front', 'right', 'back', 'left', 'bowl']]);
  expect((grid.stride / 8) % 2).toBe(1);
  const count = (name: string) => grid.faceEdge.filter((edge) => grid.edges[edge] === name).length;
  expect([count('front'), count('right'), count('back'), count('left')]).toEqual([30, 20, 30, 20]);
  expect(count('bowl')).toBeGreaterThan(20);
  // 60 by 60 cells of a disc, with middles on the chords of its arcs
  const round = filmGrid({ outline: { shape: 'round', diameter_m: 0.6 }, cutOuts: [] }, 0.01);
  expect([round.alongX.count.length, round.alongY.count.length]).toEqual([60, 60]);
});
