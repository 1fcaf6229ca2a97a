export interface SingularValues {
  /** One a column, largest first; a column that nothing reaches has 0. */
  readonly values: readonly number[];
  /** right[k] is the unit vector in the space of unknowns that belongs to values[k]. */
  readonly right: readonly Float64Array[];
  /** left[k] is the unit vector in the space of rows; all 0 where values[k] is 0. */
  readonly left: readonly Float64Array[];
}

/**
 * Singular values and vectors of a small dense matrix given row by row: A = sum of left[k] values[k] right[k]'. Columns are
 * turned against each other until all are at right angles (one-sided Jacobi; Hestenes 1958, J. SIAM 6, 51; Demmel and Veselic
 * 1992 for why its small values can be trusted). Any shape with at least one column; with fewer rows than columns the missing
 * values are 0 and their right vectors span what the rows cannot see.
 *
 * @throws RangeError when there is no column, rows differ in length, an entry is not finite or it does not settle.
 */
export function singularValues(rows: readonly ArrayLike<number>[], columns: number): SingularValues {
  if (!(Number.isInteger(columns) && columns >= 1)) throw new RangeError(`columns ${columns}; at least 1`);
  for (const row of rows) {
    if (row.length !== columns) throw new RangeError(`a row has ${row.length} entries; ${columns} expected`);
    for (let j = 0; j < columns; j++)
      if (!Number.isFinite(row[j]!)) throw new RangeError(`entry ${row[j]} is not finite`);
  }
  const turned = Array.from({ length: columns }, (_, j) => Float64Array.from(rows, (row) => row[j]!));
  const right = Array.from({ length: columns }, (_, j) => {
    const unit = new Float64Array(columns);
    unit[j] = 1;
    return unit;
  });
  const total = turned.reduce((sum, column) => sum + dot(column, column), 0);
  const negligible = total * 1e-32;
  // Rounding of a product of two columns.
  const square = 4 * Number.EPSILON * Math.max(4, rows.length);
  for (let sweep = 0, settled = false; !settled; sweep++) {
    if (sweep > 60) throw new RangeError('the singular values do not settle');
    settled = true;
    for (let i = 0; i < columns - 1; i++)
      for (let j = i + 1; j < columns; j++) {
        const a = dot(turned[i]!, turned[i]!);
        const b = dot(turned[j]!, turned[j]!);
        const c = dot(turned[i]!, turned[j]!);
        if (c === 0 || Math.abs(c) <= square * Math.sqrt(a * b) || Math.abs(c) <= negligible) continue;
        settled = false;
        const zeta = (b - a) / (2 * c);
        const t = (zeta >= 0 ? 1 : -1) / (Math.abs(zeta) + Math.hypot(1, zeta));
        const cos = 1 / Math.hypot(1, t);
        rotate(turned[i]!, turned[j]!, cos, cos * t);
        rotate(right[i]!, right[j]!, cos, cos * t);
      }
  }
  const sizes = turned.map((column) => Math.sqrt(dot(column, column)));
  const order = sizes.map((_, j) => j).sort((i, j) => sizes[j]! - sizes[i]!);
  return {
    values: order.map((j) => sizes[j]!),
    right: order.map((j) => right[j]!),
    left: order.map((j) => turned[j]!.map((value) => (sizes[j]! > 0 ? value / sizes[j]! : 0))),
  };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function rotate(a: Float64Array, b: Float64Array, cos: number, sin: number): void {
  for (let i = 0; i < a.length; i++) {
    const x = a[i]!;
    const y = b[i]!;
    a[i] = cos * x - sin * y;
    b[i] = sin * x + cos * y;
  }
}
