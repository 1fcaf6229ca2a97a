import type { Spread } from '#core/film/ranges.ts';
import type { Reason } from '#core/film/reason.ts';
import type { System } from '#core/quantity/units.ts';
import {
  formulaText,
  movesText,
  numberText,
  type RangeOf,
  rangeName,
  rangeText,
  signsText,
} from './reason-words.ts';

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
          <div className="film-reason">
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
                <div className="film-range">
                  <dt>{rangeName(range)}</dt>
                  <dd>
                    {rangeText(reason.range, range, system)} {moves(reason.range, range)}
                  </dd>
                </div>
              )}
            </dl>
            <p className="rules-note">
              {signsText(reason.formula) !== '' && <>{signsText(reason.formula)}. </>}
              Source: {reason.source}.
            </p>
          </div>
          {reason.rule !== undefined && (
            <p className="film-rule">
              <span>Rule of thumb</span>
              {reason.rule}
            </p>
          )}
        </li>
      ))}
    </ol>
  );
}

/** "(-18 % to +22 %)" beside a length. */
function moves(spread: Spread, range: RangeOf): string {
  const by = range === 'film' || range === 'length' ? movesText(spread) : '';
  return by === '' ? '' : `(${by})`;
}

/** Folded under its answer. @param title instead of "Why" @param what it stands under, for those who do not see it @param open at first */
export function Why({
  title = 'Why',
  what,
  open = false,
  ...props
}: Props & { readonly title?: string; readonly what?: string; readonly open?: boolean }) {
  return (
    <details className="film-why" open={open}>
      <summary>
        {title}
        {what !== undefined && <span className="unseen">: {what}</span>}
      </summary>
      <Reasons {...props} />
    </details>
  );
}
