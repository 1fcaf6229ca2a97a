/** Fits resin cards and draws their curves off the main thread, one question at a time. */
import { sayProblem } from '#core/quantity/problem.ts';
import { type System, toSI } from '#core/quantity/units.ts';
import { cupTimesByMass, finalTgByRatioError, workingTimeByTemperature } from '#core/resin/card-curves.ts';
import type { ResinCardDocument } from '#core/resin/card-document.ts';
import { fitCard } from '#core/resin/fit-card.ts';
import { fitCurves } from '#core/resin/fit-curves.ts';
import { checkLoggerSize, type LoggerOptions, readLoggerCsv } from '#core/resin/logger-csv.ts';
import type { ResinCard } from '#core/resin/model.ts';
import { type Outlook, outlookOf, whatItTaught } from '#core/resin/outlook.ts';
import { readCard } from '#core/resin/read-card.ts';
import { whatIsKnown } from '#core/resin/what-is-known.ts';
import { CUP_MASSES_kg, hangUpTemperatures } from './chart-points.ts';
import type { Answers, Ask, LoggerAnswer, Question, Reply } from './fit-messages.ts';
import { asTypedReadings } from './readings.ts';

/** Fits of the documents seen last: changing the units or opening an observation asks for the same one again. */
const fitted = new Map<string, { readonly card: ResinCard; outlook?: Outlook }>();
const MOST_KEPT = 12;

function fitOf(document: ResinCardDocument) {
  const key = JSON.stringify(document);
  const known = fitted.get(key);
  if (known !== undefined) return known;
  const read = readCard(document);
  if (!read.ok) throw new RangeError(read.problems.map(sayProblem).join(' '));
  const made: { readonly card: ResinCard; outlook?: Outlook } = { card: fitCard(read.value) };
  fitted.set(key, made);
  const oldest = fitted.size > MOST_KEPT ? fitted.keys().next().value : undefined;
  if (oldest !== undefined) fitted.delete(oldest);
  return made;
}

async function answer(ask: Ask): Promise<Answers[keyof Answers]> {
  if (ask.kind === 'logger') return await readLogger(ask.file, ask.options);
  const fit = fitOf(ask.document);
  const { card } = fit;
  switch (ask.kind) {
    case 'fit': {
      const outlook = fit.outlook ?? outlookOf(card);
      fit.outlook = outlook;
      return { card, outlook, knowledge: whatIsKnown(card, ask.system, outlook) };
    }
    case 'charts':
      return chartsOf(card, ask.system);
    case 'taught': {
      const observation = card.observations?.find((each) => each.id === ask.observation);
      if (observation === undefined) throw new RangeError('the observation is not on the card');
      const { card: _, ...taught } = whatItTaught(card, observation);
      return taught;
    }
  }
}

function chartsOf(card: ResinCard, system: System): Answers['charts'] {
  const unit = system === 'us' ? 'F' : 'C';
  return {
    fit: fitCurves(card),
    workingTime: workingTimeByTemperature(card, {
      temperatures_K: hangUpTemperatures(system).map((value) => toSI(value, unit)),
    }),
    cups: cupTimesByMass(card, { masses_kg: CUP_MASSES_kg }),
    ratio: finalTgByRatioError(card),
  };
}

/** The size is asked before a byte is read. */
async function readLogger(file: Blob, options: LoggerOptions): Promise<LoggerAnswer> {
  const size = checkLoggerSize(file.size);
  if (!size.ok) return size;
  const read = readLoggerCsv(await file.text(), options);
  return read.ok ? { ok: true, readings: asTypedReadings(read.value), of: read.value.length } : read;
}

self.addEventListener('message', async (event: MessageEvent<Question>) => {
  const { number, ask } = event.data;
  let reply: Reply;
  try {
    reply = { number, answer: await answer(ask) };
  } catch (error) {
    reply = { number, failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});
