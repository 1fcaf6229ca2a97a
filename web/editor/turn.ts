/** Turning a cut-out about its centre: pure functions on the text a document holds. */
import type { CutOutDocument, PieceDocument } from '#core/job/document.ts';
import { readAngle_rad } from '#core/quantity/read.ts';

/** Counter-clockwise; null where the text is no angle. */
export function turnOf_degrees({ turned = '' }: CutOutDocument): number | null {
  if (turned.trim() === '') return 0;
  const read = readAngle_rad(turned);
  return read.ok ? (read.value * 180) / Math.PI : null;
}

/** Turned further by some degrees counter-clockwise, told from -180 (not included) to 180; the same piece where its turn is no angle. */
export function withTurn(piece: PieceDocument, index: number, by_degrees: number): PieceDocument {
  const cutOut = piece.cutOuts[index];
  const from = cutOut === undefined ? null : turnOf_degrees(cutOut);
  if (cutOut === undefined || from === null) return piece;
  const to = Number((-((((180 - from - by_degrees) % 360) + 360) % 360) + 180).toFixed(4));
  const turned = to === 0 ? '' : `${to} degrees`;
  return { ...piece, cutOuts: piece.cutOuts.map((other, i) => (i === index ? { ...other, turned } : other)) };
}
