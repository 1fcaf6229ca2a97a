/** The parts list of a body. */
import { outlinePath } from '../outline.ts';
import { bounds } from '../path.ts';
import type { Piece } from '../piece.ts';
import { type BodyOptions, type BodyPart, bodyOptions, layersUnder } from './body.ts';
import { type Blank, edgeBlanks, rimBlanks } from './strips.ts';

/**
 * Everything to cut for the body of a piece, equal parts counted together: the field sheet (an L in two, any other shape as
 * its bounding rectangle, larger by the oversize all round), strips under finished edges in as many layers as the face needs,
 * rims, splashes. The piece must be sound (`reviewPiece`).
 * @throws RangeError for an option out of range (body.ts) or an outline that cannot be built.
 */
export function bodyParts(piece: Piece, options: BodyOptions = {}): BodyPart[] {
  const body = bodyOptions(options);
  const thickness_m = body.boardThickness_m;
  const { grain } = body;
  const list: BodyPart[] = [];
  const add = (part: BodyPart): void => {
    const pieces = Math.ceil(part.length_m / body.longest_m - 1e-9);
    const joint = `One of ${pieces} lengths; joint them.`;
    const cut: BodyPart =
      pieces <= 1
        ? part
        : {
            ...part,
            length_m: part.length_m / pieces,
            count: part.count * pieces,
            note: part.note === '' ? joint : `${joint} ${part.note}`,
          };
    const same = list.findIndex(
      (each) =>
        each.kind === cut.kind &&
        each.name === cut.name &&
        each.note === cut.note &&
        Math.abs(each.length_m - cut.length_m) < 1e-6 &&
        Math.abs(each.width_m - cut.width_m) < 1e-6,
    );
    if (same < 0) list.push(cut);
    else list[same] = { ...list[same]!, count: list[same]!.count + cut.count };
  };
  for (const field of fields(piece)) {
    const { name, note } = field;
    const length_m = field.length_m + 2 * body.oversize_m;
    const width_m = field.width_m + 2 * body.oversize_m;
    add({ kind: 'field', name, length_m, width_m, thickness_m, count: 1, grain: grain.field, note });
  }
  const layered = (kind: 'strip' | 'rim', blank: Blank): void => {
    const layers = layersUnder(blank.faceHeight_m, body.boardThickness_m);
    if (layers.count === 0) return;
    const whole = layers.last_m > body.boardThickness_m - 0.0005 ? layers.count : layers.count - 1;
    const { name, note } = blank;
    // The field's oversize is trimmed back to the strips' outer side, so strips carry it at their ends only.
    const part = {
      ...{ kind, name, length_m: blank.length_m, width_m: blank.width_m },
      ...{ thickness_m, grain: grain[kind] },
    };
    if (whole > 0) add({ ...part, count: whole, note });
    if (whole >= layers.count) return;
    const plane = `Plane to ${(1000 * layers.last_m).toFixed(1)} mm.`;
    add({ ...part, count: 1, note: note === '' ? plane : `${plane} ${note}` });
  };
  for (const blank of edgeBlanks(piece, body.stripWidth_m)) layered('strip', blank);
  for (const blank of rimBlanks(piece, body.stripWidth_m)) layered('rim', blank);
  for (const splash of body.splashes)
    add({
      ...{ kind: 'splash', name: splash.name, length_m: splash.length_m, width_m: splash.height_m },
      ...{ thickness_m: splash.thickness_m ?? thickness_m, count: 1, grain: grain.splash, note: '' },
    });
  return list;
}

function fields(piece: Piece): { name: string; length_m: number; width_m: number; note: string }[] {
  const { outline } = piece;
  if (outline.shape === 'ell') {
    const note = 'Joint the two on a level bench.';
    const main = { name: 'field, main leg', length_m: outline.length_m, width_m: outline.width_m, note };
    const length_m = outline.returnLength_m - outline.width_m;
    return [main, { name: 'field, return', length_m, width_m: outline.returnWidth_m, note }];
  }
  const box = bounds(outlinePath(outline));
  const length_m = box.maxX_m - box.minX_m;
  const width_m = box.maxY_m - box.minY_m;
  const note = outline.shape === 'rectangle' ? '' : 'Saw to the outline after gluing.';
  return [{ name: 'field', length_m, width_m, note }];
}
