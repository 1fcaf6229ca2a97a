/** Walls of a plan: a heavy line with hatching behind it. */
import { useId } from 'react';

/** The strip behind a back wall and two side walls, clockwise from the front of the left one; `deep` px thick. */
export function alongWall(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
  x4: number,
  y4: number,
  deep = 12,
): string {
  return `M${x1} ${y1}L${x2} ${y2}L${x3} ${y3}L${x4} ${y4}H${x4 + deep}V${y3 - deep}H${x2 - deep}V${y1}Z`;
}

export function pathOf(points: readonly (readonly [number, number])[]): string {
  return `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
}

export function WallHatch({ d }: { readonly d: string }) {
  const id = `fit-hatch-${useId().replaceAll(/\W/g, '')}`;
  return (
    <>
      <defs>
        <pattern id={id} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className="fit-hatch" x1="0" y1="0" x2="0" y2="5" />
        </pattern>
      </defs>
      <path d={d} fill={`url(#${id})`} />
    </>
  );
}
