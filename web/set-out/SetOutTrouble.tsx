import { AnswerError } from '#web/api/http.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';

interface Props {
  readonly what: string;
  readonly error: unknown;
  readonly retry: () => void;
}

/** Why there is no sheet: what the piece lacks, problem by problem, or that no answer came. */
export function SetOutTrouble({ what, error, retry }: Props) {
  const problems = error instanceof AnswerError ? error.problems : [];
  const message = error instanceof Error ? error.message : String(error);
  return (
    <div className="trouble" role="alert">
      <p>
        {what}: {message}
      </p>
      {problems.length > 0 ? (
        <ul>
          {problems.map((problem) => (
            <li key={`${problem.path} ${problem.code} ${problem.message}`}>
              <ProblemText problem={problem} />
            </li>
          ))}
        </ul>
      ) : (
        <p className="actions">
          <button type="button" onClick={retry}>
            Try again
          </button>
        </p>
      )}
    </div>
  );
}
