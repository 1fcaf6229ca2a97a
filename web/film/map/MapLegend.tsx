/** The scale of the map: tones with the thickness of each contour line and of both ends. */
import type { System } from '#core/quantity/units.ts';
import { speaker } from '#web/units/speak.ts';
import { rampCss, type Scale, shareOf } from './ramp.ts';

const HEIGHT = 46;

export function MapLegend({ scale, system, width }: { scale: Scale; system: System; width: number }) {
  const { thickness } = speaker(system);
  const wide = Math.min(width, 560);
  const left = 2;
  const span = wide - 2 * left;
  const x = (film_m: number): number => left + shareOf(scale, film_m) * span;
  const marks = scale.levels_m.map((film_m) => ({ film_m, at: x(film_m), text: thickness(film_m) }));
  let free = 0;
  return (
    <svg
      className="film-map-legend"
      width={wide}
      height={HEIGHT}
      viewBox={`0 0 ${wide} ${HEIGHT}`}
      role="img"
      aria-label={`Scale from ${thickness(scale.low_m)}, light, to ${thickness(scale.high_m)}, dark. Lines at ${marks.map((mark) => mark.text).join(', ')}.`}
    >
      {Array.from({ length: 48 }, (_, i) => (
        <rect
          // biome-ignore lint/suspicious/noArrayIndexKey: fixed steps of a scale
          key={i}
          x={left + (i * span) / 48}
          y={2}
          width={span / 48 + 0.6}
          height={18}
          fill={rampCss((i + 0.5) / 48)}
        />
      ))}
      <rect className="film-map-frame" x={left} y={2} width={span} height={18} />
      {marks.map(({ film_m, at, text }) => {
        const half = text.length * 3.6;
        const middle = Math.min(wide - half, Math.max(half, at));
        const shown = middle - half >= free;
        if (shown) free = middle + half + 8;
        return (
          <g key={film_m}>
            <path className="film-map-tick" d={`M${at} 2V26`} />
            {shown && (
              <text x={middle} y={40} textAnchor="middle" fontSize={13}>
                {text}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
