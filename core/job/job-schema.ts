import { z } from 'zod';
import { JobDocument } from './document.ts';

/** The published JSON Schema (2020-12) of a job file, made from the very schema that reads it. */
export function jobSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(JobDocument, { io: 'input', target: 'draft-2020-12' }) as Record<
    string,
    unknown
  >;
  return { $id: 'https://pourwright.invalid/job-1.schema.json', title: 'Pourwright job', ...schema };
}
