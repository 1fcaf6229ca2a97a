#!/usr/bin/env node
/** The command line: `pourwright plan JOB.json`, `pourwright check JOB.json`, `pourwright schema`. */
import { readFileSync } from 'node:fs';
import { run } from './run.ts';

const answer = run(process.argv.slice(2), (path) => readFileSync(path === '-' ? 0 : path, 'utf8'));
process.stdout.write(answer.out);
process.stderr.write(answer.err);
process.exitCode = answer.exitCode;
