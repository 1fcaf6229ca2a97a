import { type ReactNode, useEffect, useState } from 'react';

export type SectionId = 'agree' | 'piece' | 'look' | 'coats' | 'mix' | 'forecast' | 'steps' | 'record';

const KEY = 'pourwright.open-sections';
const OPEN_FIRST: readonly SectionId[] = ['agree', 'piece'];
const CHANGED = 'pourwright-section';

function remembered(): Partial<Record<SectionId, boolean>> {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Record<SectionId, boolean>>;
  } catch {
    return {};
  }
}

function remember(id: SectionId, open: boolean): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ ...remembered(), [id]: open }));
  } catch {
    // A device without storage forgets which sections were open; nothing else depends on it.
  }
}

/** Opens a section from elsewhere (a link in a summary, an address with #forecast) and brings it into view. */
export function openSection(id: SectionId, field?: string): void {
  remember(id, true);
  window.dispatchEvent(new CustomEvent(CHANGED, { detail: id }));
  requestAnimationFrame(() => {
    const target = field === undefined ? null : document.getElementById(field);
    if (target !== null) {
      target.scrollIntoView({ block: 'center' });
      target.focus({ preventScroll: true });
    } else {
      document.getElementById(id)?.scrollIntoView({ block: 'start' });
      document.getElementById(`${id}-button`)?.focus({ preventScroll: true });
    }
  });
}

const sectionOf: Readonly<Record<string, SectionId>> = {
  title: 'agree',
  customer: 'agree',
  agreed: 'agree',
  piece: 'piece',
  otherPieces: 'piece',
  room: 'coats',
  coats: 'coats',
  record: 'record',
};

/** Asks the section of pieces for the piece at a place: "piece", "otherPieces.0". */
export const PIECE_ASKED = 'pourwright-piece';

/** Opens the section a place of the document stands in, and puts the focus on its field. */
export function openField(path: string): void {
  const piece = /^(?:piece|otherPieces\.\d+)(?=\.|$)/.exec(path)?.[0];
  if (piece !== undefined) window.dispatchEvent(new CustomEvent(PIECE_ASKED, { detail: piece }));
  const section = /^coats\.\d+\.look(?=\.|$)/.test(path)
    ? 'look'
    : (sectionOf[path.split('.')[0] ?? ''] ?? 'agree');
  openSection(section, `f-${path.replaceAll('.', '-')}`);
}

export function useHashSection(): void {
  useEffect(() => {
    const id = window.location.hash.slice(1);
    if (id !== '' && document.getElementById(`${id}-button`) !== null) openSection(id as SectionId);
  }, []);
}

interface Props {
  readonly id: SectionId;
  readonly name: string;
  /** Real content in one line. */
  readonly summary: ReactNode;
  /** What it still needs before it can say anything. */
  readonly needs?: readonly string[];
  /** Number of problems inside. */
  readonly problems?: number;
  readonly children: ReactNode;
}

/** One part of the sheet: a line that says what is in it, and opens in place. */
export function Section({ id, name, summary, needs = [], problems = 0, children }: Props) {
  const [open, setOpen] = useState(() => remembered()[id] ?? OPEN_FIRST.includes(id));
  useEffect(() => {
    const onChanged = (event: Event) => {
      if ((event as CustomEvent<SectionId>).detail === id) setOpen(true);
    };
    window.addEventListener(CHANGED, onChanged);
    return () => window.removeEventListener(CHANGED, onChanged);
  }, [id]);
  return (
    <section className="part" id={id} aria-labelledby={`${id}-name`} data-open={open || undefined}>
      <h2 className="part-head">
        <button
          type="button"
          id={`${id}-button`}
          aria-expanded={open}
          aria-controls={`${id}-body`}
          onClick={() => {
            setOpen(!open);
            remember(id, !open);
          }}
        >
          <span className="part-name" id={`${id}-name`}>
            {name}
          </span>
          <span className="part-summary">
            {summary}
            {needs.length > 0 && <span className="part-needs">Needs {listed(needs)}.</span>}
            {problems > 0 && (
              <span className="part-problems">
                {problems === 1 ? 'One entry needs' : `${problems} entries need`} attention.
              </span>
            )}
          </span>
          <span className="part-sign" aria-hidden="true" />
        </button>
      </h2>
      <div className="part-body" id={`${id}-body`} hidden={!open}>
        {open && children}
      </div>
    </section>
  );
}

/** "a, b and c"; long lists end in "and 3 more". */
export function listed(items: readonly string[], most = 4): string {
  const unique = [...new Set(items)];
  if (unique.length > most)
    return `${unique.slice(0, most - 1).join(', ')} and ${unique.length - most + 1} more`;
  if (unique.length < 2) return unique.join('');
  return `${unique.slice(0, -1).join(', ')} and ${unique.at(-1)}`;
}
