/** The body of a piece on the sheet: parts to cut, weight with what to mind, and how to cut the parts from the boards there are. */
import { useMemo } from 'react';
import { type AdviceOptions, bodyAdvice } from '#core/piece/body/body-advice.ts';
import { bodyParts } from '#core/piece/body/body-parts.ts';
import { bodyWeight, type WeightOptions } from '#core/piece/body/body-weight.ts';
import type { CuttingOptions, CuttingPlan, StockSheet } from '#core/piece/cutting/cutting.ts';
import { planCutting } from '#core/piece/cutting/plan-cutting.ts';
import type { Piece } from '#core/piece/piece.ts';
import { formatArea, formatLength, formatPercent, formatWeight } from '#core/quantity/format.ts';
import { sayProblem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { CuttingDiagram } from './CuttingDiagram.tsx';
import './body.css';

export interface BodyPanelProps {
  /** Read and found sound. */
  readonly piece: Piece;
  readonly system: System;
  /** Kept the same object while nothing changes: body, weight and advice in one. */
  readonly options: WeightOptions & AdviceOptions;
  /** Boards to buy and offcuts on the shelf, of the body's board. Empty: no cutting plan. */
  readonly stock: readonly StockSheet[];
  readonly cutting?: CuttingOptions;
}

/** Few enough for a plan while the page is drawn. */
function fewRounds(parts: number): CuttingOptions {
  const rounds = Math.max(20, Math.min(250, Math.floor(2000 / Math.max(1, parts))));
  return { rounds, tidyRounds: Math.ceil(rounds / 4) };
}
const NO_CUTTING: CuttingOptions = {};

export function BodyPanel({ piece, system, options, stock, cutting = NO_CUTTING }: BodyPanelProps) {
  const { parts, weight, advice } = useMemo(() => {
    const weighed = bodyWeight(piece, options);
    return {
      parts: bodyParts(piece, options),
      weight: weighed,
      advice: bodyAdvice(piece, weighed, system, options),
    };
  }, [piece, options, system]);
  const plan = useMemo(() => {
    if (stock.length === 0) return null;
    const count = parts.reduce((sum, part) => sum + part.count, 0);
    return planCutting(parts, stock, { ...fewRounds(count), ...cutting });
  }, [parts, stock, cutting]);
  const size = (length_m: number) => formatLength(length_m, system);
  const heavy = (mass_kg: number) => formatWeight(mass_kg, system);
  return (
    <div className="body-panel">
      <table className="ledger">
        <caption>Parts of the body</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col" className="number">
              Count
            </th>
            <th scope="col" className="number">
              Length
            </th>
            <th scope="col" className="number">
              Width
            </th>
            <th scope="col">Grain</th>
            <th scope="col">Note</th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <tr key={`${part.name} ${part.length_m} ${part.width_m} ${part.note}`}>
              <th scope="row">{part.name}</th>
              <td className="number">{part.count}</td>
              <td className="number">{size(part.length_m)}</td>
              <td className="number">{size(part.width_m)}</td>
              <td>{part.grain === 'fixed' ? 'along length' : 'none'}</td>
              <td>{part.note}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Weight about <strong>{heavy(weight.total_kg)}</strong> ({heavy(weight.low_kg)} to{' '}
        {heavy(weight.high_kg)}): field {heavy(weight.field_kg)}, strips and rims {heavy(weight.strips_kg)},
        splashes {heavy(weight.splashes_kg)}, resin {heavy(weight.resin_kg)}.
      </p>
      {advice.length > 0 && (
        <ul className="body-advice">
          {advice.map((each) => (
            <li key={`${each.code} ${each.text}`}>
              <strong>{each.kind === 'caution' ? 'Caution: ' : 'Information: '}</strong>
              {each.text} <small>{each.source}</small>
            </li>
          ))}
        </ul>
      )}
      {plan?.ok === false && (
        <ul className="body-problems" role="alert">
          {plan.problems.map((problem) => (
            <li key={problem.path + problem.code}>{sayProblem({ ...problem, path: '' })}</li>
          ))}
        </ul>
      )}
      {plan?.ok === true && <Cutting plan={plan.value} system={system} />}
    </div>
  );
}

function Cutting({ plan, system }: { readonly plan: CuttingPlan; readonly system: System }) {
  const { sheets } = plan;
  const proven = plan.proof !== 'none';
  return (
    <section className="body-cutting" aria-label="Cutting the boards">
      <p>
        {sheets.length} {sheets.length === 1 ? 'sheet' : 'sheets'}, {formatArea(plan.wasteArea_m2, system)} of
        waste, {formatArea(plan.offcutArea_m2, system)} to keep.{' '}
        {proven
          ? 'No plan from these sheets is cheaper.'
          : `A cheaper plan may exist, by no more than ${formatPercent(plan.gap)}.`}
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
