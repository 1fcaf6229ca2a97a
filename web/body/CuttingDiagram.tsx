/** One sheet with its parts to scale, the cuts numbered in the order they are made, and the same cuts as a list. */
import type { Cut, CutSheet, Rest } from '#core/piece/cutting/cutting.ts';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';

const WIDE = 800;
const MARGIN = 12;

const KINDS: Readonly<Record<Cut['kind'], string>> = {
  'trim rip': 'trim, along',
  'trim crosscut': 'trim, across',
  rip: 'rip',
  crosscut: 'crosscut',
};

export function CuttingDiagram(props: {
  readonly sheet: CutSheet;
  readonly number: number;
  readonly system: System;
}) {
  const { sheet, number, system } = props;
  const scale = (WIDE - 2 * MARGIN) / sheet.length_m;
  const high = sheet.width_m * scale + 2 * MARGIN;
  const size = (length_m: number) => formatLength(length_m, system);
  // y runs up on the sheet and down on the screen.
  const box = (each: Rest) => ({
    x: MARGIN + each.x_m * scale,
    y: high - MARGIN - (each.y_m + each.alongY_m) * scale,
    width: each.alongX_m * scale,
    height: each.alongY_m * scale,
  });
  const title = `Sheet ${number}: ${sheet.name}, ${size(sheet.length_m)} x ${size(sheet.width_m)}`;
  const words = sheet.parts.map(
    (part) =>
      `${part.name} ${size(part.alongX_m)} x ${size(part.alongY_m)}, ${size(part.x_m)} from the left and ${size(part.y_m)} from the bottom`,
  );
  return (
    <figure className="cutting-sheet">
      <figcaption>{title}</figcaption>
      <svg
        viewBox={`0 0 ${WIDE} ${high.toFixed(1)}`}
        role="img"
        aria-label={`${title}. ${words.join('; ')}.`}
      >
        <rect
          className="cutting-board"
          {...box({ x_m: 0, y_m: 0, alongX_m: sheet.length_m, alongY_m: sheet.width_m })}
        />
        {sheet.offcuts.map((rest) => (
          <Labelled
            key={`${rest.x_m} ${rest.y_m}`}
            className="cutting-offcut"
            {...box(rest)}
            words={`keep ${size(rest.alongX_m)} x ${size(rest.alongY_m)}`}
          />
        ))}
        {sheet.parts.map((part) => (
          <Labelled
            key={`${part.x_m} ${part.y_m}`}
            className="cutting-part"
            {...box(part)}
            words={`${part.name} ${size(part.alongX_m)} x ${size(part.alongY_m)}`}
          />
        ))}
        {sheet.cuts.map((cut) => {
          const x1 = MARGIN + cut.from.x_m * scale;
          const x2 = MARGIN + cut.to.x_m * scale;
          const y1 = high - MARGIN - cut.from.y_m * scale;
          const y2 = high - MARGIN - cut.to.y_m * scale;
          // Numbers step along their cuts so that neighbours do not cover one another.
          const along = 0.15 + (0.7 * ((cut.number * 5) % 13)) / 12;
          const x = x1 + (x2 - x1) * along;
          const y = y1 + (y2 - y1) * along;
          return (
            <g key={cut.number} className="cutting-cut">
              <line x1={x1} y1={y1} x2={x2} y2={y2} />
              <circle cx={x} cy={y} r={8} />
              <text x={x} y={y + 3.5} textAnchor="middle">
                {cut.number}
              </text>
            </g>
          );
        })}
      </svg>
      <table className="ledger">
        <caption>Cuts of sheet {number}, in order</caption>
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">Cut</th>
            <th scope="col">Take</th>
            <th scope="col" className="number">
              Fence
            </th>
            <th scope="col">Gives</th>
            <th scope="col">Leaves</th>
          </tr>
        </thead>
        <tbody>
          {sheet.cuts.map((cut) => (
            <tr key={cut.number}>
              <th scope="row">{cut.number}</th>
              <td data-label="Cut">{KINDS[cut.kind]}</td>
              <td data-label="Take">{cut.panel}</td>
              <td data-label="Fence" className="number">
                {size(cut.fence_m)}
              </td>
              <td data-label="Gives">{cut.gives}</td>
              <td data-label="Leaves">{cut.leaves}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  );
}

function Labelled(props: {
  readonly className: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly words: string;
}) {
  const { className, x, y, width, height, words } = props;
  const upright = height > width;
  const long = Math.max(width, height);
  const letters = Math.min(13, (1.7 * long) / words.length, Math.min(width, height) * 0.8);
  const cx = x + width / 2;
  const cy = y + height / 2;
  return (
    <g className={className}>
      <rect x={x} y={y} width={width} height={height}>
        <title>{words}</title>
      </rect>
      {letters >= 5 && (
        <text
          x={cx}
          y={cy}
          fontSize={letters.toFixed(1)}
          textAnchor="middle"
          dominantBaseline="central"
          {...(upright ? { transform: `rotate(-90 ${cx} ${cy})` } : {})}
        >
          {words}
        </text>
      )}
    </g>
  );
}
