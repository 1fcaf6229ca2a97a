import { type Body, prepareBody, type Question, type Seen } from './follow.ts';
import { REFERENCE_K, type ResinModel } from './model.ts';
import type { Term } from './term.ts';

const bodyKey = (body: Body): string =>
  'film_m' in body
    ? `film ${body.film_m} ${body.temperature_K}`
    : `cup ${body.mass_kg} ${body.diameter_m} ${body.temperature_K} ${body.start_K}`;

/** Groups the terms by body: each body is prepared once, and followed once a model for all its terms. */
export function compile(
  terms: readonly Term[],
  base: ResinModel,
): (model: ResinModel) => readonly (readonly number[])[] {
  const groups = new Map<string, { follow: ReturnType<typeof prepareBody>; members: number[] }>();
  terms.forEach(({ body }, i) => {
    if (body === null) return;
    const key = bodyKey(body);
    const group = groups.get(key) ?? { follow: prepareBody(body, base), members: [] };
    group.members.push(i);
    groups.set(key, group);
  });
  const nothing: Seen = { reachedLn: [], samples: [], peak_K: REFERENCE_K, peak_s: 0 };
  return (model) => {
    const results: (readonly number[])[] = terms.map((term) =>
      term.body === null ? term.residuals(model, nothing) : [],
    );
    for (const { follow, members } of groups.values()) {
      const asked = members.map((i) => terms[i]!.watches(model));
      const question: Question = {
        watches: asked.flat(),
        samples_s: members.flatMap((i) => terms[i]!.samples_s),
        peak: members.some((i) => terms[i]!.peak),
        limit_s: Math.max(...members.map((i) => terms[i]!.limit_s)),
      };
      const seen = follow(model, question);
      let watch = 0;
      let sample = 0;
      members.forEach((i, k) => {
        const watches = asked[k]!.length;
        const samples = terms[i]!.samples_s.length;
        results[i] = terms[i]!.residuals(model, {
          reachedLn: seen.reachedLn.slice(watch, watch + watches),
          samples: seen.samples.slice(sample, sample + samples),
          peak_K: seen.peak_K,
          peak_s: seen.peak_s,
        });
        watch += watches;
        sample += samples;
      });
    }
    return results;
  };
}
