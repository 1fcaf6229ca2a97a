/** What light, hatched and solid mean. */
import type { HatchIds } from './Hatch.tsx';

export function Legend({ hatch }: { readonly hatch: HatchIds }) {
  return (
    <ul className="chart-legend">
      <li>
        <svg width="30" height="16" aria-hidden="true">
          <rect className="chart-window" x="0.5" y="0.5" width="29" height="15" />
        </svg>
        may be done
      </li>
      <li>
        <svg width="30" height="16" aria-hidden="true">
          <rect className="chart-window" x="0.5" y="0.5" width="29" height="15" />
          <rect className="chart-planned" x="4" y="4" width="20" height="8" />
        </svg>
        planned
      </li>
      <li>
        <svg width="30" height="16" aria-hidden="true">
          <rect
            className="chart-closing"
            x="0.5"
            y="0.5"
            width="29"
            height="15"
            fill={`url(#${hatch.range})`}
          />
        </svg>
        closes in here (5 to 95 %)
      </li>
      <li>
        <svg width="30" height="16" aria-hidden="true">
          <circle className="chart-pour" cx="15" cy="8" r="7.5" />
          <text className="chart-pour-text" x="15" y="12" fontSize="11" textAnchor="middle">
            1
          </text>
        </svg>
        cup 1 is poured
      </li>
      <li>
        <svg width="16" height="16" aria-hidden="true">
          <path className="chart-danger" d="M4 4l8 8m0 -8l-8 8" />
        </svg>
        cup left standing: danger
      </li>
      <li>
        <svg width="16" height="16" aria-hidden="true">
          <rect className="chart-gel" x="4" y="4" width="8" height="8" />
        </svg>
        gel
      </li>
    </ul>
  );
}
