/** What every cut sheet must keep, checked from the coordinates alone, without the tree the planner built. */
import type { CutPart, CutSheet, Rest } from './cutting.ts';

export const NEAR_M = 1e-6;

/** Sentences that say what is broken; none when the sheet is sound. */
export function brokenRules(sheet: CutSheet, parts: readonly CutPart[], kerf_m: number): string[] {
  const broken: string[] = [];
  const pieces: Rest[] = [...sheet.parts, ...sheet.offcuts, ...sheet.scraps];
  for (const each of pieces) {
    const inside =
      each.x_m >= sheet.trim_m - NEAR_M &&
      each.y_m >= sheet.trim_m - NEAR_M &&
      each.x_m + each.alongX_m <= sheet.length_m - sheet.trim_m + NEAR_M &&
      each.y_m + each.alongY_m <= sheet.width_m - sheet.trim_m + NEAR_M;
    if (!inside) broken.push(`outside the trimmed sheet: ${JSON.stringify(each)}`);
  }
  for (const placed of sheet.parts) {
    const part = parts[placed.part]!;
    const [x, y] = placed.turned ? [part.width_m, part.length_m] : [part.length_m, part.width_m];
    if (Math.abs(placed.alongX_m - x) > NEAR_M || Math.abs(placed.alongY_m - y) > NEAR_M)
      broken.push(`${placed.name} has the wrong size`);
    if (placed.turned && part.grain === 'fixed') broken.push(`${placed.name} lies across the grain`);
  }
  for (let i = 0; i < pieces.length; i++)
    for (let j = 0; j < i; j++)
      if (!apart(pieces[i]!, pieces[j]!, kerf_m))
        broken.push(`pieces ${i} and ${j} are less than a kerf apart`);
  if (!guillotine(pieces, kerf_m)) broken.push('not to be had with cuts that go right through');
  for (const cut of sheet.cuts) {
    if (cut.kind.startsWith('trim')) continue;
    const across = cut.kind === 'crosscut';
    const blade: Rest = {
      x_m: cut.from.x_m,
      y_m: cut.from.y_m,
      alongX_m: across ? 0 : cut.to.x_m - cut.from.x_m,
      alongY_m: across ? cut.to.y_m - cut.from.y_m : 0,
    };
    for (const piece of pieces) {
      if (!apart(blade, piece, 0)) broken.push(`cut ${cut.number} runs through a piece`);
    }
  }
  const area = (list: readonly Rest[]) => list.reduce((sum, each) => sum + each.alongX_m * each.alongY_m, 0);
  const whole = sheet.length_m * sheet.width_m;
  const counted = area(pieces) + sheet.kerfArea_m2 + sheet.trimArea_m2;
  if (Math.abs(counted - whole) > 1e-5 * whole) broken.push(`areas add up to ${counted} of ${whole} m2`);
  if (Math.abs(area(sheet.parts) - sheet.partsArea_m2) > 1e-9) broken.push('area of the parts');
  return broken;
}

function apart(a: Rest, b: Rest, kerf_m: number): boolean {
  const gap = kerf_m - NEAR_M;
  return (
    a.x_m + a.alongX_m + gap <= b.x_m ||
    b.x_m + b.alongX_m + gap <= a.x_m ||
    a.y_m + a.alongY_m + gap <= b.y_m ||
    b.y_m + b.alongY_m + gap <= a.y_m
  );
}

/** true when straight cuts right through, each a kerf wide, set every piece free. */
function guillotine(pieces: readonly Rest[], kerf_m: number): boolean {
  if (pieces.length <= 1) return true;
  for (const axis of ['x', 'y'] as const) {
    const start = (each: Rest) => (axis === 'x' ? each.x_m : each.y_m);
    const end = (each: Rest) => start(each) + (axis === 'x' ? each.alongX_m : each.alongY_m);
    const sorted = [...pieces].sort((a, b) => start(a) - start(b));
    let reach = end(sorted[0]!);
    for (let i = 1; i < sorted.length; i++) {
      if (start(sorted[i]!) >= reach + kerf_m - NEAR_M)
        return guillotine(sorted.slice(0, i), kerf_m) && guillotine(sorted.slice(i), kerf_m);
      reach = Math.max(reach, end(sorted[i]!));
    }
  }
  return false;
}

/**
 * Follows the list of cuts with nothing but fence and blade: a panel is put against the fence, the piece of the fence's
 * width comes off (a trim: stays), the kerf turns to dust, the remainder keeps the panel's name. Gives back the pieces that
 * carry a part's name.
 */
export function sawByList(
  sheet: CutSheet,
  kerf_m: number,
): { name: string; alongX_m: number; alongY_m: number }[] {
  const bench = new Map([['sheet', { x: sheet.length_m, y: sheet.width_m }]]);
  const names = new Set(sheet.parts.map((part) => part.name));
  const done: { name: string; alongX_m: number; alongY_m: number }[] = [];
  for (const cut of sheet.cuts) {
    const panel = bench.get(cut.panel);
    if (panel === undefined) throw new Error(`cut ${cut.number} needs ${cut.panel}, which is not there`);
    const axis = cut.kind.endsWith('crosscut') ? 'x' : 'y';
    if (cut.fence_m > panel[axis] + NEAR_M) throw new Error(`cut ${cut.number} is wider than its panel`);
    if (cut.kind.startsWith('trim')) {
      panel[axis] = cut.fence_m;
      continue;
    }
    const piece = { ...panel, [axis]: cut.fence_m };
    panel[axis] -= cut.fence_m + kerf_m;
    const put = (name: string, of: { x: number; y: number }) => {
      if (names.has(name)) done.push({ name, alongX_m: of.x, alongY_m: of.y });
      else bench.set(name, of);
    };
    put(cut.gives, piece);
    if (cut.leaves !== cut.panel) {
      bench.delete(cut.panel);
      put(cut.leaves, panel);
    }
  }
  return done;
}
