import type { Verdict as VerdictWord } from '#core/pour/plan.ts';

const marks: Readonly<Record<VerdictWord, string>> = {
  fits: 'M3 9.5 7.5 14 15 4',
  tight: 'M9 3v8M9 14v1.6',
  'does not fit': 'M4 4l10 10M14 4 4 14',
};

/** Fits, tight or does not fit: a mark, the word, and its colour. */
export function Verdict({ verdict }: { readonly verdict: VerdictWord }) {
  return (
    <strong className="verdict" data-verdict={verdict}>
      <svg viewBox="0 0 18 18" aria-hidden="true">
        <path d={marks[verdict]} fill="none" stroke="currentColor" strokeWidth="2.6" strokeLinecap="round" />
      </svg>
      {verdict}
    </strong>
  );
}
