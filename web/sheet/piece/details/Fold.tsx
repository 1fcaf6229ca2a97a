import { type ReactNode, useEffect, useState } from 'react';
import './fold.css';

interface Props {
  /** Unlike that of any other fold on the page. */
  readonly id: string;
  readonly name: string;
  /** Real content in one line. */
  readonly summary: ReactNode;
  /** Number of problems inside. */
  readonly problems?: number;
  readonly children: ReactNode;
}

const KEY = 'pourwright.open-folds';

function remembered(): readonly string[] {
  try {
    const list: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(list) ? list.filter((each) => typeof each === 'string') : [];
  } catch {
    return [];
  }
}

function remember(id: string, open: boolean): void {
  try {
    const others = remembered().filter((each) => each !== id);
    localStorage.setItem(KEY, JSON.stringify(open ? [...others, id] : others));
  } catch {
    // A device without storage forgets what was open; nothing else depends on it.
  }
}

/** A part of a section that is folded to a line saying what is in it, and opens in place. */
export function Fold({ id, name, summary, problems = 0, children }: Props) {
  const [open, setOpen] = useState(() => remembered().includes(id));
  // The address of a field inside opens the part it stands in.
  useEffect(() => {
    if (window.location.hash === `#${id}`) setOpen(true);
  }, [id]);
  return (
    <section className="fold" id={id} aria-labelledby={`${id}-name`} data-open={open || undefined}>
      <h3 className="fold-head">
        <button
          type="button"
          aria-expanded={open}
          aria-controls={`${id}-body`}
          onClick={() => {
            setOpen(!open);
            remember(id, !open);
          }}
        >
          <span className="fold-name" id={`${id}-name`}>
            {name}
          </span>
          <span className="fold-summary">
            {summary}
            {problems > 0 && (
              <span className="part-problems">
                {problems === 1 ? 'One entry needs' : `${problems} entries need`} attention.
              </span>
            )}
          </span>
          <span className="part-sign" aria-hidden="true" />
        </button>
      </h3>
      <div className="fold-body" id={`${id}-body`} hidden={!open}>
        {open && children}
      </div>
    </section>
  );
}
