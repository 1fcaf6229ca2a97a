/** How far a tape reading can be off: the spread every reading enters the adjustment with. */

export const TAPE_CLASSES = ['I', 'II', 'III'] as const;
export type TapeClass = (typeof TAPE_CLASSES)[number];

/** Millimetres: constant, per metre, and for a start at the hook. */
const PERMITTED: Readonly<Record<TapeClass, readonly [number, number, number]>> = {
  I: [0.1, 0.1, 0.1],
  II: [0.3, 0.2, 0.2],
  III: [0.6, 0.4, 0.3],
};

/** Longest reading a shop tape takes. */
export const LONGEST_TAPE_M = 100;

export interface Tape {
  readonly tapeClass: TapeClass;
  /** Readings begin at the hook or the end of the tape, not at a mark on it. */
  readonly fromHook: boolean;
  /** Smallest step that is read, such as 1/16 in. */
  readonly readTo_m: number;
}

/**
 * Largest error the class permits, m: a + b L with L rounded up to whole metres, and c more when the reading starts at the hook
 * (Directive 2014/32/EU, Annex X, chapter I). Worked: 10 m of class I, II, III: 1.1, 2.3 and 4.6 mm.
 *
 * @param length_m 0 to 100.
 * @throws RangeError outside that.
 */
export function permittedError_m(length_m: number, tapeClass: TapeClass, fromHook: boolean): number {
  if (!(length_m >= 0 && length_m <= LONGEST_TAPE_M))
    throw new RangeError(`length_m ${length_m}: 0 to ${LONGEST_TAPE_M}`);
  const [constant, perMetre, hook] = PERMITTED[tapeClass];
  // A length typed in inches can stand a rounding error above a whole metre.
  const metres = Math.max(1, Math.ceil(length_m - 1e-9));
  return (constant + perMetre * metres + (fromHook ? hook : 0)) / 1000;
}

/**
 * Standard deviation of one reading, m: half the permitted error, and the reading itself: both ends are set to the nearest step,
 * each uniform over it (step / sqrt 12). Taking the permitted error as two standard deviations is common practice, no source.
 *
 * @param length_m 0 to 100.
 * @throws RangeError outside that, or when the step is negative.
 */
export function readingSigma_m(length_m: number, tape: Tape): number {
  if (!(tape.readTo_m >= 0 && Number.isFinite(tape.readTo_m)))
    throw new RangeError(`readTo_m ${tape.readTo_m} must be 0 or more`);
  return Math.hypot(
    permittedError_m(length_m, tape.tapeClass, tape.fromHook) / 2,
    tape.readTo_m / Math.sqrt(6),
  );
}
