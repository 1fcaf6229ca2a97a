/** One line of the table of agreement: what was checked, against whom, what they say and what we get. */
export interface Row {
  readonly source: string;
  readonly quantity: string;
  readonly unit: string;
  readonly expected: number;
  readonly got: number;
  /** What the source itself can claim: half its last printed digit, or as stated. */
  readonly tolerance: number;
}

export const row = (
  source: string,
  quantity: string,
  unit: string,
  expected: number,
  got: number,
  tolerance: number,
): Row => ({ source, quantity, unit, expected, got, tolerance });
