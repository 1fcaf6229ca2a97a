import { Fragment } from 'react';
import { PourLinks } from '#web/run/PourLinks.tsx';
import { Cautions } from './Cautions.tsx';
import { useSheet } from './context.tsx';
import { stillNeeds } from './needs.ts';
import { RunSheet } from './RunSheet.tsx';
import { Section } from './Section.tsx';
import { plans, stepsSummary } from './summaries.ts';

/** The run sheet: what is done when, by whom, and how long it may wait. */
export function StepsSection() {
  const { jobId, document, forecast, speak } = useSheet();
  const all = plans(forecast);
  return (
    <Section
      id="steps"
      name="Steps"
      summary={stepsSummary(forecast, speak)}
      needs={all.length === 0 ? stillNeeds(forecast) : []}
    >
      {all.length === 0 && <p className="section-note">The run sheet follows from the forecast.</p>}
      {all.map(({ id, name, plan }, i) => (
        <Fragment key={id}>
          <RunSheet
            name={name}
            plan={plan}
            before={all.slice(0, i).map((coat) => coat.plan)}
            startsAt={document.coats.find((coat) => coat.id === id)?.startsAt ?? ''}
            system={speak.system}
          />
          {forecast !== null && (
            <PourLinks
              jobId={jobId}
              coatId={id}
              title={document.title === '' ? name : `${document.title}, ${name}`}
              forecast={forecast}
              speak={speak}
            />
          )}
        </Fragment>
      ))}
      <Cautions cautions={forecast?.cautions ?? []} title="Always" />
    </Section>
  );
}
