import { type ReactNode, useMemo } from 'react';
import type { Chance } from '#core/pour/chance/chance.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { PlanRequest } from '#core/pour/plan-coat.ts';
import type { OrderOffer } from '#core/pour/search/order-of-plan.ts';
import type { System } from '#core/quantity/units.ts';
import { useShop } from '#web/api/queries.ts';
import { BetterOrder } from './BetterOrder.tsx';
import { chanceSays, inHundred, slackSays, weakestSays } from './chance-words.ts';
import './chance.css';
import { SlackStrip } from './SlackStrip.tsx';
import { SpreadsUsed } from './SpreadsUsed.tsx';
import { useChance } from './use-chance.ts';
import { WaysByChance } from './WaysByChance.tsx';

interface Props {
  readonly name: string;
  readonly plan: CoatPlan;
  readonly request: PlanRequest;
  readonly system: System;
  /** The ways out of the plan, shown until they are ranked by chance. */
  readonly waysPlanned: ReactNode;
  /** Puts the colours in the order offered; null where they cannot say it. */
  readonly takeOrder: (offer: OrderOffer) => (() => void) | null;
}

/** How likely the pour is done in time, what breaks it, and what would help most. */
export function ChancePart({ name, plan, request, system, waysPlanned, takeOrder }: Props) {
  const { spreads } = useShop();
  const of = useMemo(() => ({ plan, request, spreads }), [plan, request, spreads]);
  const { chance, order, ways, waysWorking, failed, askWays } = useChance(of);
  return (
    <section className="chance" aria-label={`Chance to finish ${name} in time`}>
      <h4>Chance to finish in time</h4>
      {failed !== null ? (
        <p className="problem-block" role="alert">
          The chance could not be worked out ({failed}). The plan is not affected.
        </p>
      ) : chance === null ? (
        <p role="status">Throwing ten thousand pours …</p>
      ) : (
        <Told chance={chance} />
      )}
      {ways === null ? waysPlanned : <WaysByChance ways={ways} now={chance} />}
      {chance !== null && ways === null && (
        <p>
          {waysWorking ? (
            <span role="status">Ranking the ways out by the chance each one gives …</span>
          ) : (
            <button type="button" onClick={askWays}>
              What would make it surer?
            </button>
          )}
        </p>
      )}
      {order !== null && <BetterOrder offer={order} onTake={takeOrder(order)} />}
      <SpreadsUsed spreads={spreads} system={system} />
    </section>
  );
}

function Told({ chance }: { readonly chance: Chance }) {
  const late = chance.steps.filter((step) => step.breaks >= 0.005).sort((a, b) => b.breaks - a.breaks);
  return (
    <>
      <p className="chance-says">
        <strong>{chanceSays(chance)}</strong>{' '}
        <span className="basis">
          of {chance.pours.toLocaleString('en')} pours thrown with the shop's spreads; ± is the error of so
          few pours and resins, 95 in 100
        </span>
      </p>
      <SlackStrip slack={chance.slack} />
      <p className="says">{slackSays(chance.slack)}</p>
      <p className="says">{weakestSays(chance)}</p>
      {late.length > 1 && (
        <p className="section-note">
          Then{' '}
          {late
            .slice(1, 4)
            .map(({ label, breaks }) => `${label} (${inHundred(breaks)})`)
            .join('; ')}
          .
        </p>
      )}
    </>
  );
}
