import { useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Button } from 'react-aria-components/Button';
import { DropZone } from 'react-aria-components/DropZone';
import { FileTrigger } from 'react-aria-components/FileTrigger';
import { type Problem, sayProblem } from '#core/quantity/problem.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import type { ResinCard } from '#core/resin/model.ts';
import { AnswerError } from '#web/api/http.ts';
import { createJob } from '#web/api/jobs-api.ts';
import { jobsQuery } from '#web/api/queries.ts';
import { fittedQuery } from '#web/api/resin-queries.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { readJobText } from './read-file.ts';

interface Outcome {
  readonly key: string;
  readonly file: string;
  readonly jobId: string | null;
  readonly problems: readonly Problem[];
}

/** Job files brought in by dropping or choosing them. Each file is answered by name; a bad one does not stop the others. */
export function ImportJobs() {
  const queries = useQueryClient();
  const [outcomes, setOutcomes] = useState<readonly Outcome[]>([]);
  const [busy, setBusy] = useState(false);

  const take = async (files: readonly File[]) => {
    setBusy(true);
    const found: Outcome[] = [];
    // Without the shop's cards a job is still read; the server then says what it does not know.
    const ofShop = await queries.ensureQueryData(fittedQuery).catch(() => []);
    const cards = [...GENERIC_CARDS, ...ofShop.map(({ card }) => card)];
    for (const file of files) found.push(await takeOne(file, cards));
    setOutcomes(found);
    setBusy(false);
    await queries.invalidateQueries({ queryKey: jobsQuery.queryKey });
  };

  return (
    <section className="import" aria-labelledby="import-title">
      <h2 id="import-title">Bring in a job file</h2>
      <DropZone
        className="drop"
        aria-label="Drop job files here"
        getDropOperation={() => 'copy'}
        onDrop={async (event) => {
          const files = event.items.filter((item) => item.kind === 'file');
          await take(await Promise.all(files.map((item) => item.getFile())));
        }}
      >
        <span>Drop job files here, or</span>
        <FileTrigger
          acceptedFileTypes={['application/json', '.json']}
          allowsMultiple
          onSelect={(files) => void take([...(files ?? [])])}
        >
          <Button isDisabled={busy}>Choose files</Button>
        </FileTrigger>
      </DropZone>
      <div role="status">
        {busy && <p>Reading …</p>}
        {outcomes.map((outcome) => (
          <div key={outcome.key} className="import-outcome" data-bad={outcome.jobId === null || undefined}>
            {outcome.jobId !== null ? (
              <p>
                {outcome.file}: taken in.{' '}
                <Link to="/jobs/$jobId" params={{ jobId: outcome.jobId }}>
                  Open it
                </Link>
              </p>
            ) : (
              <>
                <p>
                  <strong>{outcome.file}: not taken in.</strong> Nothing was stored. Put this right and bring
                  it in again:
                </p>
                <ul>
                  {outcome.problems.map((problem) => (
                    <li key={problem.path + problem.code + problem.message}>{sayProblem(problem)}</li>
                  ))}
                </ul>
              </>
            )}
          </div>
        ))}
      </div>
    </section>
  );
}

async function takeOne(file: File, cards: readonly ResinCard[]): Promise<Outcome> {
  const key = uuid7();
  const refuse = (problems: readonly Problem[]): Outcome => ({ key, file: file.name, jobId: null, problems });
  try {
    const read = readJobText(await file.text(), file.size, cards);
    if (!read.ok) return refuse(read.problems);
    const id = uuid7();
    await createJob(id, uuid7(), read.value);
    return { key, file: file.name, jobId: id, problems: [] };
  } catch (error) {
    if (error instanceof AnswerError && error.problems.length > 0) return refuse(error.problems);
    const message = error instanceof Error ? error.message : String(error);
    return refuse([{ path: '', code: 'file.failed', message }]);
  }
}
