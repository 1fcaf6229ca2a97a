import { useMemo } from 'react';
import { useOffcutShelf } from '#web/api/offcuts-api.ts';
import { useShop } from '#web/api/queries.ts';
import { useSheet } from '../../context.tsx';
import { type JobCuts, jobCuts, shelfBeforeTogether } from './together.ts';

/** What is cut together of this job; the same object until something changes. */
export function useJobCuts(): JobCuts {
  const { jobId, document: job } = useSheet();
  const { body } = useShop();
  const { movements } = useOffcutShelf();
  return useMemo(
    () =>
      jobCuts(
        job,
        body,
        shelfBeforeTogether(
          movements.map(({ movement }) => movement),
          jobId,
        ),
      ),
    [job, body, movements, jobId],
  );
}
