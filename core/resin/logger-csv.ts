import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import type { CupReading } from './observations.ts';

/** Largest logger file that is read, bytes; checked before anything is read. */
export const LOGGER_LIMIT_BYTES = 100_000_000;

/** Coldest and hottest reading of a thermometer in a cup that is believed, K. */
const READING_K = { low: 253.15, high: 573.15 } as const;
const MOST_PROBLEMS = 20;

export interface LoggerOptions {
  /** Where the header does not say. Default C. */
  readonly temperatureUnit?: 'C' | 'F';
  /** Of plain numbers, where the header does not say. Default s. */
  readonly timeUnit?: 's' | 'min' | 'h';
}

/** Whether a file of this size may be read at all: ask before reading it. Answers the size. */
export function checkLoggerSize(bytes: number): Result<number> {
  const mega = (size: number) => `${(size / 1e6).toFixed(size < 1e7 ? 1 : 0)} MB`;
  if (bytes > LOGGER_LIMIT_BYTES) {
    return bad({
      path: '',
      code: 'logger.too-large',
      message: 'The file is too large for a cup test: a day of readings each second is under 3 MB.',
      read: mega(bytes),
      allowed: `up to ${mega(LOGGER_LIMIT_BYTES)}`,
    });
  }
  if (!(bytes > 0)) return bad(empty());
  return good(bytes);
}

const empty = (): Problem => ({
  path: '',
  code: 'logger.empty',
  message: 'The file holds no readings.',
  read: '',
  allowed: 'lines of time and temperature, as "0:30, 75.2"',
});

/**
 * Readings from the text of a thermometer logger: columns of time and temperature separated by comma, semicolon or tab, with or
 * without a header. Times are plain numbers (seconds unless header or options say min or h), m:ss or h:mm:ss, or a
 * date with a time of day; they count from the first. Temperatures are C unless the header (or the column: "75.2 F") or the options
 * say F. A comma is a decimal comma where columns are parted by semicolon or tab. Lines that cannot be read are named with their
 * number, and a time that does not go forward refuses the file. Never throws.
 */
export function readLoggerCsv(text: string, options: LoggerOptions = {}): Result<readonly CupReading[]> {
  const sized = checkLoggerSize(text.length);
  if (!sized.ok) return sized;
  const separator = separatorOf(text);
  const layout: Layout = {
    time: 0,
    temperature: 1,
    fahrenheit: options.temperatureUnit === 'F',
    perUnit_s: { s: 1, min: 60, h: 3600 }[options.timeUnit ?? 's'],
  };
  const readings: CupReading[] = [];
  const problems: Problem[] = [];
  let more = 0;
  let first: number | null = null;
  let previous: { readonly time_s: number; readonly line: number } | null = null;
  let header = true;
  for (const { line, content } of linesOf(text)) {
    const cells = content.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
    if (header) {
      header = false;
      if (isHeader(cells, separator)) {
        readHeader(cells, layout);
        continue;
      }
    }
    const row = readRow(cells, separator, layout);
    const fault = (code: string, message: string, allowed: string) => {
      if (problems.length >= MOST_PROBLEMS) more++;
      else problems.push({ path: `line ${line}`, code, message, read: content.slice(0, 60), allowed });
    };
    if ('why' in row) {
      fault('logger.unreadable', `Line ${line}: ${row.why}.`, 'time and temperature, as "0:30, 75.2"');
      continue;
    }
    if (row.temperature_K < READING_K.low || row.temperature_K > READING_K.high) {
      fault(
        'logger.temperature',
        `Line ${line}: no cup is at this temperature; check the unit.`,
        '-20 °C to 300 °C',
      );
      continue;
    }
    if (previous !== null && !(row.time_s > previous.time_s)) {
      fault(
        'logger.time-order',
        `Line ${line}: its time does not come after that of line ${previous.line}.`,
        'times that go forward',
      );
      continue;
    }
    first ??= row.time_s;
    previous = { time_s: row.time_s, line };
    readings.push({ time_s: row.time_s - first, temperature_K: row.temperature_K });
  }
  if (more > 0) {
    problems.push({ path: '', code: 'logger.more', message: `${more} more lines cannot be used.` });
  }
  if (problems.length > 0) return bad(...problems);
  if (readings.length === 0) return bad(empty());
  return good(readings);
}

interface Layout {
  time: number;
  temperature: number;
  fahrenheit: boolean;
  perUnit_s: number;
}

/** Lines with their numbers from 1, without empty ones, one at a time: no copy of a large text is made. */
function* linesOf(text: string): Generator<{ readonly line: number; readonly content: string }> {
  let line = 0;
  for (let at = text.charCodeAt(0) === 0xfeff ? 1 : 0; at < text.length; ) {
    const end = text.indexOf('\n', at);
    const stop = end < 0 ? text.length : end;
    line++;
    const content = text.slice(at, stop).trim();
    if (content !== '') yield { line, content };
    at = stop + 1;
  }
}

/** Tab or semicolon where the first lines have one, else comma. */
function separatorOf(text: string): string {
  const head = text.slice(0, 2000);
  if (head.includes('\t')) return '\t';
  return head.includes(';') ? ';' : ',';
}

function isHeader(cells: readonly string[], separator: string): boolean {
  return cells.every((cell) => numberOf(cell, separator) === null && clockOf(cell) === null);
}

function readHeader(cells: readonly string[], layout: Layout): void {
  const timeAt = cells.findIndex((cell) =>
    /time|elapsed|zeit|seconds|minutes|\bs\b|\bmin\b|date/i.test(cell),
  );
  const warmAt = cells.findIndex((cell) =>
    /temp|°|celsius|fahrenheit|\b[cf]\b|probe|channel|ch ?1/i.test(cell),
  );
  if (timeAt >= 0) layout.time = timeAt;
  if (warmAt >= 0) layout.temperature = warmAt;
  else if (layout.time === layout.temperature) layout.temperature = layout.time + 1;
  const time = cells[layout.time] ?? '';
  const warmth = cells[layout.temperature] ?? '';
  if (/\bmin|minutes/i.test(time)) layout.perUnit_s = 60;
  else if (/hour|\bh\b|\bhrs?\b/i.test(time)) layout.perUnit_s = 3600;
  else if (/sec|\bs\b/i.test(time)) layout.perUnit_s = 1;
  if (/fahrenheit|(?:°|deg|\b)\s*F\b/i.test(warmth)) layout.fahrenheit = true;
  else if (/celsius|(?:°|deg|\b)\s*C\b/i.test(warmth)) layout.fahrenheit = false;
}

function readRow(
  cells: readonly string[],
  separator: string,
  layout: Layout,
): CupReading | { readonly why: string } {
  const [time, warmth] = [cells[layout.time], cells[layout.temperature]];
  if (time === undefined || warmth === undefined) return { why: 'a time and a temperature are needed' };
  const plain = numberOf(time, separator);
  const time_s = plain === null ? clockOf(time) : plain * layout.perUnit_s;
  if (time_s === null) return { why: `"${time.slice(0, 30)}" is not a time` };
  const unit = /[\d.,]\s*(?:°|deg)?\s*([cf])$/i.exec(warmth)?.[1];
  const value = numberOf(warmth.replace(/\s*(?:°|deg)?\s*[cf]$/i, ''), separator);
  if (value === null) return { why: `"${warmth.slice(0, 30)}" is not a temperature` };
  const fahrenheit = unit === undefined ? layout.fahrenheit : unit.toUpperCase() === 'F';
  return { time_s, temperature_K: fahrenheit ? ((value - 32) * 5) / 9 + 273.15 : value + 273.15 };
}

function numberOf(cell: string, separator: string): number | null {
  const text = separator === ',' ? cell : cell.replace(',', '.');
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(text)) return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : null;
}

const CLOCK =
  /^(?:(\d{4})-(\d{2})-(\d{2})[T ])?(\d{1,3}):([0-5]\d)(?::([0-5]\d(?:[.,]\d+)?))?\s*(am|pm)?Z?$/i;

/** "1:30" is minutes and seconds, "0:01:30" and dates are hours, minutes and seconds; seconds from midnight or from 1 March 0000. */
function clockOf(cell: string): number | null {
  const match = CLOCK.exec(cell);
  if (match === null) return null;
  const [, year, month, day, first, second, third, half] = match;
  const dated = year !== undefined;
  if (third === undefined && !dated && half === undefined) return 60 * Number(first) + Number(second);
  let hours = Number(first);
  if (half !== undefined) hours = (hours % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  const days = dated ? dayNumber(Number(year), Number(month), Number(day)) : 0;
  return 86_400 * days + 3600 * hours + 60 * Number(second) + Number((third ?? '0').replace(',', '.'));
}

/** Days from 1 March 0000 in the Gregorian calendar: whole years, then months counted from March. */
function dayNumber(year: number, month: number, day: number): number {
  const y = month > 2 ? year : year - 1;
  const m = (month + 9) % 12;
  return (
    365 * y +
    Math.floor(y / 4) -
    Math.floor(y / 100) +
    Math.floor(y / 400) +
    Math.floor((153 * m + 2) / 5) +
    day -
    1
  );
}
