/** The pieces a coat is poured on, as the film is asked about them: one at a time. Pure. */
import { coatedPieces } from '#core/job/coated-pieces.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import type { Piece, PieceMeasures } from '#core/piece/piece.ts';

export interface FilmPiece {
  readonly id: string;
  readonly name: string;
  readonly piece: Piece;
  readonly measures: PieceMeasures;
  /** Of what is in the cups, by the size of its top with its splashes; 1 where it is the only piece. */
  readonly share: number;
}

/** Empty where the coat cannot be planned. */
export function filmPieces(forecast: JobForecast | null, coatId: string): FilmPiece[] {
  const coat = forecast?.coats.find(({ id }) => id === coatId);
  const coated = coat === undefined ? null : coatedPieces(coat.pieces, forecast?.pieces ?? []);
  if (coated === null) return [];
  const { topArea_m2, parts } = coated.measures;
  return coated.pieces.flatMap(({ id, name, piece, measures }, index) =>
    piece === null || measures === null
      ? []
      : [{ id, name, piece, measures, share: (parts?.[index]?.topArea_m2 ?? topArea_m2) / topArea_m2 }],
  );
}
