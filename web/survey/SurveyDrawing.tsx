import type { AdjustedOutline } from '#core/piece/survey/adjust-outline.ts';
import { withWallBows } from '#core/piece/survey/shape.ts';
import { cornerName, type Survey } from '#core/piece/survey/survey.ts';
import type { System } from '#core/quantity/units.ts';
import { fine } from './survey-words.ts';

const WIDTH = 400;
const MARGIN = 44;
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500];

interface Props {
  readonly survey: Survey;
  readonly outline: AdjustedOutline;
  readonly system: System;
}

/** The adjusted outline with what was measured, and where each corner may lie, drawn larger than it is. */
export function SurveyDrawing({ survey, outline, system }: Props) {
  const { corners, verdict } = outline;
  const walls = withWallBows(corners, survey.bows, survey.clockwise);
  const xs = walls.map(({ x_m }) => x_m);
  const ys = walls.map(({ y_m }) => y_m);
  const [left, top] = [Math.min(...xs), Math.max(...ys)];
  const span = Math.max(Math.max(...xs) - left, 0.01);
  const rise = Math.max(top - Math.min(...ys), 0.01);
  const scale = Math.min((WIDTH - 2 * MARGIN) / span, (WIDTH - 2 * MARGIN) / rise);
  const height = rise * scale + 2 * MARGIN;
  const x = (value_m: number) => (WIDTH - span * scale) / 2 + (value_m - left) * scale;
  const y = (value_m: number) => MARGIN + (top - value_m) * scale;
  const held = corners.filter(({ loose }) => !loose);
  const widest = Math.max(0, ...held.map(({ ellipse }) => ellipse.long_m));
  const factor = STEPS.findLast((step) => widest * scale * step <= 34) ?? 1;
  const doubted = new Set(
    verdict.kind === 'suspect' ? [verdict.reading] : 'readings' in verdict ? verdict.readings : [],
  );
  const middleX = corners.reduce((sum, { x_m }) => sum + x(x_m), 0) / corners.length;
  const middleY = corners.reduce((sum, { y_m }) => sum + y(y_m), 0) / corners.length;
  return (
    <figure className="survey-drawing">
      <svg viewBox={`0 0 ${WIDTH} ${height.toFixed(1)}`} role="img" aria-label={describe(outline, system)}>
        <polygon
          className="survey-outline"
          points={walls.map(({ x_m, y_m }) => `${x(x_m).toFixed(1)},${y(y_m).toFixed(1)}`).join(' ')}
        />
        {survey.readings.map((reading, i) => {
          const from = corners[reading.from]!;
          const to = corners[reading.to]!;
          const suspect = doubted.has(i);
          return (
            <g key={reading.path} className={suspect ? 'survey-line survey-doubted' : 'survey-line'}>
              <line x1={x(from.x_m)} y1={y(from.y_m)} x2={x(to.x_m)} y2={y(to.y_m)} />
              {suspect && (
                <text
                  x={(x(from.x_m) + x(to.x_m)) / 2}
                  y={(y(from.y_m) + y(to.y_m)) / 2 - 4}
                  textAnchor="middle"
                >
                  ?
                </text>
              )}
            </g>
          );
        })}
        {corners.map((corner, i) => {
          const [cx, cy] = [x(corner.x_m), y(corner.y_m)];
          const away = Math.hypot(cx - middleX, cy - middleY) || 1;
          return (
            <g key={cornerName(i)}>
              {!corner.loose && (
                <ellipse
                  className="survey-ellipse"
                  rx={Math.min(WIDTH, corner.ellipse.long_m * scale * factor).toFixed(2)}
                  ry={Math.min(WIDTH, corner.ellipse.short_m * scale * factor).toFixed(2)}
                  transform={`translate(${cx.toFixed(1)} ${cy.toFixed(1)}) rotate(${((-corner.ellipse.turned_rad * 180) / Math.PI).toFixed(1)})`}
                />
              )}
              <circle
                className={corner.loose ? 'survey-loose' : 'survey-corner'}
                cx={cx}
                cy={cy}
                r={corner.loose ? 6 : 3}
              />
              <text
                className="survey-name"
                x={cx + (22 * (cx - middleX)) / away}
                y={cy + (22 * (cy - middleY)) / away + 5}
                textAnchor="middle"
              >
                {cornerName(i)}
                {corner.loose ? ' loose' : ''}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption>
        {widest > 0
          ? `Each corner lies in its ellipse 95 times in 100, if no reading is wrong; drawn ${factor === 1 ? 'to scale' : `${factor} times too large`}. Measured from A along A to B.`
          : 'Thin lines are what was measured.'}
      </figcaption>
    </figure>
  );
}

function describe(outline: AdjustedOutline, system: System): string {
  const words = outline.corners.map((corner, i) =>
    corner.loose
      ? `${cornerName(i)} loose`
      : i === 0
        ? 'A where measuring starts'
        : `${cornerName(i)} to within ${fine(corner.ellipse.long_m, system)}`,
  );
  return `Outline with ${outline.corners.length} corners: ${words.join(', ')}.`;
}
