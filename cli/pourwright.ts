#!/usr/bin/env node
/** The command line: `pourwright plan JOB.json`, `pourwright check JOB.json`, `pourwright schema`. */
import { readFileSync } from 'node:fs';
import { run } from './run.ts';

// A reader that has seen enough (`pourwright plan JOB.json | head`) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

const answer = run(process.argv.slice(2), (path) => readFileSync(path === '-' ? 0 : path, 'utf8'));
process.stdout.write(answer.out);
process.stderr.write(answer.err);
process.exitCode = answer.exitCode;
