import type { JobSummary } from '#web/api/types.ts';

export interface Filter {
  readonly words: string;
  /** '' for all. */
  readonly stage: string;
  readonly archived: boolean;
}

const folded = (text: string) => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

/** Jobs whose title or customer holds every word, in any order and with or without accents; what is due first comes first. */
export function filterJobs(jobs: readonly JobSummary[], filter: Filter): JobSummary[] {
  const words = folded(filter.words).split(/\s+/).filter(Boolean);
  return jobs
    .filter((job) => job.archived === filter.archived)
    .filter((job) => filter.stage === '' || job.stage === filter.stage)
    .filter((job) => {
      const text = folded(`${job.title} ${job.customerName}`);
      return words.every((word) => text.includes(word));
    })
    .sort((a, b) => due(a).localeCompare(due(b)) || a.title.localeCompare(b.title));
}

/** The promised day; jobs without one come last. */
function due(job: JobSummary): string {
  return job.handOver === '' ? '9999' : job.handOver;
}
