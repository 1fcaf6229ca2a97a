/**
 * Are the ranges honest? Draws resins from the priors, writes a label for each with the scatter labels are taken to have, fits it and
 * looks where the truth lies among the draws. Writes docs/calibration.md.
 *
 * node benchmarks/calibration.ts [resins, default 500]
 */
import { writeFileSync } from 'node:fs';
import { type Recovery, recover } from '#core/resin/recovery.ts';

const count = Number(process.argv[2] ?? 500);
if (!(Number.isInteger(count) && count >= 20)) throw new Error(`${process.argv[2]} resins; at least 20`);
const levels = [0.5, 0.8, 0.9, 0.95];
const quantities = [
  ['workingTime', 'working time, 2.5 mm film at 24 °C'],
  ['gel', 'gel of the same film'],
  ['flash', 'flash (peak) of a cup of 1 kg at 24 °C'],
  ['dryHard', 'dry hard of the same film'],
] as const satisfies readonly (readonly [keyof Recovery['place'], string])[];

const started = performance.now();
const all = Array.from({ length: count }, (_, i) => recover(20_000 + i));
const each_ms = (performance.now() - started) / count;

const share = (places: readonly number[], holds: (place: number) => boolean) =>
  places.filter(holds).length / places.length;
const percent = (value: number) => `${(100 * value).toFixed(1)} %`;
/** Half width of the 95 % interval of a share seen in n trials (normal approximation of the binomial). */
const half = (level: number, n: number) => 1.96 * Math.sqrt((level * (1 - level)) / n);
const row = (name: string, some: readonly Recovery[], key: keyof Recovery['place']) => {
  const places = some.map((one) => one.place[key]);
  const inside = levels.map((level) =>
    percent(share(places, (place) => place > (1 - level) / 2 && place < (1 + level) / 2)),
  );
  const mean = places.reduce((sum, place) => sum + place, 0) / places.length;
  const ends = [share(places, (place) => place <= 0.05), share(places, (place) => place >= 0.95)];
  return `| ${name} | ${some.length} | ${[...inside, ...ends.map(percent)].join(' | ')} | ${mean.toFixed(2)} |`;
};
const head = `| quantity | resins | ${levels.map((level) => `${100 * level} % range`).join(' | ')} | truth below 5 % | truth above 95 % | mean place |
|---|---|${levels.map(() => '---|').join('')}---|---|---|`;
const table = (some: readonly Recovery[]) =>
  [head, ...quantities.map(([key, name]) => row(name, some, key))].join('\n');
const having = (kinds: readonly string[]) =>
  all.filter(({ figures }) => {
    const had = new Set(figures.map((figure) => figure.kind as string));
    return had.size === kinds.length && kinds.every((kind) => had.has(kind));
  });
const deciles = quantities.map(([key, name]) => {
  const counts = Array.from({ length: 10 }, (_, d) =>
    share(
      all.map((one) => Math.min(0.999, one.place[key])),
      (place) => Math.floor(10 * place) === d,
    ),
  );
  return `| ${name} | ${counts.map((value) => (100 * value).toFixed(0)).join(' | ')} |`;
});

const text = `# Are the ranges honest?

${count} resins drawn from the priors (core/resin/coordinates.ts), a label written for each with the scatter that labels are taken to
have (core/resin/label.ts; temperature, film, mass and end criterion unsaid in part of them), each label fitted, 200 draws of
the posterior forecast. A column says how often the range of that size holds the truth; an honest 90 % range does so 90 % of the
time, give or take ${percent(half(0.9, count))} for ${count} resins (95 % interval). Written by \`node benchmarks/calibration.ts ${count}\`.

${table(all)}

Place of the truth among the draws, by tenths, % of the resins (even would be 10 each, give or take ${(100 * half(0.1, count)).toFixed(1)}):

| quantity | ${Array.from({ length: 10 }, (_, d) => `${d / 10} to ${(d + 1) / 10}`).join(' | ')} |
|---|${'---|'.repeat(10)}
${deciles.join('\n')}

## By what the label says

Working time alone:

${table(having(['working time']))}

Working time and recoat:

${table(having(['working time', 'recoat opens']))}

Working time, recoat and pot life:

${table(having(['working time', 'recoat opens', 'pot life']))}

Truths whose film works for less than 6 min or more than 4 h are drawn again, as no label of such a resin says so; labels of a working
time and a pot life alone are in the first table only. A line that is further from its level than the give and take is a
range that is too narrow or too wide, and is to be read so: draws are cut at 2.6 standard deviations and the posterior is kept as a
normal distribution, which costs the far ends first (95 % ranges). Dry hard without a recoat time on the label is
much too narrow: it may take weeks, and no normal distribution of ln t holds that.

None of this shows that the priors and the equations are those of real resins.
`;
writeFileSync(new URL('../docs/calibration.md', import.meta.url), text);
console.log(`${table(all)}\n${each_ms.toFixed(0)} ms a resin (fit, 200 draws, 200 forecasts)`);
