/** How the parts are cut out of the sheets there are: how many sheets, what is left, each sheet with its cuts in order. */
import type { CuttingPlan } from '#core/piece/cutting/cutting.ts';
import { formatArea, formatPercent } from '#core/quantity/format.ts';
import { type Result, sayProblem } from '#core/quantity/problem.ts';
import { fixed } from '#core/quantity/rounding.ts';
import type { System } from '#core/quantity/units.ts';
import { CuttingDiagram } from './CuttingDiagram.tsx';
import './body.css';

interface Props {
  readonly plan: Result<CuttingPlan>;
  readonly system: System;
  /** Currency the sheets are priced in; left out where some have no price. */
  readonly currency?: string;
}

export function CuttingPanel({ plan, system, currency }: Props) {
  if (!plan.ok)
    return (
      <ul className="body-problems" role="alert">
        {plan.problems.map((problem) => (
          <li key={problem.path + problem.code}>{sayProblem({ ...problem, path: '' })}</li>
        ))}
      </ul>
    );
  const { sheets, price, proof, gap, wasteArea_m2, offcutArea_m2 } = plan.value;
  return (
    <section className="body-cutting" aria-label="Cutting the boards">
      <p>
        {sheetWords(plan.value)}
        {currency !== undefined && `, ${fixed(price, 2)} ${currency}`}: {formatArea(wasteArea_m2, system)} of
        waste, {formatArea(offcutArea_m2, system)} to keep.{' '}
        {proof === 'none'
          ? `A cheaper plan may exist, by no more than ${formatPercent(gap)}.`
          : 'No plan from these sheets is cheaper.'}
      </p>
      {sheets.map((sheet, i) => (
        <CuttingDiagram
          key={`${sheet.name} ${sheet.parts.map((part) => `${part.part} ${part.x_m} ${part.y_m}`).join()}`}
          sheet={sheet}
          number={i + 1}
          system={system}
        />
      ))}
    </section>
  );
}

/** "1 sheet" or "2 sheets and 1 offcut". */
export function sheetWords(plan: CuttingPlan): string {
  const offcuts = plan.sheets.filter(({ name }) => name === 'offcut').length;
  const bought = plan.sheets.length - offcuts;
  const words = [
    bought > 0 && `${bought} ${bought === 1 ? 'sheet' : 'sheets'}`,
    offcuts > 0 && `${offcuts} ${offcuts === 1 ? 'offcut' : 'offcuts'}`,
  ];
  return words.filter(Boolean).join(' and ');
}
