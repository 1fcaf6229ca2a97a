/** What must be ready before the first parts meet. Hold points have to be ticked: the pour does not start without them. */
import {
  formatLength,
  formatMass,
  formatTemperature,
  formatTemperatureDifference,
} from '#core/quantity/format.ts';
import { BLUSH_LIMITS, blushGate } from '#core/room/blush-gate.ts';
import { dewPoint_K } from '#core/room/dew-point.ts';
import type { CoatPlan } from '../plan.ts';
import type { PlanRequest } from '../plan-coat.ts';

export interface ReadyItem {
  readonly id: string;
  readonly says: string;
  /** True: the pour does not start without it. */
  readonly hold: boolean;
  /** Computed and against starting: what is wrong, in a sentence; null: nothing known against it. */
  readonly against: string | null;
}

export interface ReadinessRequest {
  readonly request: PlanRequest;
  readonly plan: CoatPlan;
  /** Read just before; null: not read. */
  readonly air_K: number | null;
  readonly board_K: number | null;
  /** 0 to 1; null: not read. */
  readonly humidity: number | null;
}

/** The shop may differ this much from what the plan was made for before the plan is made anew. Our own choice: a tenth of the working time. */
const PLAN_HOLDS_K = 1.5;

/** The list of one pour, in the order a hand goes through it. Items are common practice, no source, where no figure is given. */
export function readiness(ask: ReadinessRequest): readonly ReadyItem[] {
  const { request, plan } = ask;
  const { coat, measures, system = 'us' } = request;
  const item = (id: string, says: string, hold = true, against: string | null = null): ReadyItem => ({
    id,
    says,
    hold,
    against,
  });
  const weighed = plan.cups.map(
    ({ number, colour, mass_kg }) => `cup ${number} ${colour} ${formatMass(mass_kg)}`,
  );
  const wraps = plan.steps.some(({ kind }) => kind === 'wrap edges');
  const holes = measures.edges.filter(({ kind }) => kind === 'dammed').length;
  return [
    item(
      'safety',
      'Safety data sheet read; gloves, spare gloves, glasses and long sleeves on; others out of the room',
    ),
    item('weighed', `Parts A and B weighed apart, tints weighed: ${weighed.join('; ')}`),
    item(
      'order',
      `Cups stand in the order they are poured, 1 to ${plan.cups.length}, with a clean second cup for each`,
    ),
    item('surface', 'Board sanded, vacuumed, wiped; nothing with silicone near it'),
    item('level', 'Piece level in both directions, on stands clear of the bench, floor covered'),
    ...(holes > 0 ? [item('dams', `Cut-outs dammed (${holes}), tape pressed down all round`)] : []),
    ...(wraps
      ? [
          item(
            'underside',
            `Underside taped for drips, ${formatLength(edgeLength(plan, request), system)} of edge to wrap`,
          ),
        ]
      : [item('edge dams', 'All edges dammed or taped')]),
    item(
      'tools',
      'Spreader, comb or trowel, stir sticks, torch with fuel, scraper, lint-free cloths, timer within reach',
    ),
    item('flame', 'No solvent or alcohol open in the room while the torch burns; fire extinguisher at hand'),
    item('airflow', 'Fans and heaters that blow are off; doors shut until the film is past dust'),
    item('room', roomSays(ask), true, roomAgainst(ask)),
    item('gate', gateSays(ask), true, gateAgainst(ask)),
    ...(coat.crew > 1 ? [item('roles', `Everybody knows their steps: ${roles(plan)}`, false)] : []),
    item('time', 'Nobody has to leave; telephone silent', false),
  ];
}

function roomSays({ request, air_K }: ReadinessRequest): string {
  const { air, system = 'us' } = request;
  const planned = formatTemperature(air.temperature_K[0]!, system);
  return air_K === null
    ? `Read the shop air: the plan is for ${planned}`
    : `Shop air ${formatTemperature(air_K, system)}, planned ${planned}`;
}

function roomAgainst({ request, air_K }: ReadinessRequest): string | null {
  if (air_K === null) return null;
  const off_K = air_K - request.air.temperature_K[0]!;
  if (Math.abs(off_K) <= PLAN_HOLDS_K) return null;
  const off = formatTemperatureDifference(Math.abs(off_K), request.system ?? 'us');
  return `The shop is ${off} ${off_K > 0 ? 'warmer' : 'colder'} than planned: make the plan anew with the air as read.`;
}

function gateSays({ request, air_K, board_K, humidity }: ReadinessRequest): string {
  const { system = 'us' } = request;
  const margin = formatTemperatureDifference(BLUSH_LIMITS.margin_K, system, { decimals: 0 });
  if (air_K === null || humidity === null)
    return `Read humidity and board: the board must be ${margin} above the dew point`;
  return `Dew point ${formatTemperature(dewPoint_K(air_K, humidity), system)}, board ${formatTemperature(board_K ?? air_K, system)}: ${margin} apart or more`;
}

function gateAgainst({ air_K, board_K, humidity }: ReadinessRequest): string | null {
  if (air_K === null || humidity === null) return null;
  const gate = blushGate({ air_K, surface_K: board_K ?? air_K, relativeHumidity: humidity });
  return gate.verdict === 'go' ? null : gate.reasons.map(({ message }) => message).join(' ');
}

/** Whether the pour may start: every hold point ticked and nothing computed against it, or overruled by name. */
export function mayStart(
  items: readonly ReadyItem[],
  ticked: ReadonlySet<string>,
): { readonly may: boolean; readonly missing: readonly string[] } {
  const missing = items.filter(({ id, hold }) => hold && !ticked.has(id)).map(({ id }) => id);
  return { may: missing.length === 0, missing };
}

function edgeLength(plan: CoatPlan, { rates }: PlanRequest): number {
  const seconds = plan.steps
    .filter(({ kind }) => kind === 'wrap edges')
    .reduce((sum, { start_s, end_s }) => sum + end_s - start_s, 0);
  return seconds * rates.wrap_m_per_s;
}

function roles(plan: CoatPlan): string {
  const people = [...new Set(plan.steps.map(({ person }) => person))].sort();
  return people
    .map((person) => {
      const kinds = [...new Set(plan.steps.filter((step) => step.person === person).map(({ kind }) => kind))];
      return `person ${person}: ${kinds.join(', ')}`;
    })
    .join('; ');
}
