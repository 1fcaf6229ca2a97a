/** The hatching that stands for "somewhere in here": the 5 to 95 % range of a time, and what must not be. */

export interface HatchIds {
  readonly range: string;
  readonly stop: string;
}

/** Ids for one chart from React's useId, so two charts on a page do not share a pattern. */
export function hatchIds(id: string): HatchIds {
  const safe = id.replace(/[^a-zA-Z0-9_-]/g, '');
  return { range: `hatch-${safe}`, stop: `hatch-stop-${safe}` };
}

export function Hatch({ ids }: { readonly ids: HatchIds }) {
  return (
    <defs>
      <pattern
        id={ids.range}
        width="5"
        height="5"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <line className="chart-hatch" x1="0" y1="0" x2="0" y2="5" />
      </pattern>
      <pattern
        id={ids.stop}
        width="4"
        height="4"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(-45)"
      >
        <line className="chart-hatch-stop" x1="0" y1="0" x2="0" y2="4" />
      </pattern>
    </defs>
  );
}
