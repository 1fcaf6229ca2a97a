/** Many places of a finished pour at once, followed back to the colour each of them was poured in. */
import { back, isLocal, type MoveFigures, moveFigures, reaches } from '../moves/carry.ts';
import { type Box, FIGURES, specksFor } from '../moves/specks.ts';
import type { Pattern } from '../picture.ts';

/** Put places into `x` and `y` (metres), then ask for their colours. */
export interface Follow {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Colours of the first `count` places, in a list that is written over by the next call. */
  readonly colours: (count: number) => Uint8Array;
}

/**
 * A follower for up to `most` places at a time, the faster the closer together they lie: a drag or stroke that does not reach
 * any of them costs nothing. Throws RangeError where `moveFigures` does, and for a colour that is no whole number of 0 to 255.
 */
export function follower(pattern: Pattern, most: number): Follow {
  for (const colour of [
    pattern.ground,
    ...pattern.moves.map((move) => (move.kind === 'puddle' ? move.colour : 0)),
  ])
    if (!(Number.isInteger(colour) && colour >= 0 && colour <= 255))
      throw new RangeError(`a colour is a whole number of 0 to 255, not ${colour}`);
  return followFigures(moveFigures(pattern.moves), pattern.ground, most);
}

export function followFigures(moves: MoveFigures, ground: number, most: number): Follow {
  const specks = specksFor(most);
  const { x, y, sample } = specks;
  const found = new Uint8Array(most);
  const last = moves.figures.length / FIGURES - 1;
  const box: Box = { left: 0, right: 0, front: 0, back: 0 };
  const measure = () => {
    let left = x[0]!;
    let right = left;
    let front = y[0]!;
    let rear = front;
    for (let i = 1; i < specks.count; i++) {
      const px = x[i]!;
      const py = y[i]!;
      if (px < left) left = px;
      else if (px > right) right = px;
      if (py < front) front = py;
      else if (py > rear) rear = py;
    }
    box.left = left;
    box.right = right;
    box.front = front;
    box.back = rear;
  };
  return {
    x,
    y,
    colours(count) {
      specks.count = count;
      for (let i = 0; i < count; i++) sample[i] = i;
      found.fill(ground, 0, count);
      let measured = false;
      for (let move = last; move >= 0 && specks.count > 0; move--) {
        if (isLocal(moves, move)) {
          if (!measured) measure();
          measured = true;
          if (!reaches(moves, move, box)) continue;
        }
        measured = false;
        back(moves, move, specks, found);
      }
      return found;
    },
  };
}
