/** From a curve of the fit to what its chart shows, in the units on screen. Pure. */
import { formatFilm, formatMass, formatTemperature } from '#core/quantity/format.ts';
import { fromSI, type System } from '#core/quantity/units.ts';
import type { FitCurve } from '#core/resin/fit-curves.ts';
import { afterPourTicks, minuteTicks, niceTicks } from '#web/charts/axis.ts';
import type { Axis, PlotBand, PlotMark } from './BandPlot.tsx';

export interface FitPlot {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly band: PlotBand;
  readonly marks: readonly PlotMark[];
  /** What the numbered marks are. */
  readonly list: readonly { readonly number: number; readonly words: string }[];
}

/** A cup is drawn up to here, or up to what was read in it: beyond, nobody stands beside it. */
const HOTTEST_SHOWN_K = 393.15;

export function fitPlot(curve: FitCurve, system: System): FitPlot {
  const { quantity, body, time_s, band, points } = curve;
  const unit = system === 'us' ? 'F' : 'C';
  const shown = (value: number): number =>
    quantity === 'cup temperature'
      ? fromSI(value, unit)
      : quantity === 'film hardness'
        ? value * (system === 'us' ? 1.8 : 1)
        : value;
  const most =
    quantity === 'cup temperature' ? Math.max(HOTTEST_SHOWN_K, ...points.map((p) => p.value ?? 0)) : Infinity;
  const values = [...band.flatMap((b) => [b.low, b.high]), ...points.flatMap((p) => p.value ?? [])]
    .map((value) => Math.min(value, most))
    .map(shown);
  const numbers = new Map<string, number>();
  for (const point of points) if (!numbers.has(point.said)) numbers.set(point.said, numbers.size + 1);
  const seen = new Set<string>();
  const many = points.length > 12;
  const marks = points.map((point): PlotMark => {
    const first = !seen.has(point.said);
    seen.add(point.said);
    return {
      x: point.time_s,
      y: point.value === null ? null : shown(Math.min(point.value, most)),
      number: first || !many ? numbers.get(point.said)! : null,
      faint: point.withdrawn,
    };
  });
  return {
    title: titleOf(curve, system),
    x: timeAxis(time_s, quantity === 'film hardness'),
    y: valueAxis(quantity, values, unit),
    band: {
      name: 'Fit, 5 to 95 %',
      points: time_s.map((x, i) => ({
        x,
        low: shown(band[i]!.low),
        mid: shown(band[i]!.mid),
        high: shown(band[i]!.high),
      })),
    },
    marks,
    list: [...numbers].map(([said, number]) => {
      const { source, withdrawn } = points.find((point) => point.said === said)!;
      const from = source === 'label' ? 'label' : withdrawn ? 'shop, withdrawn' : 'shop';
      return { number, words: `${said} (${from})` };
    }),
  };

  function titleOf({ quantity: kind }: FitCurve, of: System): string {
    const at = formatTemperature(body.temperature_K, of);
    const what =
      'film_m' in body
        ? `Film of ${formatFilm(body.film_m, of, { as: 'thickness' })}`
        : `Cup of ${formatMass(body.mass_kg)}`;
    const said = {
      'cup temperature': 'temperature in it',
      'film thickening': 'how it thickens',
      'film hardness': 'how it hardens',
    }[kind];
    return `${what} at ${at}: ${said}`;
  }
}

function timeAxis(time_s: readonly number[], log: boolean): Axis {
  const low = log ? time_s[0]! : 0;
  const high = time_s.at(-1)!;
  if (log)
    return {
      kind: 'log',
      low,
      high,
      title: 'after the pour, each step longer than the last',
      ticks: afterPourTicks(low, high).map(({ at_s, text }) => ({ at: at_s, text })),
    };
  const hours = high > 4 * 3600;
  return {
    kind: 'linear',
    low,
    high,
    title: hours ? 'hours after mixing' : 'minutes after mixing',
    ticks: hours
      ? niceTicks(0, high / 3600, 9).map((at) => ({ at: at * 3600, text: String(at) }))
      : minuteTicks(0, high / 60, 9).map((at) => ({ at: at * 60, text: String(at) })),
  };
}

function valueAxis(quantity: FitCurve['quantity'], values: readonly number[], unit: 'F' | 'C'): Axis {
  if (quantity === 'film thickening') {
    const high = Math.min(1000, Math.max(10, ...values.map((value) => value * 1.2)));
    return {
      kind: 'log',
      low: 1,
      high,
      title: 'Viscosity, times that of the fresh mix (1000: gel)',
      ticks: [1, 2, 5, 10, 20, 50, 100, 1000]
        .filter((at) => at <= high)
        .map((at) => ({ at, text: String(at) })),
    };
  }
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(1, (high - low) * 0.05);
  const title =
    quantity === 'cup temperature'
      ? `Temperature in the cup, °${unit}`
      : `Glass transition above the film's own temperature, ${unit === 'F' ? '°F' : 'K'}`;
  return {
    kind: 'linear',
    low: low - room,
    high: high + room,
    title,
    ticks: niceTicks(low - room, high + room, 7).map((at) => ({ at, text: String(at).replace('-', '−') })),
  };
}
