import { useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { ObservationDocument } from '#core/resin/card-document.ts';
import type { LoggerOptions } from '#core/resin/logger-csv.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { useCard } from './card-context.tsx';
import { fitClient } from './use-fit.ts';

interface Props {
  readonly onRead: (readings: ObservationDocument['readings']) => void;
}

/** A file of a thermometer logger. Its size is asked before it is read; what cannot be read is named with its line. */
export function LoggerImport({ onRead }: Props) {
  const { system } = useCard();
  const [temperatureUnit, setTemperatureUnit] = useState<'C' | 'F'>(system === 'us' ? 'F' : 'C');
  const [timeUnit, setTimeUnit] = useState<NonNullable<LoggerOptions['timeUnit']>>('s');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [said, setSaid] = useState('');
  const take = async (file: File) => {
    setProblems([]);
    setSaid(`Reading ${file.name} …`);
    try {
      const options = { temperatureUnit, timeUnit };
      const answer = await fitClient().ask('logger', { kind: 'logger', file, options });
      if (answer === null) return;
      if (answer.ok) {
        const { readings, of } = answer;
        onRead(readings);
        setSaid(
          `${file.name}: ${of} readings${readings.length < of ? `, ${readings.length} of them kept, evenly spaced` : ''}.`,
        );
      } else {
        setProblems(answer.problems);
        setSaid(`${file.name} was not taken. Nothing typed here was changed.`);
      }
    } catch (error) {
      setSaid(`${file.name} could not be read (${error instanceof Error ? error.message : String(error)}).`);
    }
  };
  return (
    <fieldset className="plain logger">
      <legend>From a thermometer logger</legend>
      <div className="form form-tight">
        <label className="field">
          <span className="field-label">CSV file, time and temperature</span>
          <input
            type="file"
            accept=".csv,.txt,.tsv,text/csv,text/plain"
            onChange={(event) => {
              const file = event.target.files?.[0];
              // The same file can then be chosen again, after it was put right.
              event.target.value = '';
              if (file !== undefined) void take(file);
            }}
          />
        </label>
        <label className="field">
          <span className="field-label">Degrees, if the file does not say</span>
          <select
            value={temperatureUnit}
            onChange={(event) => setTemperatureUnit(event.target.value === 'F' ? 'F' : 'C')}
          >
            <option value="F">°F</option>
            <option value="C">°C</option>
          </select>
        </label>
        <label className="field">
          <span className="field-label">Plain times, if it does not say</span>
          <select value={timeUnit} onChange={(event) => setTimeUnit(event.target.value as 's' | 'min' | 'h')}>
            <option value="s">seconds</option>
            <option value="min">minutes</option>
            <option value="h">hours</option>
          </select>
        </label>
      </div>
      <p role="status">{said}</p>
      {problems.length > 0 && (
        <ul className="logger-problems">
          {problems.map((problem) => (
            <li key={problem.path + problem.code} className="problem-block">
              <ProblemText problem={problem} />
            </li>
          ))}
        </ul>
      )}
    </fieldset>
  );
}
