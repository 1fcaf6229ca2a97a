/** An order of cups as an order of the coat's colours: how the sheet says which is poured first. Pure. */
import type { JobDocument } from '#core/job/document.ts';
import type { OrderTurn } from '#core/pour/search/order-of-plan.ts';

type Colours = JobDocument['coats'][number]['colours'];

/**
 * The colours as the turns come, each one's cups together as they are now; null where the order is the same, a colour's cups are
 * apart or out of turn, or a name stands for two colours. A colour that the look calls by its place keeps being called so.
 */
export function coloursInOrder(colours: Colours, turns: readonly OrderTurn[]): Colours | null {
  const names = [...new Set(turns.map(({ colour }) => colour))];
  const runs = turns.filter(({ colour }, k) => k === 0 || turns[k - 1]!.colour !== colour).length;
  const apart = turns.some(
    ({ colour, cup }, k) => k > 0 && turns[k - 1]!.colour === colour && cup < turns[k - 1]!.cup,
  );
  if (runs !== names.length || apart || names.length !== colours.length) return null;
  const then = names.map((name) => {
    const found = colours.flatMap((colour, i) =>
      colour.name === name ? [{ ...colour, key: colour.key || String(i + 1) }] : [],
    );
    return found.length === 1 ? found[0]! : null;
  });
  if (then.some((colour) => colour === null)) return null;
  if (then.every((colour, i) => colour!.name === colours[i]!.name)) return null;
  return then.flatMap((colour) => (colour === null ? [] : [colour]));
}
