/** Writes docs/science/agreement.md: `node reference/agreement/table.ts`. A test holds the file to what is computed now. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { filmRows } from './film-rows.ts';
import { lookRows } from './look-rows.ts';
import { resinRows } from './resin-rows.ts';
import type { Row } from './row.ts';

export const PLACE = join(import.meta.dirname, '..', '..', 'docs', 'science', 'agreement.md');

export function agreementRows(): readonly Row[] {
  return [...resinRows(), ...filmRows(), ...lookRows()];
}

export function agreementTable(): string {
  const lines = agreementRows().map((row) => {
    const off = Math.abs(row.got - row.expected);
    const digits = Math.max(0, Math.min(10, 1 - Math.floor(Math.log10(row.tolerance))));
    return `| ${row.source} | ${row.quantity} | ${`${row.expected} ${row.unit}`.trim()} | ${row.got.toFixed(digits)} | ${off.toExponential(1)} | ${row.tolerance} |`;
  });
  return `# Agreement with published and independent values

Made by \`node reference/agreement/table.ts\`; a test keeps it current. A selection, one or two lines a source: the tests in \`reference/\` check
several hundred more values. "Allowed" is what the source can claim: half its last printed digit, or as the source states.

| source | quantity | they say | we get | off by | allowed |
|---|---|---:|---:|---:|---:|
${lines.join('\n')}
`;
}

if (import.meta.main) writeFileSync(PLACE, agreementTable());
