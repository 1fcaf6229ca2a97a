/**
 * Quantile of an ascending list, linear between order statistics (type 7 of Hyndman and Fan 1996).
 *
 * @param share 0 to 1.
 * @throws RangeError when the list is empty or the share lies outside 0..1.
 */
export function quantileOfSorted(sorted: ArrayLike<number>, share: number): number {
  if (sorted.length === 0) throw new RangeError('no values to take a quantile of');
  if (!(share >= 0 && share <= 1)) throw new RangeError(`share ${share} must lie in 0..1`);
  const place = share * (sorted.length - 1);
  const low = Math.floor(place);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (place - low) * (sorted[high]! - sorted[low]!);
}
