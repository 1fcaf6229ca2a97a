import { ForecastChart } from '#web/charts/ForecastChart.tsx';
import { StageBar } from '#web/charts/StageBar.tsx';
import { FilmPart } from '#web/film/FilmPart.tsx';
import { Guard } from '#web/shell/Guard.tsx';
import { Answers } from './Answers.tsx';
import { useSheet } from './context.tsx';
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
        />
      ))}
    </Section>
  );
}

interface Props {
  readonly coat: PlannedCoat;
  readonly system: 'us' | 'metric';
  readonly clockStart: string;
}

function PlannedForecast({ coat, system, clockStart }: Props) {
  const { name, plan, nextCoat } = coat;
  const start = clockStart === '' ? {} : { clockStart };
  return (
    <div className="per-coat">
      <h3>
        {name} <Verdict verdict={plan.verdict} />
      </h3>
      <p className="says">{plan.says}</p>
      <WaysOut ways={plan.waysOut} />
      <Guard what="The chart" of={plan}>
        <ForecastChart plan={plan} system={system} {...start} />
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
      <FilmOf id={coat.id} name={name} />
      <NextCoatLine next={nextCoat} />
    </div>
  );
}

/** The film of a planned coat; the coat's own figures stand in the forecast beside its plan. */
function FilmOf({ id, name }: { readonly id: string; readonly name: string }) {
  const { forecast, system } = useSheet();
  const coat = forecast?.coats.find((each) => each.id === id);
  if (!forecast?.piece || !forecast.measures || !coat?.plan || !coat.pour) return null;
  const { piece, measures } = forecast;
  return (
    <FilmPart
      name={name}
      plan={coat.plan}
      pour={coat.pour}
      piece={piece}
      measures={measures}
      system={system}
    />
  );
}
