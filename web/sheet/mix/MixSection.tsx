import { Cautions } from '../Cautions.tsx';
import { useSheet } from '../context.tsx';
import { stillNeeds } from '../needs.ts';
import { Section } from '../Section.tsx';
import { mixSummary, plans } from '../summaries.ts';
import { Bill } from './Bill.tsx';
import { CupTable } from './CupTable.tsx';

/** What to weigh: the bill with its working, then the cups in the order they are mixed. */
export function MixSection() {
  const { forecast, speak } = useSheet();
  const all = plans(forecast);
  return (
    <Section
      id="mix"
      name="Mix"
      summary={mixSummary(forecast, speak)}
      needs={all.length === 0 ? stillNeeds(forecast) : []}
    >
      {all.length === 0 && (
        <p className="section-note">The amounts follow from the piece, the coats and the room.</p>
      )}
      {all.map(({ id, name, plan }) => (
        <div className="per-coat" key={id}>
          <h3>
            {name} <span className="of">{speak.mass(plan.quantity.mass_kg)}</span>
          </h3>
          <div className="mix">
            <CupTable plan={plan} />
            <Bill quantity={plan.quantity} />
          </div>
          <Cautions cautions={plan.cautions} />
        </div>
      ))}
    </Section>
  );
}
