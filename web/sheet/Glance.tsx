import type { CoatPlan, StageKey } from '#core/pour/plan.ts';
import { formatRange } from '#core/quantity/format.ts';
import { useSheet } from './context.tsx';
import { Drawing } from './piece/Drawing.tsx';
import { openSection } from './Section.tsx';
import { plans } from './summaries.ts';
import { Verdict } from './Verdict.tsx';

const shown: readonly StageKey[] = ['working end', 'recoat opens', 'recoat closes', 'handle', 'in use'];

/** On a wide screen, beside the sheet: the figures that follow while another section is being changed. */
export function Glance() {
  const { forecast, behind, speak } = useSheet();
  const all = plans(forecast);
  return (
    <aside className="glance" aria-label="What follows" data-behind={behind || undefined}>
      <Drawing small />
      {all.map(({ id, name, plan }) => (
        <section key={id} className="glance-coat">
          <h2>
            <button type="button" className="linklike" onClick={() => openSection('forecast')}>
              {name}
            </button>{' '}
            <Verdict verdict={plan.verdict} />
          </h2>
          <p className="glance-mass">
            <span>{speak.mass(plan.quantity.mass_kg)}</span> in {plan.cups.length}{' '}
            {plan.cups.length === 1 ? 'cup' : 'cups'}, {speak.volume(plan.quantity.volume_m3)}
          </p>
          <dl className="glance-stages">
            {stagesOf(plan).map(({ key, label, at }) => (
              <div key={key}>
                <dt>{label}</dt>
                <dd>
                  {at === null ? '–' : formatRange(at.low_s, at.mid_s, at.high_s, 'duration', speak.system)}
                </dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </aside>
  );
}

function stagesOf(plan: CoatPlan) {
  return plan.stages.filter((stage) => shown.includes(stage.key));
}
