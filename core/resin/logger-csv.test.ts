import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { checkLoggerSize, LOGGER_LIMIT_BYTES, readLoggerCsv } from './logger-csv.ts';

const read = (text: string, options = {}) => {
  const result = readLoggerCsv(text, options);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.map(({ time_s, temperature_K }) => [
    time_s,
    Number((temperature_K - 273.15).toFixed(4)),
  ]);
};
const codes = (text: string) => {
  const result = readLoggerCsv(text);
  return result.ok ? [] : result.problems.map((each) => `${each.path}: ${each.code}`);
};

describe('a logger file', () => {
  test.each([
    ['commas, seconds, no header', '0,24\n60,25.5\n120,27', {}],
    ['a header', 'time,temperature\n0,24\n60,25.5\n120,27', {}],
    ['semicolons and decimal commas', 'Zeit (s);Temp (°C)\n0;24,0\n60;25,5\n120;27', {}],
    ['tabs', 'Time [s]\tTemp [C]\n0\t24\n60\t25.5\n120\t27\n', {}],
    ['minutes by the header', 'Time (min),Temp (C)\n0,24\n1,25.5\n2,27', {}],
    ['minutes by the options', '0,24\n1,25.5\n2,27', { timeUnit: 'min' }],
    ['m:ss', '0:00,24\n1:00,25.5\n2:00,27', {}],
    ['h:mm:ss, starting late', '10:00:00,24\n10:01:00,25.5\n10:02:00,27', {}],
    ['Fahrenheit by the header', 'Time,Temp (°F)\n0,75.2\n60,77.9\n120,80.6', {}],
    ['Fahrenheit in the cells', '0,75.2 F\n60,77.9 °F\n120,80.6F', {}],
    ['Fahrenheit by the options', '0,75.2\n60,77.9\n120,80.6', { temperatureUnit: 'F' }],
    ['dates', '2026-05-14 23:59:00,24\n2026-05-15 00:00:00,25.5\n2026-05-15 00:01:00,27', {}],
    [
      'dates over the end of a leap February',
      '2028-02-29T23:59:00,24\n2028-03-01T00:00:00,25.5\n2028-03-01T00:01:00,27',
      {},
    ],
    ['a number column before', 'No,Time (s),Temp (C)\n1,0,24\n2,60,25.5\n3,120,27', {}],
    ['Windows line ends, a byte-order mark, blank lines', '\uFEFF0,24\r\n\r\n60,25.5\r\n120,27\r\n', {}],
    ['quotes', '"time","temp"\n"0","24"\n"60","25.5"\n"120","27"', {}],
  ])('with %s', (_name, text, options) => {
    expect(read(text, options)).toEqual([
      [0, 24],
      [60, 25.5],
      [120, 27],
    ]);
  });

  it('names the lines whose time does not go forward', () => {
    expect(codes('0,24\n60,25\n60,26\n30,26\n120,27')).toEqual([
      'line 3: logger.time-order',
      'line 4: logger.time-order',
    ]);
  });

  it('names the lines that hold no number', () => {
    expect(codes('time,temp\n0,24\n60,NaN\n120,\n180\n240,Infinity\n300,27')).toEqual([
      'line 3: logger.unreadable',
      'line 4: logger.unreadable',
      'line 5: logger.unreadable',
      'line 6: logger.unreadable',
    ]);
  });

  it('tells the first twenty bad lines and how many more there are', () => {
    const result = readLoggerCsv(`0,24\n${'x,y\n'.repeat(50)}`);
    expect(result.ok).toBe(false);
    if (!result.ok) {
      expect(result.problems).toHaveLength(21);
      expect(result.problems[20]!.message).toBe('30 more lines cannot be used.');
    }
  });

  it('asks for the unit when no cup is that hot', () => {
    expect(codes('0,24\n60,400')).toEqual(['line 2: logger.temperature']);
  });

  it.each(['', '   \n \n', 'time,temperature\n'])('refuses an empty file (%j)', (text) => {
    expect(codes(text)).toEqual([': logger.empty']);
  });

  it('is refused by its size before it is read', () => {
    expect(checkLoggerSize(LOGGER_LIMIT_BYTES).ok).toBe(true);
    const large = checkLoggerSize(LOGGER_LIMIT_BYTES + 1);
    expect(!large.ok && large.problems[0]!.code).toBe('logger.too-large');
    expect(!large.ok && large.problems[0]!.allowed).toBe('up to 100 MB');
    expect(checkLoggerSize(0).ok).toBe(false);
    expect(checkLoggerSize(Number.NaN).ok).toBe(false);
  });

  it('reads back what was written, in any separator', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 150, max: 900 })), {
          minLength: 1,
          maxLength: 40,
        }),
        fc.constantFrom(',', ';', '\t'),
        (steps, separator) => {
          let time = 0;
          const rows = steps.map(([step, tenths]) => {
            time += step;
            return [time, tenths / 10] as const;
          });
          const first = rows[0]![0];
          expect(read(rows.map((row) => row.join(separator)).join('\n'))).toEqual(
            rows.map(([t, celsius]) => [t - first, celsius]),
          );
        },
      ),
    );
  });

  it('never throws', () => {
    fc.assert(fc.property(fc.string({ maxLength: 300 }), (text) => void readLoggerCsv(text)));
  });
});
