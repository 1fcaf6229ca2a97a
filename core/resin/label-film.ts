import { COORDINATE_COUNT, indexOf, modelAt, workingIntegral } from './coordinates.ts';
import { prepareBody } from './follow.ts';
import { UNSAID } from './label.ts';
import type { ResinModel } from './model.ts';
import { hardened, thickened } from './term.ts';

const TIMING = indexOf('timingLn');
const DRY = indexOf('dryHardOffset_K');
const AIR_K = UNSAID.temperature_K;

/** Latest dry-hard time told apart, s (60 days). */
const LATEST_s = 60 * 86_400;

export interface LabelFilm {
  /** The told point of a point of the fit. */
  tell(point: ArrayLike<number>): number[];
  /** The model of a told point: k1 solved from the working time (to 0.3 %), the offset read at the dry-hard time. */
  modelOf(told: ArrayLike<number>): ResinModel;
  /** The same with ln of the volume a unit of told points has among points of the fit. */
  withVolume(told: ArrayLike<number>): { readonly model: ResinModel; readonly volumeLn: number };
}

/**
 * The film a label speaks of (2.5 mm on 18 mm MDF at 24 C), and a resin told by its times. A point of the fit has timing and
 * dry-hard offset as its first and fifth coordinate; the same resin's TOLD point has there ln of its working time and of its
 * dry-hard time in this film, seconds. Labels and observations pin those two, whatever the rest is; so a normal
 * distribution over told points keeps what the label says, where one over points of the fit lets it scatter as k1, rho, order,
 * self-heating and freezing together bend it.
 */
export function labelFilm(base: ResinModel): LabelFilm {
  const follow = prepareBody({ film_m: UNSAID.film_m, temperature_K: AIR_K }, base);
  const ask = (model: ResinModel, limit_s: number, dry: boolean) =>
    follow(model, {
      watches: [
        thickened(model, model.workingRatio, AIR_K),
        ...(dry ? [hardened(model, model.dryHardOffset_K)] : []),
      ],
      samples_s: [],
      peak: false,
      limit_s,
    }).reachedLn;
  const solve = (model: ResinModel, targetLn: number): { model: ResinModel; slope: number } => {
    const target_s = Math.exp(targetLn);
    let lnK = Math.log(workingIntegral(model)) - targetLn;
    const at = (ln: number) =>
      ask({ ...model, kRef_per_s: Math.exp(ln) }, 20 * target_s, false)[0]! - targetLn;
    let error = at(lnK);
    // Self-heating makes the film faster than isothermal: ln t falls by 1 to 6 for 1 of ln k.
    let slope = -1.1;
    for (let pass = 0; pass < 12 && Math.abs(error) > 0.003; pass++) {
      const next = lnK - Math.min(0.5, Math.max(-0.5, error / slope));
      const nextError = at(next);
      slope = Math.min(-0.7, Math.max(-6, (nextError - error) / (next - lnK)));
      lnK = next;
      error = nextError;
    }
    return { model: { ...model, kRef_per_s: Math.exp(lnK) }, slope };
  };
  const withVolume = (told: ArrayLike<number>) => {
    const point = Array.from(told);
    point[DRY] = 0;
    const { model, slope } = solve(modelAt(point, base), Math.min(13, Math.max(2, told[TIMING]!)));
    const at_s = Math.min(LATEST_s, Math.exp(told[DRY]!));
    const seen = follow(model, { watches: [], samples_s: [0.96 * at_s, at_s], peak: false, limit_s: at_s });
    const { quantity } = hardened(model, 0);
    const [before, then] = seen.samples.map((state) => quantity(state.conversion, state.temperature_K));
    const growth = Math.max(0.2, (then! - before!) / -Math.log(0.96));
    return { model: { ...model, dryHardOffset_K: then! }, volumeLn: Math.log(growth) - Math.log(-slope) };
  };
  return {
    tell: (point) => {
      const model = modelAt(point, base);
      const [working, dry] = ask(model, LATEST_s, true);
      return Array.from({ length: COORDINATE_COUNT }, (_, i) =>
        i === TIMING ? working! : i === DRY ? Math.min(dry!, Math.log(LATEST_s)) : point[i]!,
      );
    },
    modelOf: (told) => withVolume(told).model,
    withVolume,
  };
}
