import { useEffect, useSyncExternalStore } from 'react';

interface Toast {
  readonly id: number;
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void } | undefined;
}

let toasts: readonly Toast[] = [];
let count = 0;
const listeners = new Set<() => void>();

function set(next: readonly Toast[]): void {
  toasts = next;
  for (const listener of listeners) listener();
}

/** Says what was done, with a way back. It stays until it is closed, or 12 seconds when nobody is on it. */
export function toast(text: string, action?: Toast['action']): void {
  count += 1;
  set([...toasts.slice(-2), { id: count, text, action }]);
}

const drop = (id: number) => set(toasts.filter((each) => each.id !== id));
const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export function Toasts() {
  const list = useSyncExternalStore(subscribe, () => toasts);
  return (
    <div className="toasts" role="status" aria-live="polite">
      {list.map((each) => (
        <ToastLine key={each.id} toast={each} />
      ))}
    </div>
  );
}

const STAYS_MS = 12_000;

function ToastLine({ toast: each }: { readonly toast: Toast }) {
  useEffect(() => {
    let timer = setTimeout(function end() {
      if (document.activeElement?.closest('.toasts')) timer = setTimeout(end, STAYS_MS);
      else drop(each.id);
    }, STAYS_MS);
    return () => clearTimeout(timer);
  }, [each.id]);
  return (
    <p className="toast">
      <span>{each.text}</span>
      {each.action !== undefined && (
        <button
          type="button"
          onClick={() => {
            each.action?.run();
            drop(each.id);
          }}
        >
          {each.action.label}
        </button>
      )}
      <button type="button" aria-label="Close this message" onClick={() => drop(each.id)}>
        ×
      </button>
    </p>
  );
}
