/** The scale of the map: tones with the thickness of each contour line, and the thinnest and thickest film above its ends. */
import type { FilmMapResult } from '#core/film/map-result.ts';
import type { System } from '#core/quantity/units.ts';
import { textWidth } from '#web/charts/label-places.ts';
import { speaker } from '#web/units/speak.ts';
import { rampCss, type Scale, shareOf } from './ramp.ts';

const SIZE = 14;
const BAR_TOP = 22;
const BAR_HEIGHT = 18;
const HEIGHT = BAR_TOP + BAR_HEIGHT + 28;

interface Props {
  readonly scale: Scale;
  readonly map: Pick<FilmMapResult, 'thinnest' | 'thickest'>;
  readonly system: System;
  readonly width: number;
}

export function MapLegend({ scale, map, system, width }: Props) {
  const { thickness } = speaker(system);
  const wide = Math.min(width, 560);
  const left = 2;
  const span = wide - 2 * left;
  const x = (film_m: number): number => left + shareOf(scale, film_m) * span;
  const marks = scale.levels_m.map((film_m) => ({ film_m, at: x(film_m), text: thickness(film_m) }));
  const [thinnest, thickest] = [thickness(map.thinnest.thickness_m), thickness(map.thickest.thickness_m)];
  const below = BAR_TOP + BAR_HEIGHT;
  let free = 0;
  return (
    <svg
      className="film-map-legend"
      width={wide}
      height={HEIGHT}
      viewBox={`0 0 ${wide} ${HEIGHT}`}
      role="img"
      aria-label={`Scale of film thickness, light is thin, dark is thick: thinnest ${thinnest}, thickest ${thickest}. Lines at ${marks.map((mark) => mark.text).join(', ')}.`}
    >
      <path className="film-map-thinnest" d={`M${left + 7} 3l6 11h-12z`} />
      <text x={left + 18} y={14} fontSize={SIZE} fontWeight={700}>
        thinnest {thinnest}
      </text>
      <text x={wide - left} y={14} fontSize={SIZE} textAnchor="end">
        thickest {thickest}
      </text>
      {Array.from({ length: 48 }, (_, i) => (
        <rect
          // biome-ignore lint/suspicious/noArrayIndexKey: fixed steps of a scale
          key={i}
          x={left + (i * span) / 48}
          y={BAR_TOP}
          width={Math.min(span / 48 + 0.6, span - (i * span) / 48)}
          height={BAR_HEIGHT}
          fill={rampCss((i + 0.5) / 48)}
        />
      ))}
      <rect className="film-map-frame" x={left} y={BAR_TOP} width={span} height={BAR_HEIGHT} />
      {marks.map(({ film_m, at, text }) => {
        const half = textWidth(text, SIZE) / 2;
        const middle = Math.min(wide - half, Math.max(half, at));
        const shown = middle - half >= free;
        if (shown) free = middle + half + 8;
        return (
          <g key={film_m}>
            <path className="film-map-tick" d={`M${at} ${below}v7`} />
            {shown && (
              <text x={middle} y={below + 21} textAnchor="middle" fontSize={SIZE}>
                {text}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
