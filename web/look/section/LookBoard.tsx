import { type PointerEvent, useState } from 'react';
import type { Look } from '#core/look/look.ts';
import type { LookDocument } from '#core/look/look-document.ts';
import { type BoardPlaces, boardPlaces, type Spot } from './board-place.ts';
import { Picture, type PictureSize } from './Picture.tsx';
import type { Tool } from './tools.ts';

interface Props {
  readonly look: Look;
  readonly document: LookDocument;
  readonly label: string;
  readonly tool: Tool;
  /** Move found in the list. */
  readonly found: string | null;
  readonly unfolded: boolean;
  readonly onDrag: (drag: readonly Spot[], pixel_m: number) => void;
  readonly onFind: (id: string | null) => void;
}

/** The piece under the hand: the look as it comes out, and over it what is drawn, found and locked. */
export function LookBoard(props: Props) {
  const { look, label, unfolded } = props;
  return (
    <Picture look={look} label={label} highest={640} unfolded={unfolded}>
      {(size) => (unfolded ? null : <Over {...props} size={size} />)}
    </Picture>
  );
}

function Over({ document, tool, found, onDrag, onFind, size }: Props & { readonly size: PictureSize }) {
  const [drag, setDrag] = useState<readonly Spot[]>([]);
  const { width, height, drawing } = size;
  const places = boardPlaces(drawing, width, height);
  const spot = (event: PointerEvent<SVGSVGElement>): Spot => {
    const box = event.currentTarget.getBoundingClientRect();
    return places.toWork(
      ((event.clientX - box.left) / box.width) * width,
      ((event.clientY - box.top) / box.height) * height,
    );
  };
  const works = tool !== 'look';
  return (
    <svg
      className="look-over"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      aria-hidden="true"
      data-works={works || undefined}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        if (!works) {
          onFind(nearest(document, spot(event), 24 * places.pixel_m));
          return;
        }
        event.currentTarget.setPointerCapture(event.pointerId);
        setDrag([spot(event)]);
      }}
      onPointerMove={(event) => {
        if (drag.length === 0) return;
        const at = spot(event);
        setDrag((was) => [...was, at]);
      }}
      onPointerUp={(event) => {
        if (drag.length === 0) return;
        onDrag([...drag, spot(event)], places.pixel_m);
        setDrag([]);
      }}
      onPointerCancel={() => setDrag([])}
    >
      {document.locked.map(({ id, name, corners }) => (
        <g key={id} className="look-lock">
          <polygon points={points(corners, places)} />
          <text x={places.toPicture(corners[0]!)[0] + 6} y={places.toPicture(corners[0]!)[1] + 16}>
            {name || 'locked'}
          </text>
        </g>
      ))}
      <Found document={document} found={found} places={places} />
      {drag.length > 1 && <polyline className="look-drag" points={points(drag, places)} />}
      {drag.length === 1 && (
        <circle
          className="look-drag"
          cx={places.toPicture(drag[0]!)[0]}
          cy={places.toPicture(drag[0]!)[1]}
          r="5"
        />
      )}
    </svg>
  );
}

const points = (path: readonly (readonly [number, number])[], places: BoardPlaces) =>
  path.map((place) => places.toPicture(place).join(',')).join(' ');

function Found({
  document,
  found,
  places,
}: {
  readonly document: LookDocument;
  readonly found: string | null;
  readonly places: BoardPlaces;
}) {
  const move = document.moves.find(({ id }) => id === found);
  if (move === undefined) return null;
  const path =
    move.kind === 'puddle' || move.kind === 'stroke'
      ? move.path
      : move.kind === 'comb'
        ? [move.through]
        : move.kind === 'swirl' || move.kind === 'tilt'
          ? [move.centre]
          : [];
  return (
    <g className="look-found">
      {path.length > 1 && <polyline points={points(path, places)} />}
      {path.map((place) => {
        const [x, y] = places.toPicture(place);
        return <circle key={place.join()} cx={x} cy={y} r="9" />;
      })}
    </g>
  );
}

/** The puddle or tool set down nearest to a place, within reach. */
function nearest(document: LookDocument, [x, y]: Spot, reach_m: number): string | null {
  let best: string | null = null;
  let least = reach_m;
  for (const move of document.moves) {
    const path =
      move.kind === 'puddle' || move.kind === 'stroke'
        ? move.path
        : move.kind === 'swirl'
          ? [move.centre]
          : move.kind === 'comb'
            ? [move.through]
            : [];
    for (const [px, py] of path) {
      const far = Math.hypot(px - x, py - y);
      if (far <= least) [best, least] = [move.id, far];
    }
  }
  return best;
}
