import { useMemo } from 'react';
import { Guard } from '#web/shell/Guard.tsx';
import { BandPlot } from './BandPlot.tsx';
import { useCard } from './card-context.tsx';
import { fitPlot } from './fit-plots.ts';

/** The fit drawn over its data: one chart for each film or cup that a figure or an observation is about. */
export function FitSection() {
  const { shown, system } = useCard();
  const curves = shown.charts?.fit;
  const plots = useMemo(() => (curves ?? []).map((curve) => fitPlot(curve, system)), [curves, system]);
  return (
    <section aria-labelledby="fit-title">
      <h2 id="fit-title">The fit over the data</h2>
      <p className="section-note">
        The line is the middle of the fit, the tone around it 5 to 95 %. Numbered marks are what the label or
        the shop says.
      </p>
      {curves === undefined && (
        <p className="waiting" role="status">
          Drawing …
        </p>
      )}
      {curves?.length === 0 && <p className="none">Nothing to draw yet: no figure says a time.</p>}
      <div className="plots">
        {plots.map((plot, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two charts may be of the same film
          <figure key={`${i} ${plot.title}`} className="plot">
            <figcaption>{plot.title}</figcaption>
            <Guard what="This chart" of={plot}>
              <BandPlot
                says={`${plot.title}. ${plot.list.map(({ number, words }) => `${number}: ${words}`).join('. ')}.`}
                x={plot.x}
                y={plot.y}
                bands={[plot.band]}
                marks={plot.marks}
              />
            </Guard>
            <ol className="plot-list">
              {plot.list.map(({ number, words }) => (
                <li key={number} value={number}>
                  {words}
                </li>
              ))}
            </ol>
          </figure>
        ))}
      </div>
    </section>
  );
}
