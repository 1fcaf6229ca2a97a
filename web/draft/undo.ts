/** Undo and redo over whole documents. Unchanged parts are shared between the steps, so a long history is cheap. */

export interface Step<T> {
  readonly document: T;
  /** What the step did, for the undo button: "Width", "Remove coat". */
  readonly label: string;
}

export interface History<T> {
  readonly past: readonly Step<T>[];
  readonly present: T;
  readonly future: readonly Step<T>[];
  /** Typing in one place within a short time is one step; this is that place, '' when the next change opens a new step. */
  readonly open: string;
  readonly openedAt_ms: number;
}

export const LONGEST_HISTORY = 300;
/** A pause longer than this closes a step, so a long stretch of typing is undone in pieces. */
export const PAUSE_MS = 1500;

export function startHistory<T>(document: T): History<T> {
  return { past: [], present: document, future: [], open: '', openedAt_ms: 0 };
}

/** `place` names what is being typed in; '' never joins the step before. */
export function change<T>(
  history: History<T>,
  document: T,
  label: string,
  place: string,
  now_ms: number,
): History<T> {
  if (Object.is(document, history.present)) return history;
  const joins = place !== '' && place === history.open && now_ms - history.openedAt_ms <= PAUSE_MS;
  const past = joins
    ? history.past
    : [...history.past, { document: history.present, label }].slice(-LONGEST_HISTORY);
  return { past, present: document, future: [], open: place, openedAt_ms: now_ms };
}

export function undo<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (last === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: last.document,
    future: [{ document: history.present, label: last.label }, ...history.future],
    open: '',
    openedAt_ms: 0,
  };
}

export function redo<T>(history: History<T>): History<T> {
  const next = history.future[0];
  if (next === undefined) return history;
  return {
    past: [...history.past, { document: history.present, label: next.label }],
    present: next.document,
    future: history.future.slice(1),
    open: '',
    openedAt_ms: 0,
  };
}

/** Another document takes the place of the present one (a merge with what someone else saved); it can be undone. */
export function replace<T>(history: History<T>, document: T, label: string): History<T> {
  return change(history, document, label, '', 0);
}
