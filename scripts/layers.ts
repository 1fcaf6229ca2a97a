/**
 * The layer rule: imports go down only (see docs/architecture.md). Fails with the file, the import and what to do.
 * Rooms of the house, and the rooms each may look into.
 */

import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { posix } from 'node:path';

const mayImport: Record<string, readonly string[]> = {
  core: ['core'],
  store: ['store', 'core'],
  server: ['server', 'store', 'core', 'examples'],
  web: ['web', 'core', 'examples'],
  cli: ['cli', 'core', 'examples'],
  examples: ['examples', 'core'],
  reference: ['reference', 'core'],
  benchmarks: ['benchmarks', 'core', 'examples'],
};

/** Inside core, a folder may look only at folders named before it. */
const coreOrder = [
  'quantity',
  'numeric',
  'piece',
  'resin',
  'film',
  'look',
  'room',
  'mix',
  'pour',
  'bench',
  'shelf',
  'price',
  'book',
  'job',
];

/** web knows the server by its types alone. */
const typesOnly: Record<string, readonly string[]> = { web: ['server'] };

const files = execFileSync(
  'git',
  ['ls-files', '--cached', '--others', '--exclude-standard', '*.ts', '*.tsx'],
  {
    encoding: 'utf8',
  },
)
  .split('\n')
  .filter((f) => /^(core|store|server|web|cli|examples|reference|benchmarks)\//.test(f));

const problems: string[] = [];
for (const file of files) {
  const room = file.split('/')[0]!;
  const test = /\.(test|check)\.tsx?$/.test(file) || file.startsWith('web/e2e/');
  const text = readFileSync(file, 'utf8');
  const pattern =
    /(?:^|\n)\s*(import|export)\s+(type\s+)?[^;'"]*?from\s+['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)|(?:^|\n)\s*import\s+['"]([^'"]+)['"]/g;
  for (const match of text.matchAll(pattern)) {
    const target = match[3] ?? match[4] ?? match[5]!;
    const typeImport = match[2] !== undefined;
    let path: string;
    if (target.startsWith('#')) path = target.slice(1);
    else if (target.startsWith('.')) path = posix.join(posix.dirname(file), target);
    else {
      if (room === 'core' && !test && target.startsWith('node:'))
        problems.push(`${file}: core does no I/O and imports nothing of Node (${target}); pass the data in.`);
      continue;
    }
    const into = path.split('/')[0]!;
    if (!(into in mayImport)) continue;
    const allowed = [...mayImport[room]!, ...(typeImport ? (typesOnly[room] ?? []) : [])];
    const fromTest = test && (into === 'examples' || (room === 'web' && into === 'server'));
    if (!allowed.includes(into) && !fromTest)
      problems.push(
        `${file}: ${room} may not import ${into} (${target}); move the shared part down into core.`,
      );
    if (room === 'core' && into === 'core' && !test) {
      const own = coreOrder.indexOf(file.split('/')[1]!);
      const other = coreOrder.indexOf(path.split('/')[1]!);
      if (own < 0)
        problems.push(
          `${file}: core/${file.split('/')[1]} has no place in the order of rooms (scripts/layers.ts).`,
        );
      else if (other > own)
        problems.push(
          `${file}: core/${coreOrder[own]} may not look up into core/${coreOrder[other]} (${target}).`,
        );
    }
  }
}

if (problems.length > 0) {
  console.error(`layer rule: ${problems.length} import(s) go up or sideways\n${problems.join('\n')}`);
  process.exit(1);
}
console.log(`layer rule: ${files.length} files, every import goes down`);
