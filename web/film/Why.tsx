import type { Reason } from '#core/film/reason.ts';
import type { System } from '#core/quantity/units.ts';
import { formulaText, numberText, type RangeOf, rangeText, signsText } from './reason-words.ts';

interface Props {
  readonly reasons: readonly Reason[];
  readonly range: RangeOf;
  readonly system: System;
}

/** Each reason whole: what was found, formula, the numbers that went in, range, source, rule of thumb. */
export function Reasons({ reasons, range, system }: Props) {
  return (
    <ol className="film-reasons">
      {reasons.map((reason) => (
        <li key={reason.says}>
          <p>{reason.says}</p>
          <p className="film-formula">{formulaText(reason.formula)}</p>
          <dl>
            {Object.entries(reason.numbers).map(([key, value]) => {
              const [name, figure] = numberText(key, value, system);
              return (
                <div key={key}>
                  <dt>{name}</dt>
                  <dd>{figure}</dd>
                </div>
              );
            })}
            {reason.range !== undefined && (
              <div>
                <dt>range</dt>
                <dd>{rangeText(reason.range, range, system)}</dd>
              </div>
            )}
          </dl>
          <p className="rules-note">
            {signsText(reason.formula) !== '' && <>{signsText(reason.formula)}. </>}
            Source: {reason.source}.{reason.rule !== undefined && <> Rule of thumb: {reason.rule}</>}
          </p>
        </li>
      ))}
    </ol>
  );
}

/** Folded under its answer. */
export function Why({ what, ...props }: Props & { readonly what: string }) {
  return (
    <details className="film-why">
      <summary>
        Why<span className="unseen">: {what}</span>
      </summary>
      <Reasons {...props} />
    </details>
  );
}
