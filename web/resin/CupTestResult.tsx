import { cupTest } from '#core/resin/cup-test.ts';
import type { Observation } from '#core/resin/observations.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { useCard } from './card-context.tsx';

type CupSeen = Extract<Observation, { readonly kind: 'cup temperatures' }>;

/** How fast the resin starts, from the first warming of the cup, beside what the card expected. */
export function CupTestResult({ seen }: { readonly seen: CupSeen }) {
  const { shown, system, speak } = useCard();
  if (shown.fit === null) return null;
  const { model, spread } = shown.fit.card;
  const result = cupTest({ ...seen, model });
  if (!result.ok)
    return (
      <p className="field-warning">
        {result.problems.map((problem) => (
          <ProblemText key={problem.code} problem={problem} />
        ))}
      </p>
    );
  const { kRef_per_s, sdLn, slope_K_s, loss_K_s, used } = result.value;
  const perMinute = (slope: number) =>
    `${(slope * 60 * (system === 'us' ? 1.8 : 1)).toFixed(2)} °${system === 'us' ? 'F' : 'C'} a minute`;
  const ratio = kRef_per_s / model.kRef_per_s;
  const both = Math.hypot(sdLn, spread.kRefLn);
  const away = Math.abs(Math.log(ratio)) / both;
  return (
    <div className="cup-result" role="status">
      <p>
        From the first {used} readings: the cup warms by <strong>{perMinute(slope_K_s)}</strong> and loses{' '}
        {perMinute(loss_K_s)} meanwhile. At {speak.temperature(297.15)} the reaction starts at{' '}
        <strong>
          {(kRef_per_s * 3600).toFixed(2)} ± {(kRef_per_s * 3600 * sdLn).toFixed(2)} per hour
        </strong>
        .
      </p>
      <p>
        The card says {(model.kRef_per_s * 3600).toFixed(2)} per hour: this cup is{' '}
        {ratio >= 1 ? `${ratio.toFixed(2)} times as fast` : `${(1 / ratio).toFixed(2)} times as slow`},{' '}
        {away < 1
          ? 'well within what was open'
          : away < 2
            ? 'within what was open'
            : 'more than was thought likely'}
        .
      </p>
    </div>
  );
}
