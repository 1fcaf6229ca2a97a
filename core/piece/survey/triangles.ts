import { formatLength } from '#core/quantity/format-length.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { cornerName, type DistanceReading, type Reading } from './survey.ts';

/**
 * Three corners whose distances close no triangle, one being longer than the other two together by more than three standard
 * deviations: one of the three is misread, whatever else was measured. Told at the longest, as a warning.
 */
export function impossibleTriangles(readings: readonly Reading[], system: System = 'us'): Problem[] {
  const distances = readings.filter((reading): reading is DistanceReading => reading.kind === 'distance');
  const between = new Map<string, DistanceReading>();
  for (const reading of distances) {
    const key = pair(reading.from, reading.to);
    if (!between.has(key)) between.set(key, reading);
  }
  const corners = Math.max(0, ...distances.map(({ from, to }) => Math.max(from, to) + 1));
  const found: Problem[] = [];
  for (let i = 0; i < corners; i++)
    for (let j = i + 1; j < corners; j++)
      for (let k = j + 1; k < corners; k++) {
        const sides = [pair(i, j), pair(j, k), pair(i, k)].map((key) => between.get(key));
        if (sides.some((side) => side === undefined)) continue;
        const [longest, b, c] = (sides as DistanceReading[]).sort((a, b) => b.value_m - a.value_m);
        const over = longest!.value_m - b!.value_m - c!.value_m;
        if (over <= 3 * Math.hypot(longest!.sigma_m, b!.sigma_m, c!.sigma_m)) continue;
        const told = (side: DistanceReading) =>
          `${cornerName(side.from)} to ${cornerName(side.to)} (${formatLength(side.value_m, system)})`;
        found.push({
          path: longest!.path,
          code: 'warning.survey.triangle',
          message: `${told(longest!)} is longer than ${told(b!)} and ${told(c!)} together: one of the three is misread.`,
        });
      }
  return found;
}

function pair(from: number, to: number): string {
  return `${Math.min(from, to)} ${Math.max(from, to)}`;
}
