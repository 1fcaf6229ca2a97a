import type { Problem } from '#core/quantity/problem.ts';

/** A problem under its field: what is wrong, what was read, what is allowed. */
export function ProblemText({ problem }: { problem: Problem }) {
  return (
    <span className="problem-text">
      {problem.message}
      {problem.read !== undefined && (
        <>
          {' '}
          Read: <q>{problem.read}</q>.
        </>
      )}
      {problem.allowed !== undefined && <> Allowed: {problem.allowed}.</>}
    </span>
  );
}
