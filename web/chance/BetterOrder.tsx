import type { OrderOffer } from '#core/pour/search/order-of-plan.ts';
import { spareOrShort } from './chance-words.ts';

interface Props {
  readonly offer: OrderOffer;
  /** Puts the colours of the coat in this order; null where they cannot say it. */
  readonly onTake: (() => void) | null;
}

/** What another order, or other hands, would bring. The look hangs on the order, so the maker decides. */
export function BetterOrder({ offer, onTake }: Props) {
  const { now_s, then_s, turns, reorders, bound_s, proven } = offer;
  return (
    <section className="better-order" aria-label="Another order of the cups">
      <h4>{reorders ? 'Another order would leave more time' : 'Other hands would leave more time'}</h4>
      <p className="says">
        The tightest window has {spareOrShort(now_s)} as planned and {spareOrShort(then_s)} like this
        {proven ? '; no order has more.' : `; no order has more than ${spareOrShort(bound_s)}.`}
      </p>
      <ol>
        {turns.map(({ cup, colour, mixer }) => (
          <li key={cup}>
            Cup {cup}, {colour}: person {mixer} mixes, person 1 pours
          </li>
        ))}
      </ol>
      {reorders && (
        <p className="section-note">
          The order makes the look: what is poured later lies on top and is moved less. Nothing is changed
          unless you do.
        </p>
      )}
      {onTake !== null && (
        <p>
          <button type="button" onClick={onTake}>
            Put the colours in this order
          </button>
        </p>
      )}
    </section>
  );
}
