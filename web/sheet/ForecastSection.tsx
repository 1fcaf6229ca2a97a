import { useState } from 'react';
import type { JobForecast } from '#core/job/forecast.ts';
import type { OrderOffer } from '#core/pour/search/order-of-plan.ts';
import { CalendarLink } from '#web/chance/CalendarLink.tsx';
import { ChancePart } from '#web/chance/ChancePart.tsx';
import { coloursInOrder } from '#web/chance/colour-order.ts';
import { ForecastChart } from '#web/charts/ForecastChart.tsx';
import { StageBar } from '#web/charts/StageBar.tsx';
import { BandReasons } from '#web/film/BandReasons.tsx';
import { FilmPart } from '#web/film/FilmPart.tsx';
import { useCoatFilm } from '#web/film/use-film.ts';
import { Guard } from '#web/shell/Guard.tsx';
import { Answers } from './Answers.tsx';
import { useSheet } from './context.tsx';
import { filmPieces } from './film-pieces.ts';
import { NextCoatLine } from './NextCoatLine.tsx';
import { stillNeeds } from './needs.ts';
import { RULES_NOTE } from './rules.ts';
import { Section } from './Section.tsx';
import { StageTable } from './StageTable.tsx';
import { forecastSummary, type PlannedCoat, plans } from './summaries.ts';
import { Verdict } from './Verdict.tsx';
import { WaysOut } from './WaysOut.tsx';

/** Does it get down in time, and when may the next thing happen? */
export function ForecastSection() {
  const { document, forecast, speak } = useSheet();
  const all = plans(forecast);
  const [band, setBand] = useState<OpenBand | null>(null);
  return (
    <Section
      id="forecast"
      name="Forecast"
      summary={forecastSummary(forecast)}
      needs={all.length === 0 ? stillNeeds(forecast) : []}
    >
      {all.length === 0 && (
        <p className="section-note">
          How the film and the cups thicken, and what that leaves time for, once the piece, a coat and the air
          are known.
        </p>
      )}
      {all.map((coat) => (
        <PlannedForecast
          key={coat.id}
          coat={coat}
          system={speak.system}
          clockStart={document.coats.find(({ id }) => id === coat.id)?.startsAt ?? ''}
          forecast={forecast}
          band={band?.coat === coat.id ? band.key : null}
          onBand={(key) => setBand(key === null ? null : { coat: coat.id, key })}
        />
      ))}
    </Section>
  );
}

/** Of all charts of the job one band at most is open. */
interface OpenBand {
  readonly coat: string;
  readonly key: string;
}

interface Props {
  readonly coat: PlannedCoat;
  readonly system: 'us' | 'metric';
  readonly clockStart: string;
  readonly forecast: JobForecast | null;
  readonly band: string | null;
  readonly onBand: (key: string | null) => void;
}

function PlannedForecast({ coat, system, clockStart, forecast, band, onBand }: Props) {
  const { name, plan, nextCoat } = coat;
  // The coat's own figures stand in the forecast beside its plan.
  const { pour = null, request = null } = forecast?.coats.find(({ id }) => id === coat.id) ?? {};
  const pieces = filmPieces(forecast, coat.id);
  const [asked, setAsked] = useState('');
  const on = pieces.find(({ id }) => id === asked) ?? pieces[0];
  const of = pour === null || on === undefined ? null : { plan, pour, measures: on.measures };
  const film = useCoatFilm(of, system, band !== null);
  const { document, edit } = useSheet();
  const takeOrder = ({ turns }: OrderOffer) => {
    const colours = coloursInOrder(document.coats.find(({ id }) => id === coat.id)?.colours ?? [], turns);
    if (colours === null) return null;
    return () =>
      edit(`Order of colours of ${name}`, '', (job) => ({
        ...job,
        coats: job.coats.map((each) => (each.id === coat.id ? { ...each, colours } : each)),
      }));
  };
  const start = clockStart === '' ? {} : { clockStart };
  return (
    <div className="per-coat">
      <h3>
        {name} <Verdict verdict={plan.verdict} />
      </h3>
      <p className="says">{plan.says}</p>
      {request === null ? (
        <WaysOut ways={plan.waysOut} />
      ) : (
        <Guard what="The chance" of={plan}>
          <ChancePart
            name={name}
            plan={plan}
            request={request}
            system={system}
            waysPlanned={<WaysOut ways={plan.waysOut} />}
            takeOrder={takeOrder}
          />
        </Guard>
      )}
      <Guard what="The chart" of={plan}>
        <ForecastChart
          plan={plan}
          system={system}
          {...start}
          {...(of === null
            ? {}
            : {
                why: {
                  open: band,
                  onOpen: onBand,
                  render: (row) => (
                    <BandReasons row={row} request={{ ...of.pour, plan, system }} film={film.state} />
                  ),
                },
              })}
        />
      </Guard>
      <Guard what="The bar of stages" of={plan}>
        <StageBar
          stages={plan.stages}
          system={system}
          {...start}
          words={
            <>
              <StageTable plan={plan} clockStart={clockStart} />
              <p className="rules-note">{RULES_NOTE}</p>
            </>
          }
        />
      </Guard>
      <Answers plan={plan} />
      {pieces.length > 1 && (
        <label className="field film-piece">
          <span className="field-label">Film of {name} looked at on</span>
          <select value={on?.id ?? ''} onChange={(event) => setAsked(event.target.value)}>
            {pieces.map((each) => (
              <option key={each.id} value={each.id}>
                {each.name}
              </option>
            ))}
          </select>
        </label>
      )}
      {of !== null && on !== undefined && (
        <FilmPart
          key={on.id}
          name={pieces.length > 1 ? `${name} on ${on.name}` : name}
          {...of}
          piece={on.piece}
          share={on.share}
          system={system}
          film={film}
        />
      )}
      <NextCoatLine next={nextCoat} />
      <CalendarLink coatId={coat.id} startsAt={clockStart} />
    </div>
  );
}
