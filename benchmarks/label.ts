/**
 * How long a label takes to fit, and a thousand forecasts take to compute, in processor time of one core (a shared machine's clock
 * says little): node benchmarks/label.ts. Goals: 300 ms a fit with its posterior, 1 s for 1000 forecasts (film of 72 h and cup of 4 h, with
 * the models drawn).
 */
import { BOARDS } from '#core/resin/boards.ts';
import { REGULAR_50 } from '#core/resin/cards.ts';
import { cureCup } from '#core/resin/cup.ts';
import { drawModels } from '#core/resin/ensemble.ts';
import { cureFilm } from '#core/resin/film.ts';
import { fitCard } from '#core/resin/fit-card.ts';
import { QUICK_DOCUMENT, REGULAR_DOCUMENT } from '#core/resin/generic-documents.ts';
import { readCard } from '#core/resin/read-card.ts';
import { cupStages, filmStages } from '#core/resin/stages.ts';

const celsius = 24;
const air = { time_s: [0], temperature_K: [celsius + 273.15] };
const start = { conversion: 0, temperature_K: celsius + 273.15 };
const tolerance = { relative: 1e-4, conversion: 1e-5, temperature: 1e-2 };

function cpu_ms(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const spent = process.cpuUsage(before);
  return (spent.user + spent.system) / 1000;
}

function report(name: string, goal_ms: number, work: () => unknown, repeats: number): void {
  const first = cpu_ms(work);
  const times = Array.from({ length: repeats }, () => cpu_ms(work)).sort((a, b) => a - b);
  const middle = times[times.length >> 1]!;
  console.log(
    `${name}: first ${first.toFixed(0)} ms, then ${times[0]!.toFixed(0)} to ${times[times.length - 1]!.toFixed(0)}, median ${middle.toFixed(0)} ms (goal ${goal_ms})`,
  );
}

const potLife = {
  kind: 'pot life',
  value: '30 min',
  mass: '100 g',
  temperature: '24 C',
  end: '50 C',
} as const;
const documents = [
  ['quick, four figures', QUICK_DOCUMENT],
  ['regular, five figures', REGULAR_DOCUMENT],
  ['regular and a pot life', { ...REGULAR_DOCUMENT, label: [...REGULAR_DOCUMENT.label!, potLife] }],
] as const;
for (const [name, document] of documents) {
  const read = readCard(document);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  report(`fit with posterior, ${name}`, 300, () => fitCard(read.value), 9);
}

for (const [name, finer] of [
  ['tolerance of draws', { tolerance }],
  ['full tolerance', {}],
] as const) {
  report(
    `1000 forecasts, ${name}`,
    1000,
    () =>
      drawModels(REGULAR_50, 1000, 1).map((model) => {
        const film = cureFilm({
          model,
          thickness_m: 0.0025,
          board: BOARDS['mdf-18'],
          air,
          start,
          start_s: 0,
          duration_s: 72 * 3600,
          ...finer,
        });
        const cup = cureCup({
          model,
          mass_kg: 0.5,
          air,
          start,
          start_s: 0,
          duration_s: 4 * 3600,
          ...finer,
        });
        return [filmStages(film, model, air), cupStages(cup, model)];
      }),
    3,
  );
}
report('1000 models drawn', 1000, () => drawModels(REGULAR_50, 1000, 1), 3);
