/**
 * The volumes of a look corrected until its colours, as painted, have the shares wanted. A puddle keeps its area for ever, so
 * only what lies beyond the edge of the work makes a difference: the first round is near, a few more are exact.
 */
import { good, type Problem, type Result } from '#core/quantity/problem.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import type { LookDocument } from './look-document.ts';
import { lookShares, shareSamples } from './look-shares.ts';
import { type LookSetting, planeArea_m2, readLook } from './read-look.ts';

export interface FittedLook {
  readonly look: LookDocument;
  readonly shares: ReadonlyMap<string, number>;
  readonly off: number;
}

const SAMPLES = { coarse: 4000, fine: 14_000 } as const;
const ROUNDS = 10;
/** From here on the fine samples are worth their time. */
const NEAR = 0.004;
/** Good enough to stop, and what a look must keep to, of the whole area. */
const AIM = 0.0008;
export const SHARE_PROMISE = 0.005;

/**
 * @param wanted share of every colour but the ground by key, each 0 to 1; the ground takes what is left.
 * @param fixed ids of moves whose volumes stay as they are.
 * A warning tells a share that is still off by more than 0.5 %. Problems are those of `readLook`.
 */
export function fitShares(
  document: LookDocument,
  wanted: ReadonlyMap<string, number>,
  setting: LookSetting,
  fixed: ReadonlySet<string> = new Set(),
): Result<FittedLook> {
  let samples = shareSamples(setting.panels, SAMPLES.coarse);
  let fine = false;
  const whole_m3 = planeArea_m2(setting.panels) * setting.film_m;
  let best: FittedLook | null = null;
  let look = document;
  for (let round = 0; round < ROUNDS; round++) {
    const read = readLook(look, setting);
    if (!read.ok) return best === null ? read : done(best);
    const got = lookShares(read.value, samples);
    const shares = new Map(setting.colours.map((colour, at) => [colour.key, got[at]!]));
    const misses = setting.colours.map(({ key }) => Math.abs((wanted.get(key) ?? 0) - shares.get(key)!));
    const off = Math.max(...misses);
    if (!fine && (off <= NEAR || round > ROUNDS / 2)) {
      samples = shareSamples(setting.panels, SAMPLES.fine);
      fine = true;
      best = null;
      continue;
    }
    if (best === null || off < best.off) best = { look, shares, off };
    if (off <= AIM) break;
    look = corrected(look, wanted, shares, whole_m3, fixed);
  }
  return done(best!);
}

function done(fitted: FittedLook): Result<FittedLook> {
  const warnings: Problem[] =
    fitted.off <= SHARE_PROMISE
      ? []
      : [
          {
            path: 'moves',
            code: 'warning.look-shares',
            message: 'The colours of this look miss the shares asked for.',
            read: `off by ${trimmed(fitted.off * 100, 1)} % of the work`,
            allowed: `within ${trimmed(SHARE_PROMISE * 100, 1)} %`,
          },
        ];
  return good(fitted, warnings);
}

/** Each colour's free puddles scaled by what is missing; never more than the coat holds. */
function corrected(
  document: LookDocument,
  wanted: ReadonlyMap<string, number>,
  shares: ReadonlyMap<string, number>,
  whole_m3: number,
  fixed: ReadonlySet<string>,
): LookDocument {
  const free = new Map<string, number>();
  for (const move of document.moves)
    if (move.kind === 'puddle' && move.kept && !fixed.has(move.id))
      free.set(move.colour, (free.get(move.colour) ?? 0) + move.volume_m3);
  const factors = new Map(
    [...free].map(([key, volume_m3]) => {
      const missing_m3 = ((wanted.get(key) ?? 0) - (shares.get(key) ?? 0)) * whole_m3;
      return [key, Math.min(2, Math.max(0.5, 1 + missing_m3 / volume_m3))];
    }),
  );
  const scaled = document.moves.map((move) =>
    move.kind === 'puddle' && move.kept && !fixed.has(move.id)
      ? { ...move, volume_m3: move.volume_m3 * factors.get(move.colour)! }
      : move,
  );
  const poured = scaled.reduce(
    (sum, move) => sum + (move.kind === 'puddle' && move.kept ? move.volume_m3 : 0),
    0,
  );
  const most = 0.9999 * whole_m3;
  if (poured <= most) return { ...document, moves: scaled };
  const less = most / poured;
  return {
    ...document,
    moves: scaled.map((move) =>
      move.kind === 'puddle' && move.kept && !fixed.has(move.id)
        ? { ...move, volume_m3: move.volume_m3 * less }
        : move,
    ),
  };
}
