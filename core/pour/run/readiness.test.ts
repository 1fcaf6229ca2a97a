import { describe, expect, it } from 'vitest';
import { planCoat } from '../plan-coat.ts';
import { coatOf, requestOf } from '../sample-request.check.ts';
import { mayStart, readiness } from './readiness.ts';
import { plan, request } from './sample-run.check.ts';

const unread = { request, plan, air_K: null, board_K: null, humidity: null };
const of = (items: ReturnType<typeof readiness>, id: string) => items.find((item) => item.id === id)!;

describe('the readiness list', () => {
  it('names every cup with its mass', () => {
    const { says } = of(readiness(unread), 'weighed');
    for (const { number, colour } of plan.cups) expect(says).toContain(`cup ${number} ${colour}`);
  });

  it('does not let the pour start before every hold point is ticked', () => {
    const items = readiness(unread);
    expect(mayStart(items, new Set()).may).toBe(false);
    const holds = items.filter(({ hold }) => hold).map(({ id }) => id);
    expect(mayStart(items, new Set(holds.slice(1))).missing).toEqual([holds[0]]);
    expect(mayStart(items, new Set(holds)).may).toBe(true);
  });

  it('has nothing against a shop as planned, and says by how much another one is off', () => {
    const air_K = request.air.temperature_K[0]!;
    expect(of(readiness({ ...unread, air_K }), 'room').against).toBeNull();
    expect(of(readiness({ ...unread, air_K: air_K + 4 }), 'room').against).toMatch(/warmer than planned/);
    expect(of(readiness({ ...unread, air_K: air_K - 4 }), 'room').against).toMatch(/colder than planned/);
  });

  it('holds the pour against a board near the dew point', () => {
    const damp = { ...unread, air_K: 293.15, board_K: 289.15, humidity: 0.8 };
    expect(of(readiness(damp), 'gate').against).toMatch(/dew point/);
    expect(of(readiness({ ...damp, board_K: 293.15, humidity: 0.5 }), 'gate').against).toBeNull();
  });

  it('asks for dams where no edge is wrapped, and for roles where more than one pours', () => {
    const dammed = requestOf({ ...coatOf(), wrapEdges: false, crew: 2 });
    const items = readiness({ ...unread, request: dammed, plan: planCoat({ ...dammed, waysOut: false }) });
    expect(items.map(({ id }) => id)).toContain('edge dams');
    expect(of(items, 'roles').says).toMatch(/person 1: .*; person 2: mix/);
    expect(of(items, 'roles').hold).toBe(false);
  });
});
