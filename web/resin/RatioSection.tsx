import { fromSI } from '#core/quantity/units.ts';
import { niceTicks } from '#web/charts/axis.ts';
import { Guard } from '#web/shell/Guard.tsx';
import { BandPlot } from './BandPlot.tsx';
import { useCard } from './card-context.tsx';

/** What an error of the mix ratio costs in final hardness. */
export function RatioSection() {
  const { shown, system, speak } = useCard();
  const points = shown.charts?.ratio;
  if (points === undefined || points.length < 2) return null;
  const unit = system === 'us' ? 'F' : 'C';
  const shownAt = (value_K: number) => fromSI(value_K, unit);
  const lowest = Math.min(...points.map(({ tg_K }) => shownAt(tg_K.low)));
  const highest = Math.max(...points.map(({ tg_K }) => shownAt(tg_K.high)));
  const at = (error: number) => points.find((point) => Math.abs(point.error - error) < 1e-6)?.tg_K.mid;
  const [exact, tenth] = [at(0), at(-0.1)];
  return (
    <section aria-labelledby="ratio-title">
      <h2 id="ratio-title">What a wrong mix ratio costs</h2>
      {exact !== undefined && tenth !== undefined && (
        <p>
          Mixed right, the glass transition ends near {speak.temperature(exact)}; with a tenth too little of
          part B it ends near {speak.temperature(tenth)} and never gets further, however long it cures. Above
          its glass transition a coat is soft and takes prints.
        </p>
      )}
      <figure className="plot plot-alone">
        <figcaption>Highest glass transition such a mix can reach</figcaption>
        <Guard what="This chart" of={points}>
          <BandPlot
            says={`Final glass transition by error of the mix ratio. ${points
              .filter((_, i) => i % 4 === 0)
              .map((p) => `${Math.round(p.error * 100)} % of part B: ${speak.temperature(p.tg_K.mid)}`)
              .join('. ')}.`}
            x={{
              kind: 'linear',
              low: -25,
              high: 25,
              title: 'part B too little or too much, %',
              ticks: [-20, -10, 0, 10, 20].map((value) => ({
                at: value,
                text: value > 0 ? `+${value}` : String(value).replace('-', '−'),
              })),
            }}
            y={{
              kind: 'linear',
              low: lowest - 2,
              high: highest + 2,
              title: `°${unit}`,
              ticks: niceTicks(lowest - 2, highest + 2, 7).map((value) => ({
                at: value,
                text: String(value),
              })),
            }}
            bands={[
              {
                name: 'Final glass transition',
                points: points.map(({ error, tg_K }) => ({
                  x: error * 100,
                  low: shownAt(tg_K.low),
                  mid: shownAt(tg_K.mid),
                  high: shownAt(tg_K.high),
                })),
              },
            ]}
          />
        </Guard>
      </figure>
    </section>
  );
}
