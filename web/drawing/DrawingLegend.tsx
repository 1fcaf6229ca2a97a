/** What the lines of this drawing mean; only the kinds it shows. */
import type { Drawing, EdgeStyle } from '#core/piece/drawing.ts';
import type { SplashStrip } from '#core/piece/splash-strips.ts';
import type { System } from '#core/quantity/units.ts';
import { splashWords } from './DrawnSplashes.tsx';

const WORDS: Readonly<Record<EdgeStyle, string>> = {
  finished: 'finished: coated and seen',
  wall: 'wall: against a wall or appliance',
  seam: 'seam: joined to another piece',
  dammed: 'dammed: resin stops at the rim',
  unknown: 'kind of edge not yet said',
};
const ORDER: readonly EdgeStyle[] = ['finished', 'wall', 'seam', 'dammed', 'unknown'];

interface Props {
  readonly drawing: Drawing;
  readonly splashes: readonly SplashStrip[];
  readonly system: System;
}

export function DrawingLegend({ drawing, splashes, system }: Props) {
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
      {splashes.length > 0 && (
        <li>
          <svg width="36" height="16" aria-hidden="true">
            <path className="drawing-splash-strip" d="M2 5H34V12H2Z" />
          </svg>
          stands on the top: {splashes.map((splash) => splashWords(splash, system)).join('; ')}
        </li>
      )}
    </ul>
  );
}
