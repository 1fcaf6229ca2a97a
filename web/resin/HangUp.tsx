import { fromSI } from '#core/quantity/units.ts';
import { useShop } from '#web/api/queries.ts';
import { minuteTicks } from '#web/charts/axis.ts';
import { afterPourText } from '#web/charts/time-text.ts';
import { Guard } from '#web/shell/Guard.tsx';
import { BandPlot } from './BandPlot.tsx';
import { useCard } from './card-context.tsx';
import { spanText } from './range-words.ts';

/** Working time against temperature and against what is in the cup: the sheet to print and hang up by the mixing bench. */
export function HangUp() {
  const { shown, document, system, speak } = useCard();
  const shop = useShop();
  if (shown.charts === null) return null;
  const unit = system === 'us' ? 'F' : 'C';
  const { workingTime } = shown.charts;
  const cups = shown.charts.cups.filter((cup) => cup.pourNow !== null);
  const degrees = workingTime.map((point) => Math.round(fromSI(point.temperature_K, unit)));
  const longest_min = Math.max(10, ...workingTime.map((point) => point.workingTime.high_s / 60));
  const cupLongest_min = Math.max(
    10,
    ...cups.map((c) => Math.max(c.pourNow!.high_s, c.flash?.high_s ?? 0) / 60),
  );
  const grams = cups.map((cup) => cup.mass_kg * 1000);
  const minutes = (high: number) => ({
    kind: 'linear' as const,
    low: 0,
    high: high * 1.05,
    title: 'Minutes',
    ticks: minuteTicks(0, high * 1.05, 8).map((at) => ({ at, text: String(at) })),
  });
  return (
    <section className="hang-up" aria-labelledby="hang-up">
      <div className="hang-up-head">
        <h2 id="hang-up">How long you have</h2>
        <button type="button" onClick={() => window.print()}>
          Print this to hang up
        </button>
        <p className="hang-up-name">
          {document.name}
          {shop.name !== '' && <span className="of"> {shop.name}</span>}
        </p>
      </div>
      <div className="plots">
        <figure className="plot">
          <figcaption>
            On the top: a film of {speak.thickness(0.0025)}, by the temperature of the shop
          </figcaption>
          {workingTime.length > 1 && (
            <Guard what="This chart" of={shown.charts}>
              <BandPlot
                says={`Working time of a film by temperature. ${workingTime
                  .map((point, i) => `${degrees[i]} °${unit}: ${spanText(point.workingTime)}`)
                  .join('. ')}.`}
                x={{
                  kind: 'linear',
                  low: degrees[0]!,
                  high: degrees.at(-1)!,
                  title: `shop, °${unit}`,
                  ticks: degrees.map((at) => ({ at, text: String(at) })),
                }}
                y={minutes(longest_min)}
                bands={[
                  {
                    name: 'Working time',
                    points: workingTime.map((point, i) => bandPoint(degrees[i]!, point.workingTime)),
                  },
                ]}
              />
            </Guard>
          )}
          <table className="hang-table">
            <thead>
              <tr>
                <th scope="col">Shop</th>
                <th scope="col">Count on</th>
                <th scope="col">Range</th>
              </tr>
            </thead>
            <tbody>
              {workingTime.map((point, i) => (
                <tr key={degrees[i]}>
                  <th scope="row">
                    {degrees[i]} °{unit}
                  </th>
                  <td>
                    <strong>{afterPourText(point.workingTime.low_s)}</strong>
                  </td>
                  <td>{spanText(point.workingTime)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </figure>
        <figure className="plot">
          <figcaption>
            <span className="hang-up-again">{document.name}: </span>
            In the cup, at {speak.temperature(297.15)}: by what is in it
          </figcaption>
          {cups.length > 1 && (
            <Guard what="This chart" of={shown.charts}>
              <BandPlot
                says={`Time in the cup by mass. ${cups
                  .map(
                    (cup) =>
                      `${cup.mass_kg * 1000} g: out after ${spanText(cup.pourNow)}, hottest after ${spanText(cup.flash)}`,
                  )
                  .join('. ')}.`}
                x={{
                  kind: 'log',
                  low: grams[0]!,
                  high: grams.at(-1)!,
                  title: 'grams in the cup',
                  ticks: grams.map((at) => ({ at, text: String(Math.round(at)) })),
                }}
                y={minutes(cupLongest_min)}
                bands={[
                  {
                    name: 'At its hottest (dashed)',
                    dashed: true,
                    points: cups.flatMap((cup) =>
                      cup.flash === null ? [] : [bandPoint(cup.mass_kg * 1000, cup.flash)],
                    ),
                  },
                  {
                    name: 'Out of the cup',
                    points: cups.map((cup) => bandPoint(cup.mass_kg * 1000, cup.pourNow!)),
                  },
                ]}
              />
            </Guard>
          )}
          <table className="hang-table">
            <thead>
              <tr>
                <th scope="col">In the cup</th>
                <th scope="col">Out of it by</th>
                <th scope="col">Hottest after (dashed)</th>
              </tr>
            </thead>
            <tbody>
              {cups.map((cup) => (
                <tr key={cup.mass_kg}>
                  <th scope="row">{Math.round(cup.mass_kg * 1000)} g</th>
                  <td>
                    <strong>{afterPourText(cup.pourNow!.low_s)}</strong>
                  </td>
                  <td>{spanText(cup.flash)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </figure>
      </div>
      <p className="section-note">
        “Count on” and “out of it by” are the early end (5 %). Warmer parts, a deeper film or a taller cup are
        quicker. A cup that smokes or boils is left alone, outdoors; follow the product’s safety data sheet.
      </p>
    </section>
  );
}

const bandPoint = (
  x: number,
  range: { readonly low_s: number; readonly mid_s: number; readonly high_s: number },
) => ({
  x,
  low: range.low_s / 60,
  mid: range.mid_s / 60,
  high: range.high_s / 60,
});
