/** The body of a piece on the sheet and on paper: parts to cut, what it weighs, and what to mind. */
import { useMemo } from 'react';
import { type AdviceOptions, bodyAdvice } from '#core/piece/body/body-advice.ts';
import { bodyParts } from '#core/piece/body/body-parts.ts';
import { bodyWeight, type WeightOptions } from '#core/piece/body/body-weight.ts';
import type { Piece } from '#core/piece/piece.ts';
import { formatLength, formatWeight } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import './body.css';

export interface BodyPanelProps {
  /** Read and found sound. */
  readonly piece: Piece;
  readonly system: System;
  /** Kept the same object while nothing changes: body, weight and advice in one. */
  readonly options: WeightOptions & AdviceOptions;
}

export function BodyPanel({ piece, system, options }: BodyPanelProps) {
  const { parts, weight, advice } = useMemo(() => {
    const weighed = bodyWeight(piece, options);
    return {
      parts: bodyParts(piece, options),
      weight: weighed,
      advice: bodyAdvice(piece, weighed, system, options),
    };
  }, [piece, options, system]);
  const size = (length_m: number) => formatLength(length_m, system);
  const heavy = (mass_kg: number) => formatWeight(mass_kg, system);
  return (
    <div className="body-panel">
      <table className="ledger body-parts">
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
            <th scope="col" className="number">
              Board
            </th>
            <th scope="col">Grain</th>
            <th scope="col">Note</th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <tr key={`${part.name} ${part.length_m} ${part.width_m} ${part.note}`}>
              <th scope="row">{part.name}</th>
              <td className="number" data-label="Count">
                {part.count}
              </td>
              <td className="number" data-label="Length">
                {size(part.length_m)}
              </td>
              <td className="number" data-label="Width">
                {size(part.width_m)}
              </td>
              <td className="number" data-label="Board">
                {size(part.thickness_m)}
              </td>
              <td data-label="Grain">{part.grain === 'fixed' ? 'along length' : 'none'}</td>
              <td className="body-note" data-label="Note" data-empty={part.note === '' || undefined}>
                {part.note}
              </td>
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
    </div>
  );
}
