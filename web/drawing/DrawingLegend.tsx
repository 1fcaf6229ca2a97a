/** What the lines of this drawing mean; only the kinds it shows. */
import type { Drawing, EdgeStyle } from '#core/piece/drawing.ts';

const WORDS: Readonly<Record<EdgeStyle, string>> = {
  finished: 'finished: coated and seen',
  wall: 'wall: against a wall or appliance',
  seam: 'seam: joined to another piece',
  dammed: 'dammed: resin stops at the rim',
  unknown: 'kind of edge not yet said',
};
const ORDER: readonly EdgeStyle[] = ['finished', 'wall', 'seam', 'dammed', 'unknown'];

export function DrawingLegend({ drawing }: { readonly drawing: Drawing }) {
  const shown = new Set<EdgeStyle>([
    ...drawing.outline.map((s) => s.style),
    ...drawing.cutOuts.flatMap((c) => c.segments.map((s) => s.style)),
  ]);
  return (
    <ul className="drawing-legend">
      {ORDER.filter((style) => shown.has(style)).map((style) => (
        <li key={style}>
          <svg width="36" height="16" aria-hidden="true">
            {style === 'wall' && (
              <path className="drawing-hatch" d="M3 10l7 -7M10 10l7 -7M17 10l7 -7M24 10l7 -7" />
            )}
            <path className={`drawing-edge drawing-${style}`} d="M2 10H34" />
          </svg>
          {WORDS[style]}
        </li>
      ))}
    </ul>
  );
}
