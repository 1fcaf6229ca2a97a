/** What every solver answers for the forecast, and how far two answers are apart. */

/** One body: event times in the order of the problem's events, state at the end, steps taken. */
export interface BodyAnswer {
  readonly reached: readonly (number | null)[];
  readonly conversion: number;
  readonly temperature_K: number;
  readonly steps: number;
}

export interface Answer {
  readonly tolerance: number;
  /** CPU time of one forecast (cup, film, all stages), s. */
  readonly cpu_s: number;
  readonly cup: BodyAnswer;
  readonly film: BodyAnswer;
}

/** Stage times by name, made from the events the same way for every solver. */
export function stagesOf({ cup, film }: Answer): Record<string, number> {
  const [warmT, warmA, nowT, nowA, dangerT, dangerA, cupGel, cupPeak] = cup.reached;
  const [working, levelling, gel, opens, bestFrom, bestTo, closes, dry, handle, filmPeak] = film.reached;
  const all: Record<string, number | null | undefined> = {
    'cup: warm': earlier(warmT, warmA),
    'cup: pour now': earlier(nowT, nowA),
    'cup: danger': earlier(dangerT, dangerA),
    'cup: gel': cupGel,
    'cup: peak': cupPeak,
    'film: working time ends': working,
    'film: no more levelling': levelling,
    'film: gel': gel,
    'film: recoat opens': opens,
    'film: recoat best from': opens == null || bestFrom == null ? null : Math.max(opens, bestFrom),
    'film: recoat best to': bestTo,
    'film: recoat closes': closes,
    'film: dry hard': dry,
    'film: handle': handle,
    'film: peak': filmPeak,
  };
  return Object.fromEntries(
    Object.entries(all).map(([name, time]) => {
      if (time == null) throw new Error(`${name} is not reached`);
      return [name, time];
    }),
  );
}

function earlier(a: number | null | undefined, b: number | null | undefined): number | null {
  if (a == null) return b ?? null;
  return b == null ? a : Math.min(a, b);
}

/** Peaks are the flat top of a curve; how exactly their time is found is shown apart from the stages. */
const isPeak = (name: string): boolean => name.endsWith('peak');

export interface Deviation {
  /** Largest of the stage times, relative, and which stage that is. */
  readonly stages: number;
  readonly worst: string;
  /** Larger of the two peak times, relative. */
  readonly peaks: number;
  /** Largest in the final state: conversions, and temperatures per 100 K. */
  readonly final: number;
}

export function deviation(answer: Answer, reference: Answer): Deviation {
  const own = stagesOf(answer);
  let [stages, worst, peaks] = [0, '', 0];
  for (const [name, time] of Object.entries(stagesOf(reference))) {
    const off = Math.abs(own[name]! / time - 1);
    if (isPeak(name)) peaks = Math.max(peaks, off);
    else if (off > stages) [stages, worst] = [off, name];
  }
  const final = Math.max(
    ...(['cup', 'film'] as const).flatMap((body) => [
      Math.abs(answer[body].conversion - reference[body].conversion),
      Math.abs(answer[body].temperature_K - reference[body].temperature_K) / 100,
    ]),
  );
  return { stages, worst, peaks, final };
}
