import { turnedIn } from '#core/piece/fit-to-wall/alcove.ts';
import type { Point } from '#core/piece/piece.ts';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import type { Turning } from './fit-picture.ts';
import { alongWall, pathOf, WallHatch } from './walls.tsx';

const WIDTH = 400;
const SIDE = 40;
const TOP = 34;

/** The piece between the side walls: in its place, and turned as far as it goes. */
export function SwingDrawing({ turning, system }: { readonly turning: Turning; readonly system: System }) {
  const { corners, width_m, reach_m, swing } = turning;
  const goes = turning.length_m <= width_m + 1e-6;
  // A piece that turns freely is shown at a slant, to show that it does.
  const turn = swing.free
    ? Math.PI / 6
    : swing.left_rad >= swing.right_rad
      ? swing.left_rad
      : -swing.right_rad;
  const straight = turnedIn(corners, 0, width_m, reach_m);
  const turned = turnedIn(corners, turn, width_m, reach_m);
  const every: readonly Point[] = [
    ...straight,
    ...turned,
    { x_m: 0, y_m: -reach_m },
    { x_m: width_m, y_m: 0 },
  ];
  const left = Math.min(...every.map(({ x_m }) => x_m));
  const right = Math.max(...every.map(({ x_m }) => x_m));
  const front = Math.min(...every.map(({ y_m }) => y_m));
  const scale = (WIDTH - 2 * SIDE) / (right - left);
  const height = TOP - front * scale + 16;
  const x = (value_m: number) => SIDE + (value_m - left) * scale;
  const y = (value_m: number) => TOP - value_m * scale;
  const shape = (points: readonly Point[]) => pathOf(points.map((p) => [x(p.x_m), y(p.y_m)] as const));
  const size = formatLength(width_m, system);
  const label = !goes
    ? `Seen from above: the piece is longer than the alcove, ${size} wide.`
    : swing.free
      ? `Seen from above: the piece between side walls ${size} apart, in its place and turned.`
      : `Seen from above: the piece between side walls ${size} apart, in its place and turned until it binds.`;
  return (
    <figure className="fit-drawing">
      <svg viewBox={`0 0 ${WIDTH} ${height.toFixed(1)}`} role="img" aria-label={label}>
        <WallHatch d={alongWall(x(0), y(-reach_m), x(0), y(0), x(width_m), y(0), x(width_m), y(-reach_m))} />
        <path className="fit-walls" d={`M${x(0)} ${y(-reach_m)}V${y(0)}H${x(width_m)}V${y(-reach_m)}`} />
        <path className={goes ? 'fit-place' : 'fit-place fit-clash'} d={shape(straight)} />
        {goes && Math.abs(turn) > 1e-4 && <path className="fit-turned" d={shape(turned)} />}
        <text x={x(width_m / 2)} y={16} textAnchor="middle">
          {size}
        </text>
      </svg>
      <figcaption>
        {!goes
          ? 'Heavy lines are walls; the piece, dashed, runs into them.'
          : Math.abs(turn) > 1e-4
            ? 'Heavy lines are walls. Dashed: in its place. Full: turned.'
            : 'Heavy lines are walls. Dashed: in its place.'}
      </figcaption>
    </figure>
  );
}
