/** A moment as documents keep it: local, to the minute. */
export function localText(at_ms: number): string {
  const date = new Date(Math.round(at_ms / 60_000) * 60_000);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:${two(date.getMinutes())}`;
}
