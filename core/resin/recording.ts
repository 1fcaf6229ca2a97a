import { hermite } from '#core/numeric/hermite.ts';
import { gaussRule } from '#core/numeric/quadrature.ts';
import { reactionOf, tgOf } from './kinetics.ts';
import type { CureHistory, ResinModel } from './model.ts';
import { fluidityOf, GELLED_VISCOSITY_Pa_s } from './viscosity.ts';

/** Takes the accepted steps of one body and makes its `CureHistory`. */
export interface Recording {
  push(
    time_s: number,
    conversion: number,
    temperature_K: number,
    conversionRate_per_s: number,
    temperatureRate_K_s: number,
    hottest_K: number,
  ): void;
  finish(): CureHistory;
}

const rule = gaussRule(4);

/**
 * Starts a recording. The flow budget grows by the integral of 1/viscosity over each step, taken by four-point Gauss on the
 * Hermite interpolant of conversion and temperature, and stands still from gel on (1/viscosity = 0). The step that holds
 * the gel point is integrated up to where 1/viscosity has become 0, which is a smooth (power 2) end.
 */
export function startRecording(model: ResinModel): Recording {
  // Throws on a model out of range before any step is taken.
  reactionOf(model);
  const fluidity = fluidityOf(model);
  const columns: number[][] = Array.from({ length: 9 }, () => []);
  const [time, a, T, aRate, TRate, hottest, eta, tg, theta] = columns as [
    number[],
    number[],
    number[],
    number[],
    number[],
    number[],
    number[],
    number[],
    number[],
  ];
  return {
    push: (time_s, conversion, temperature_K, conversionRate_per_s, temperatureRate_K_s, hottest_K) => {
      const conv = Math.min(1, Math.max(0, conversion));
      const flow = fluidity(conv, temperature_K);
      const i = time.length - 1;
      let spent = 0;
      if (i >= 0) {
        spent = theta[i]!;
        if (eta[i]! < GELLED_VISCOSITY_Pa_s) {
          const h = time_s - time[i]!;
          let sum = 0;
          for (let k = 0; k < rule.node.length; k++) {
            const at = 0.5 * h * (1 + rule.node[k]!);
            const ak = hermite(a[i]!, aRate[i]!, conv, conversionRate_per_s, h, at);
            const Tk = hermite(T[i]!, TRate[i]!, temperature_K, temperatureRate_K_s, h, at);
            sum += rule.weight[k]! * fluidity(ak, Tk);
          }
          spent += 0.5 * h * sum;
        }
      }
      time.push(time_s);
      a.push(conv);
      T.push(temperature_K);
      aRate.push(conversionRate_per_s);
      TRate.push(temperatureRate_K_s);
      hottest.push(hottest_K);
      eta.push(flow > 1 / GELLED_VISCOSITY_Pa_s ? 1 / flow : GELLED_VISCOSITY_Pa_s);
      tg.push(tgOf(model, conv));
      theta.push(spent);
    },
    finish: () => ({
      time_s: Float64Array.from(time),
      conversion: Float64Array.from(a),
      temperature_K: Float64Array.from(T),
      conversionRate_per_s: Float64Array.from(aRate),
      temperatureRate_K_s: Float64Array.from(TRate),
      hottest_K: Float64Array.from(hottest),
      viscosity_Pa_s: Float64Array.from(eta),
      tg_K: Float64Array.from(tg),
      theta_per_Pa: Float64Array.from(theta),
    }),
  };
}
