/** Writes docs/job.schema.json, the published JSON Schema of a job file: `node scripts/job-schema.ts`. */
import { writeFileSync } from 'node:fs';
import { jobSchema } from '#core/job/job-schema.ts';

const file = new URL('../docs/job.schema.json', import.meta.url);
writeFileSync(file, `${JSON.stringify(jobSchema(), null, 2)}\n`);
console.log(`wrote ${file.pathname}`);
