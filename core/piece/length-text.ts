/** How a size is read back in a problem: millimetres as the sheet is cut, inches as the tape says. */

const METRES_PER_INCH = 0.0254;

/** "12.5 mm (0.492 in)"; a value that is no number is said as it is. */
export function lengthText(value_m: number): string {
  if (!Number.isFinite(value_m)) return String(value_m);
  return `${trim(value_m * 1000, 2)} mm (${trim(value_m / METRES_PER_INCH, 3)} in)`;
}

/** "10 mm (0.394 in) to 10000 mm (393.701 in)". */
export function rangeText(min_m: number, max_m: number): string {
  return `${lengthText(min_m)} to ${lengthText(max_m)}`;
}

export function pointText(x_m: number, y_m: number): string {
  return `${lengthText(x_m)} from the left, ${lengthText(y_m)} from the front`;
}

function trim(value: number, digits: number): string {
  const text = value.toFixed(digits).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}
