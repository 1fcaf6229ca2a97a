/** The state of a run, read off its events. Pure: the same set of events gives the same state in whatever order they came. */
import type { Step } from '../plan.ts';
import { joinEvents, type RunEvent } from './run-event.ts';

export type StepState =
  | { readonly state: 'to do' }
  | { readonly state: 'begun'; readonly began_s: number }
  | { readonly state: 'done'; readonly began_s: number; readonly done_s: number; readonly event: string }
  | { readonly state: 'skipped'; readonly at_s: number; readonly event: string };

export interface RunReading {
  readonly of: 'air' | 'board' | 'cup';
  readonly cup: number | null;
  readonly at_s: number;
  readonly temperature_K: number;
}

export type RunHappening = Extract<RunEvent, { kind: 'happened' }>;

export interface RunState {
  readonly started_s: number | null;
  readonly finished_s: number | null;
  /** By step id; every step of the plan has one. */
  readonly steps: ReadonlyMap<string, StepState>;
  readonly readings: readonly RunReading[];
  readonly happenings: readonly RunHappening[];
  /** Items of the readiness list that are ticked. */
  readonly ticked: ReadonlySet<string>;
  /** What the clock was put right by, s in all. */
  readonly corrected_s: number;
  /** The newest event that undo takes back; null: nothing to undo. */
  readonly undoable: RunEvent | null;
  /** Ids of events that name a step the plan does not have: kept, told, without effect. */
  readonly strange: readonly string[];
}

/**
 * A step begins with its own `began`, else when the same person was last seen to finish something, else when the run started; the first `done`
 * or `skipped` of a step counts, later ones are repeats of a second phone. An `undone` takes back the event it names, also another
 * `undone`; one that names a later event than itself has no effect.
 */
export function foldRun(steps: readonly Step[], events: readonly RunEvent[]): RunState {
  const all = joinEvents(events);
  const active = withoutUndone(all);
  const person = new Map(steps.map((step) => [step.id, step.person]));
  const states = new Map<string, StepState>(steps.map((step) => [step.id, { state: 'to do' }]));
  const free_s = new Map<number, number>();
  const readings: RunReading[] = [];
  const happenings: RunHappening[] = [];
  const ticked = new Set<string>();
  const strange: string[] = [];
  let started_s: number | null = null;
  let finished_s: number | null = null;
  let corrected_s = 0;
  for (const event of active) {
    switch (event.kind) {
      case 'started':
        started_s ??= event.at_s;
        break;
      case 'finished':
        finished_s ??= event.at_s;
        break;
      case 'began':
      case 'done':
      case 'skipped': {
        const known = states.get(event.step);
        if (known === undefined) {
          strange.push(event.id);
          break;
        }
        if (known.state === 'done' || known.state === 'skipped') break;
        if (event.kind === 'began') {
          if (known.state === 'to do') states.set(event.step, { state: 'begun', began_s: event.at_s });
          break;
        }
        if (event.kind === 'skipped') {
          states.set(event.step, { state: 'skipped', at_s: event.at_s, event: event.id });
          break;
        }
        const who = person.get(event.step)!;
        const began_s =
          known.state === 'begun'
            ? known.began_s
            : Math.min(event.at_s, free_s.get(who) ?? started_s ?? event.at_s);
        states.set(event.step, { state: 'done', began_s, done_s: event.at_s, event: event.id });
        free_s.set(who, event.at_s);
        break;
      }
      case 'reading':
        readings.push({
          of: event.of,
          cup: event.cup,
          at_s: event.at_s,
          temperature_K: event.temperature_K,
        });
        break;
      case 'happened':
        happenings.push(event);
        break;
      case 'ticked':
        if (event.on) ticked.add(event.item);
        else ticked.delete(event.item);
        break;
      case 'clock corrected':
        corrected_s += event.by_s;
        break;
      case 'undone':
        break;
    }
  }
  return {
    started_s,
    finished_s,
    steps: states,
    readings,
    happenings,
    ticked,
    corrected_s,
    undoable: lastUndoable(active),
    strange,
  };
}

/** Events in force. Undo counts only against events before it, so the last one is judged first and each once. */
function withoutUndone(ordered: readonly RunEvent[]): readonly RunEvent[] {
  const taken = new Set<string>();
  const inForce: RunEvent[] = [];
  for (let i = ordered.length - 1; i >= 0; i--) {
    const event = ordered[i]!;
    if (taken.has(event.id)) continue;
    if (event.kind === 'undone') taken.add(event.event);
    inForce.push(event);
  }
  return inForce.reverse();
}

const UNDOABLE = new Set<RunEvent['kind']>(['began', 'done', 'skipped', 'reading', 'happened', 'finished']);

function lastUndoable(active: readonly RunEvent[]): RunEvent | null {
  for (let i = active.length - 1; i >= 0; i--) if (UNDOABLE.has(active[i]!.kind)) return active[i]!;
  return null;
}
