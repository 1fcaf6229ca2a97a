/** Which cup goes where: the puddles of a look filled from the cups of its coat, in the order they are poured. */
import type { LookDocument } from '#core/look/look-document.ts';
import { positive } from '#core/quantity/domain.ts';
import type { CupRecipe } from './coat.ts';
import { pouredShares } from './look-shares.ts';

/** One pour out of one cup; a puddle larger than what is left in the cup takes several. */
export interface LookPour {
  /** Number of the cup, as on its label. */
  readonly cup: number;
  readonly colour: string;
  /** Move of the look; null: spread all over as the ground. */
  readonly move: string | null;
  /** What stays in the film of the work, m3. */
  readonly film_m3: number;
  /** What is to be poured for it, with its part of run-off and spare, kg. */
  readonly mass_kg: number;
}

export interface PoursRequest {
  readonly look: Pick<LookDocument, 'moves' | 'ground'>;
  /** Keys of the coat's colours, in its order, and what their cups are labelled. */
  readonly colours: readonly { readonly key: string; readonly label: string }[];
  /** Cups of the coat; those of a colour carry its label. */
  readonly cups: readonly Pick<CupRecipe, 'number' | 'colour' | 'mass_kg'>[];
  /** Film on the work, m3, above 0. */
  readonly whole_m3: number;
}

/**
 * Ground first, then puddle by puddle. All of every cup is poured: its masses add up to the cup's mass. A colour without cups, or
 * without a share, has no pours. @throws RangeError unless whole_m3 is above 0.
 */
export function lookPours({ look, colours, cups, whole_m3 }: PoursRequest): readonly LookPour[] {
  positive('whole_m3', whole_m3, 'm3');
  const keys = colours.map((colour) => colour.key);
  const shares = pouredShares(look, keys, whole_m3);
  const tanks = new Map(
    colours.map(({ key, label }) => [
      key,
      tank(
        cups.filter((cup) => cup.colour === label),
        shares.get(key)! * whole_m3,
      ),
    ]),
  );
  const puddles = look.moves.filter((move) => move.kind === 'puddle' && move.kept);
  const pours: LookPour[] = [];
  const pour = (colour: string, move: string | null, film_m3: number) => {
    for (const part of tanks.get(colour)?.(film_m3) ?? []) pours.push({ ...part, colour, move });
  };
  for (const [key, share] of shares) {
    const own = puddles.reduce(
      (sum, move) => sum + (move.kind === 'puddle' && move.colour === key ? move.volume_m3 : 0),
      0,
    );
    const rest = share * whole_m3 - own;
    if (rest > 1e-12 * whole_m3) pour(key, null, rest);
  }
  for (const move of puddles) if (move.kind === 'puddle') pour(move.colour, move.id, move.volume_m3);
  return pours;
}

/** Pours a film volume out of the cups one after another. */
function tank(cups: readonly { readonly number: number; readonly mass_kg: number }[], film_m3: number) {
  const mass_kg = cups.reduce((sum, cup) => sum + cup.mass_kg, 0);
  const perFilm = film_m3 > 0 ? mass_kg / film_m3 : 0;
  let at = 0;
  let left_kg = cups[0]?.mass_kg ?? 0;
  return (wanted_m3: number): Omit<LookPour, 'colour' | 'move'>[] => {
    const parts: Omit<LookPour, 'colour' | 'move'>[] = [];
    let need_kg = wanted_m3 * perFilm;
    while (need_kg > 1e-12 && at < cups.length) {
      const last = at === cups.length - 1;
      const take = last ? need_kg : Math.min(need_kg, left_kg);
      if (take > 1e-9) parts.push({ cup: cups[at]!.number, film_m3: take / perFilm, mass_kg: take });
      need_kg -= take;
      left_kg -= take;
      if (!last && left_kg <= 1e-9) left_kg = cups[++at]!.mass_kg;
    }
    return parts;
  };
}
