/** The plan as a work order in plain text: what a maker reads at the bench or pins to the wall. */
import type { JobDocument } from '#core/job/document.ts';
import type { CoatForecast, JobForecast } from '#core/job/forecast.ts';
import { sayWorking } from '#core/mix/say-working.ts';
import type { CoatPlan, StageForecast, Step } from '#core/pour/plan.ts';
import {
  formatArea,
  formatDuration,
  formatLength,
  formatMass,
  formatPercent,
  formatRange,
  formatTemperature,
  formatVolume,
  formatWeight,
} from '#core/quantity/format.ts';
import { sayProblem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { clockText, signedText } from './clock-text.ts';
import { table, wrap } from './text-table.ts';

const WIDTH = 100;

export function planText(job: JobDocument, forecast: JobForecast, system: System): string {
  const blocks = [heading(job, forecast, system)];
  forecast.coats.forEach((coat, index) => {
    const on =
      forecast.pieces.length === 1 ? [] : forecast.pieces.filter(({ id }) => coat.pieces.includes(id));
    const names = on.map(({ name }) => name).join(', ');
    blocks.push(coatText(coat, names, job.coats[index]?.startsAt ?? '', system));
  });
  if (forecast.missing.length > 0)
    blocks.push(
      ['STILL NEEDED', ...forecast.missing.flatMap((m) => wrap(`${m.needs} (${m.path})`, WIDTH, '  '))].join(
        '\n',
      ),
    );
  if (forecast.warnings.length > 0)
    blocks.push(
      ['DOUBTFUL', ...forecast.warnings.flatMap((w) => wrap(sayProblem(w), WIDTH, '  '))].join('\n'),
    );
  blocks.push(['CAUTIONS', ...forecast.cautions.flatMap((c) => wrap(c, WIDTH, '  - ', '    '))].join('\n'));
  blocks.push(
    wrap(
      `Ranges are 5 to 95%. They rest on a generic resin model fitted to a label, not on your batch: trust what you see in the cup. Model ${forecast.modelVersion}.`,
      WIDTH,
    ).join('\n'),
  );
  return `${blocks.join('\n\n')}\n`;
}

function heading(job: JobDocument, forecast: JobForecast, system: System): string {
  const lines = [job.title === '' ? 'UNTITLED JOB' : job.title.toUpperCase()];
  if (job.customer.name !== '') lines.push(`for ${job.customer.name}`);
  const { pieces, room } = forecast;
  for (const { name, measures } of pieces) {
    if (measures === null) continue;
    const { bounds } = measures;
    const named = pieces.length === 1 ? '' : `${name}: `;
    const finished = measures.edges.filter((edge) => edge.outer && edge.kind === 'finished');
    lines.push(
      `piece  ${named}${formatLength(bounds.maxX_m - bounds.minX_m, system)} x ${formatLength(bounds.maxY_m - bounds.minY_m, system)}, top ${formatArea(measures.topArea_m2, system)}, finished edges ${formatLength(measures.finishedEdgeLength_m, system)} (${finished.map((edge) => edge.name).join(', ') || 'none'})`,
      `       a solid body would be about ${formatWeight(measures.bodyMass_kg, system)}, longest diagonal ${formatLength(measures.longestDiagonal_m, system)}`,
    );
  }
  if (room !== null) {
    const humidity =
      room.humidity === null ? 'humidity not measured' : `${formatPercent(room.humidity)} humidity`;
    const dew = room.dewPoint_K === null ? '' : `, dew point ${formatTemperature(room.dewPoint_K, system)}`;
    lines.push(
      `shop   air ${formatTemperature(room.air_K, system)}, board ${formatTemperature(room.board_K, system)}, ${humidity}${dew}: ${room.verdict}`,
      ...room.reasons.map((reason) => `       ${reason}`),
    );
  }
  return lines.flatMap((line) => wrapped(line)).join('\n');
}

/** A line of the heading; what it goes on with stands under its text and not under its first word. */
function wrapped(line: string): string[] {
  const [, lead = '', text = ''] = /^( {7}|piece {2}|shop {3})?(.*)$/s.exec(line) ?? [];
  return wrap(text, WIDTH, lead, ' '.repeat(lead.length));
}

function coatText(
  { name, plan, nextCoat }: CoatForecast,
  on: string,
  startsAt: string,
  system: System,
): string {
  const title = wrap(
    on === '' ? name.toUpperCase() : `${name.toUpperCase()} ON ${on.toUpperCase()}`,
    WIDTH,
    '== ',
  )
    .map((line, index, all) => (index === all.length - 1 ? `${line} `.padEnd(WIDTH, '=') : line))
    .join('\n');
  if (plan === null) return `${title}\nnot planned yet: see what is still needed`;
  const clock = startsAt === '' ? '' : ` on ${startsAt.replace('T', ' at ')}`;
  return [
    title,
    ...wrap(
      plan.says.replace(/^[^:]+/, (verdict) => verdict.toUpperCase()),
      WIDTH,
    ),
    '',
    'HOW MUCH',
    ...quantityText(plan, system),
    '',
    'CUPS, in the order they are mixed (grams on the scale)',
    ...cupsText(plan, system),
    '',
    'THE POUR (minutes:seconds, from an hour on hours and minutes)',
    `  0:00 is when the parts of the first cup meet${clock}`,
    ...table(
      ['from', 'to', 'who', 'what', 'must be done by', 'slack', 'because'],
      gathered(plan.steps).map((step) => stepRow(step)),
      { right: [0, 1, 2, 5], whole: [4] },
    ),
    '',
    'THE FILM',
    ...filmText(plan, system),
    '',
    'AFTER THE POUR (counted from when the first film lands)',
    ...table(
      ['when', 'what', 'rests on', 'how it is told'],
      plan.stages.map((stage) => stageRow(stage, plan.filmStart_s, system)),
      { whole: [0, 1, 2] },
    ),
    ...(nextCoat === null
      ? []
      : ['', `THE NEXT COAT: ${nextCoat.verdict.toUpperCase()}`, ...wrap(nextCoat.says, WIDTH, '  ')]),
    ...(plan.waysOut.length === 0
      ? []
      : [
          '',
          'WAYS OUT',
          ...table(
            ['way', 'verdict', 'slack', 'what changes'],
            plan.waysOut.map((way) => [
              way.label,
              way.verdict,
              signedText(way.slack_s),
              `${way.change}. ${way.note}`,
            ]),
            { right: [2], whole: [0, 1] },
          ),
        ]),
    ...(plan.cautions.length === 0
      ? []
      : ['', 'MIND', ...plan.cautions.flatMap((caution) => wrap(caution, WIDTH, '  - ', '    '))]),
  ].join('\n');
}

function quantityText(plan: CoatPlan, system: System): string[] {
  const rows = plan.quantity.lines.map((line) => [
    line.label,
    formatVolume(line.volume_m3, system),
    formatMass(line.mass_kg),
    line.basis,
    sayWorking(line, system),
  ]);
  rows.push([
    'total',
    formatVolume(plan.quantity.volume_m3, system),
    formatMass(plan.quantity.mass_kg),
    '',
    '',
  ]);
  return table(['for', 'volume', 'weight', 'rests on', 'working'], rows, { right: [1, 2], whole: [0, 3] });
}

function cupsText(plan: CoatPlan, system: System): string[] {
  const grams = (mass_kg: number) => formatMass(mass_kg).replace(/ g$/, '');
  const rows = plan.cups.map((cup) => {
    const forecast = plan.cupForecasts.find((each) => each.number === cup.number);
    const pourNow = forecast?.pourNow ?? null;
    return [
      String(cup.number),
      cup.colour,
      grams(cup.partA_kg),
      grams(cup.partB_kg),
      cup.colourant === 'none' ? '-' : `${grams(cup.tint_kg)} ${cup.colourant}`,
      formatVolume(cup.volume_m3, system),
      formatPercent(cup.ratioError, { decimals: 1 }),
      forecast === undefined ? '' : `${clockText(forecast.mixed_s)} to ${clockText(forecast.emptied_s)}`,
      pourNow === null
        ? 'not reached'
        : formatRange(pourNow.low_s, pourNow.mid_s, pourNow.high_s, 'duration', system),
    ];
  });
  return table(
    ['cup', 'colour', 'A', 'B', 'tint', 'in all', 'ratio off', 'mixed, empty', 'left standing, pour now at'],
    rows,
    { right: [0, 2, 3, 5, 6], whole: [7, 8] },
  );
}

/** Rounds of scraping that may be left out stand in one row: first start, last end, least slack. */
function gathered(steps: readonly Step[]): readonly Step[] {
  const rounds = steps.filter((step) => step.kind === 'scrape drips' && step.optional);
  const [first, last] = [rounds[0], rounds.at(-1)];
  if (first === undefined || last === undefined || rounds.length < 2) return steps;
  const every_s = (last.start_s - first.start_s) / (rounds.length - 1);
  const number = (step: Step) => step.label.replace(/^.*round /, '');
  const one: Step = {
    ...first,
    label: `Scrape drips, rounds ${number(first)} to ${number(last)}, one every ${formatDuration(every_s)}`,
    end_s: last.end_s,
    slack_s: Math.min(...rounds.map((step) => step.slack_s)),
  };
  return steps
    .filter((step) => !rounds.includes(step) || step === first)
    .map((step) => (step === first ? one : step));
}

function stepRow(step: Step): string[] {
  const { closes_s: safe_s, closesMid_s: middle_s } = step.window;
  const wait = step.kind === 'hands off';
  const latest = middle_s > safe_s + 30 ? ` (to ${clockText(middle_s)})` : '';
  return [
    clockText(step.start_s),
    clockText(step.end_s),
    String(step.person),
    step.optional && !wait ? `${step.label}, if there is time` : step.label,
    wait ? '-' : `${clockText(safe_s)}${latest}`,
    wait ? '-' : signedText(step.slack_s),
    step.window.limit,
  ];
}

function filmText(plan: CoatPlan, system: System): string[] {
  const { answers } = plan;
  const lines = answers.lastTouch.map(({ pitch_m, at_s }) =>
    at_s === null
      ? `  marks ${formatLength(pitch_m, system, { fraction: 8 })} apart stay, whenever they are made`
      : `  marks ${formatLength(pitch_m, system, { fraction: 8 })} apart still level if made before ${clockText(at_s)}`,
  );
  lines.push(
    `  longest wave that levels by itself: ${formatLength(answers.longestWave_m, system)}`,
    `  a face worked as planned holds ${formatRange(answers.faceHoldsLow_m, answers.faceHolds_m, answers.faceHoldsHigh_m, 'filmThickness', system)}: plan further edge passes if it should be more`,
    `  film thinner than 90% within ${formatLength(answers.taper_m, system)} of a wetted edge`,
    `  warmest the film gets: ${formatTemperature(answers.peak_K, system)}`,
  );
  return lines;
}

function stageRow(stage: StageForecast, filmStart_s: number, system: System): string[] {
  const when =
    stage.at === null
      ? 'not reached'
      : formatRange(
          Math.max(0, stage.at.low_s - filmStart_s),
          Math.max(0, stage.at.mid_s - filmStart_s),
          Math.max(0, stage.at.high_s - filmStart_s),
          'duration',
          system,
        );
  return [when, stage.label, stage.basis, stage.criterion];
}
