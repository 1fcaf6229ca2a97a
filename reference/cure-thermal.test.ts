/**
 * Conduction and thermal explosion with the integrator that films and cups use, the reaction's consumption switched off.
 *  - Crank, The Mathematics of Diffusion (1975) p. 60, slab with surface resistance: mean uptake at Fo 0.125, Bi 20 is 0.35289 (series
 *    value 0.3528861780625614 read in the documentation of "polykin"); Fo 4, Bi 0.5 about 0.80; Fo 4, Bi 0.1 about 0.32.
 *  - Semenov: critical psi 1/e, theta 1. Frank-Kamenetskii: critical delta 0.8784577 (slab), 2 (cylinder), 3.3219921 (sphere), with
 *    theta 1.18684, 1.38629, 1.60746; finite Biot numbers computed beforehand from the steady equation.
 * Precision: Crank 1e-4 with 100 cells; explosion: still bounded 1 % below the critical number, and blown up 1 % above it.
 */
import { describe, expect, it } from 'vitest';
import { type Column, inert, type LocalReaction, linearLoss } from '#core/numeric/column.ts';
import { integrateColumn } from '#core/numeric/rosenbrock.ts';

/** Body of unit half-width or radius and unit properties, cells counted from the surface inward. `power`: 0 slab, 1 cylinder, 2 sphere. */
function body(power: number, biot: number, cells: number, reaction: LocalReaction, heat: number): Column {
  const dx = 1 / cells;
  const area = (r: number) => r ** power;
  const volume = (from: number, to: number) => (to ** (power + 1) - from ** (power + 1)) / (power + 1);
  const capacity = new Float64Array(cells);
  const conductance = new Float64Array(cells - 1);
  for (let i = 0; i < cells; i++) {
    const outer = 1 - i * dx;
    capacity[i] = volume(Math.max(0, outer - dx), outer);
    if (i < cells - 1) conductance[i] = area(outer - dx) / dx;
  }
  const surface = Number.isFinite(biot) ? 1 / (1 / biot + dx / 2) : 2 / dx;
  return {
    capacity,
    conductance,
    heat: heat === 0 ? new Float64Array(0) : capacity.map((c) => c * heat),
    reaction,
    firstLoss: linearLoss(surface),
    lastLoss: linearLoss(0),
  };
}

const tolerance = { relative: 1e-6, conversion: 1e9, temperature: 1e-6 };
const still = { time: [0], value: [0] };

describe('Crank, slab with surface resistance', () => {
  it.each([
    [0.125, 20, 0.3528861780625614, 1e-4],
    [4, 0.5, 0.8, 0.02],
    [4, 0.1, 0.32, 0.02],
  ])('Fo %f, Bi %f', (fourier, biot, uptake, off) => {
    const cells = 100;
    let mean = 0;
    integrateColumn(
      body(0, biot, cells, inert, 0),
      [],
      new Float64Array(cells).fill(1),
      { start: 0, end: fourier, surroundings: still, tolerance },
      (_t, _a, T) => {
        mean = T.reduce((sum, value) => sum + value, 0) / cells;
      },
    );
    expect(Math.abs(1 - mean - uptake)).toBeLessThan(off);
  });
});

/** e^theta without consumption, held at e^12 so that a run after the explosion stays finite. */
const exponential: LocalReaction = {
  rate: (_a, theta) => Math.exp(Math.min(theta, 12)),
  slopes: (_a, theta, out) => {
    out[0] = Math.exp(Math.min(theta, 12));
    out[1] = 0;
    out[2] = theta < 12 ? out[0] : 0;
  },
};

/** Centre temperature after a long time. */
function centreAfter(column: Column, duration: number): number {
  const cells = column.capacity.length;
  let centre = 0;
  integrateColumn(
    column,
    new Float64Array(cells),
    new Float64Array(cells),
    { start: 0, end: duration, surroundings: still, tolerance },
    (_t, _a, T) => {
      centre = T[cells - 1]!;
    },
  );
  return centre;
}

describe('Semenov', () => {
  // dtheta/dt = e^theta - theta/psi: critical psi = 1/e at theta 1.
  const pot = (psi: number): Column => ({
    capacity: Float64Array.of(1),
    conductance: new Float64Array(0),
    heat: Float64Array.of(1),
    reaction: exponential,
    firstLoss: linearLoss(1 / psi),
    lastLoss: linearLoss(0),
  });

  it('stays below theta 1 just below 1/e and explodes just above', () => {
    const below = centreAfter(pot(0.999 / Math.E), 300);
    expect(below).toBeLessThan(1);
    expect(below).toBeGreaterThan(0.9);
    expect(centreAfter(pot(1.001 / Math.E), 300)).toBeGreaterThan(10);
  });
});

describe('Frank-Kamenetskii', () => {
  const infinite = Number.POSITIVE_INFINITY;
  it.each([
    ['slab', 0, infinite, 0.8784577, 1.18684],
    ['cylinder', 1, infinite, 2, 1.38629],
    ['sphere', 2, infinite, 3.3219921, 1.60746],
  ])('%s, cold surface', (_name, power, biot, critical, theta) => {
    const below = centreAfter(body(power, biot, 60, exponential, 0.99 * critical), 60);
    expect(below).toBeLessThan(theta);
    expect(below).toBeGreaterThan(theta - 0.25);
    expect(centreAfter(body(power, biot, 60, exponential, 1.01 * critical), 60)).toBeGreaterThan(10);
  });

  it.each([
    [0, 0.1, 0.0356],
    [0, 0.5, 0.1567],
    [0, 1, 0.2707],
    [0, 5, 0.6194],
    [0, 100, 0.8612],
    [1, 0.1, 0.0718],
    [1, 1, 0.5758],
    [1, 10, 1.6538],
    [2, 0.5, 0.4988],
    [2, 2, 1.48],
    [2, 10, 2.739],
  ])('shape %i, Biot %f', (power, biot, critical) => {
    // The slower the cooling, the longer the wait: time scales with 1/delta.
    const wait = 60 / critical;
    expect(centreAfter(body(power, biot, 40, exponential, 0.99 * critical), wait)).toBeLessThan(3);
    expect(centreAfter(body(power, biot, 40, exponential, 1.01 * critical), wait)).toBeGreaterThan(10);
  });

  it('has the known profile cosh law in the steady slab', () => {
    // e^((theta_m - theta)/2) = cosh(x sqrt(delta e^theta_m / 2)).
    const cells = 100;
    const delta = 0.7;
    let T = new Float64Array(cells);
    integrateColumn(
      body(0, infinite, cells, exponential, delta),
      new Float64Array(cells),
      T,
      { start: 0, end: 60, surroundings: still, tolerance },
      (_t, _a, now) => {
        T = Float64Array.from(now);
      },
    );
    const rate = (top: number) => Math.sqrt((delta * Math.exp(top)) / 2);
    // Top from the innermost cell, half a cell off the middle.
    const near = 0.5 / cells;
    let top = T[cells - 1]!;
    for (let i = 0; i < 20; i++) top = T[cells - 1]! + 2 * Math.log(Math.cosh(near * rate(top)));
    for (const i of [0, 20, 50, 80]) {
      const x = 1 - (i + 0.5) / cells;
      expect(Math.abs(T[i]! - (top - 2 * Math.log(Math.cosh(x * rate(top)))))).toBeLessThan(2e-4);
    }
  });
});
