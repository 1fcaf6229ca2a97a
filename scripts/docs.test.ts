/** Documents rot by their links: every relative link of every page leads to a file that is there. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';

const pages = execFileSync('git', ['ls-files', '*.md'], { encoding: 'utf8' }).trim().split('\n');

describe('documents', () => {
  it.each(pages)('%s links to files that exist', (page) => {
    const links = [...readFileSync(page, 'utf8').matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)].map(
      (match) => match[1]!,
    );
    const gone = links.filter((link) => !/^[a-z]+:/.test(link) && !existsSync(join(dirname(page), link)));
    expect(gone).toEqual([]);
  });

  it('README says what this is, how to start, how to test and how far to trust it', () => {
    const text = readFileSync('README.md', 'utf8');
    for (const part of ['npm ci && npm run demo', 'npm ci && npm test', 'How far to trust it', 'Cautions'])
      expect(text).toContain(part);
  });
});
