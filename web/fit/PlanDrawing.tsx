import type { PieceForWalls, WallFit } from '#core/piece/fit-to-wall/wall-fit.ts';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { madeSizes } from './fit-words.ts';
import { pathOf, WallHatch } from './walls.tsx';

const WIDTH = 400;
const SIDE = 62;
const TOP = 44;
/** Joints and overhangs are drawn this wide whatever they measure; the drawing says so. */
const JOINT = 9;
const WALL = 12;

/** The piece at its walls, seen from above: walls hatched, cabinet dashed, sizes to make. */
export function PlanDrawing({
  walls,
  piece,
  system,
}: {
  readonly walls: WallFit;
  readonly piece: PieceForWalls;
  readonly system: System;
}) {
  const { length_m, depth_m } = madeSizes(piece, system);
  if (length_m === null || depth_m === null) return null;
  const long = WIDTH - 2 * SIDE;
  const deep = Math.min(220, Math.max(70, (long * depth_m) / length_m));
  const [left, right, back, front] = [SIDE, SIDE + long, TOP, TOP + deep];
  const atLeft = walls.ends === 'both' || walls.ends === 'left';
  const atRight = walls.ends === 'both' || walls.ends === 'right';
  // A scribed side reaches into the wall it will be cut to.
  const over = (way: 'caulk' | 'scribe' | undefined) => (way === 'scribe' ? -JOINT : JOINT);
  const end = piece.end?.joint.way;
  const wallY = back - over(piece.back.joint.way);
  const wallX1 = left - over(end);
  const wallX2 = right + over(end);
  const cabinet = {
    x1: atLeft ? wallX1 : left + JOINT,
    x2: atRight ? wallX2 : right - JOINT,
    y2: front - JOINT,
  };
  const [x1, x2] = [atLeft ? wallX1 : 8, atRight ? wallX2 : WIDTH - 8];
  const wall = [
    ...(atLeft ? [`M${wallX1} ${front + 4}V${wallY}`] : [`M${x1} ${wallY}`]),
    `H${x2}`,
    ...(atRight ? [`V${front + 4}`] : []),
  ].join('');
  const strip = pathOf([
    ...(atLeft
      ? ([
          [x1 - WALL, front + 4],
          [x1, front + 4],
        ] as const)
      : []),
    [x1, wallY],
    [x2, wallY],
    ...(atRight
      ? ([
          [x2, front + 4],
          [x2 + WALL, front + 4],
        ] as const)
      : []),
    [atRight ? x2 + WALL : x2, wallY - WALL],
    [atLeft ? x1 - WALL : x1, wallY - WALL],
  ]);
  const long_ = formatLength(length_m, system);
  const deep_ = formatLength(depth_m, system);
  return (
    <figure className="fit-drawing">
      <svg
        viewBox={`0 0 ${WIDTH} ${(front + 40).toFixed(0)}`}
        role="img"
        aria-label={`Seen from above: a piece ${long_} by ${deep_} at its walls.`}
      >
        <WallHatch d={strip} />
        <path className="fit-piece" d={`M${left} ${back}H${right}V${front}H${left}Z`} />
        <path
          className="fit-cabinet"
          d={`M${cabinet.x1} ${Math.max(wallY, back)}V${cabinet.y2}H${cabinet.x2}V${Math.max(wallY, back)}`}
        />
        <path className="fit-walls" d={wall} />
        <text x={(left + right) / 2} y={front + 24} textAnchor="middle">
          {long_}
        </text>
        <text x={(left + right) / 2} y={(back + front) / 2 + 5} textAnchor="middle">
          {deep_} deep
        </text>
        <text className="fit-note" x={(left + right) / 2} y={wallY - WALL - 6} textAnchor="middle">
          {piece.back.joint.way}
        </text>
        {atLeft && (
          <text className="fit-note" x={x1 - WALL - 6} y={(back + front) / 2 + 5} textAnchor="end">
            {end}
          </text>
        )}
        {atRight && (
          <text className="fit-note" x={x2 + WALL + 6} y={(back + front) / 2 + 5}>
            {end}
          </text>
        )}
      </svg>
      <figcaption>
        Walls hatched, cabinet dashed. Joints and overhangs are drawn larger than they are.
      </figcaption>
    </figure>
  );
}
