import type { ReactNode } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import { ProblemText } from './ProblemText.tsx';

interface Props {
  readonly id: string;
  readonly label: string;
  /** The label is spoken only: the column of the table already shows it. */
  readonly hideLabel?: boolean | undefined;
  readonly aside?: ReactNode;
  readonly problems?: readonly Problem[] | undefined;
  readonly warnings?: readonly Problem[] | undefined;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

/** Label above, what was read and what is wrong below; ids that tie them together. */
export function Labelled(props: Props) {
  const { id, label, hideLabel, aside, problems = [], warnings = [], className = '', children } = props;
  return (
    <div className={`field ${className}`} data-invalid={problems.length > 0 || undefined}>
      <label className={hideLabel ? 'unseen' : 'field-label'} htmlFor={id}>
        {label}
      </label>
      {children}
      {aside !== undefined && aside !== null && (
        <span className="field-aside" id={`${id}-aside`}>
          {aside}
        </span>
      )}
      {/* Always there, so that a problem that appears is announced. */}
      <span className="field-problem" id={`${id}-problem`} role={problems.length > 0 ? 'alert' : undefined}>
        {problems.map((problem) => (
          <ProblemText key={problem.code} problem={problem} />
        ))}
      </span>
      {warnings.length > 0 && (
        <span className="field-warning" id={`${id}-warning`}>
          {warnings.map((warning) => (
            <ProblemText key={warning.code} problem={warning} />
          ))}
        </span>
      )}
    </div>
  );
}

export function describedBy(id: string, aside: boolean, warning: boolean): string {
  return [`${id}-problem`, aside && `${id}-aside`, warning && `${id}-warning`].filter(Boolean).join(' ');
}
