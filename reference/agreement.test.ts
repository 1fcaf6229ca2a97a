/** The table of agreement in docs/science: every line within what its source can claim, and the file as computed now. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { agreementRows, agreementTable, PLACE } from './agreement/table.ts';

describe('agreement with published values', () => {
  it.each(agreementRows())('$source: $quantity', ({ expected, got, tolerance }) => {
    expect(Math.abs(got - expected)).toBeLessThanOrEqual(tolerance);
  });

  it('is what docs/science/agreement.md says', () => {
    expect(readFileSync(PLACE, 'utf8')).toBe(agreementTable());
  });
});
