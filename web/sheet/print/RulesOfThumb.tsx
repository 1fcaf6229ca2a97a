import type { CoatPlan, StepKind } from '#core/pour/plan.ts';
import { ruleText } from '../rules.ts';

const NAMES: Readonly<Record<StepKind, string>> = {
  mix: 'Mix',
  pour: 'Pour',
  meld: 'Meld',
  'wrap edges': 'Edges',
  torch: 'Torch',
  'scrape drips': 'Drips',
  'hands off': 'Hands off',
};

/** The rules of thumb the steps of all coats follow, each once on the whole order. */
export function RulesOfThumb({ plans }: { readonly plans: readonly CoatPlan[] }) {
  const rules = new Map<string, StepKind>();
  for (const { steps } of plans)
    for (const step of steps) if (step.rule !== '' && !rules.has(step.rule)) rules.set(step.rule, step.kind);
  if (rules.size === 0) return null;
  return (
    <section className="wo-rules">
      <h2>
        Rules of thumb <span className="of">common practice, no source unless said</span>
      </h2>
      <ul>
        {[...rules].map(([rule, kind]) => (
          <li key={rule}>
            <strong>{NAMES[kind]}.</strong> {ruleText(rule)}
          </li>
        ))}
      </ul>
    </section>
  );
}
