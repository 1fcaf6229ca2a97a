/** For tests and measurements: worked looks by seed. */
import { randomStream } from '#core/numeric/random.ts';
import type { Move, Place } from '../move.ts';
import type { Pattern } from '../picture.ts';

/** Three moves in five are puddles of four colours, the rest strokes, combs, swirls, wavers and a tilt, on a board of this size. */
export function anyPattern(seed: number, count: number, width_m: number, depth_m: number): Pattern {
  const stream = randomStream(seed);
  const size_m = Math.min(width_m, depth_m);
  const place = (): Place => [stream.uniform() * width_m, stream.uniform() * depth_m];
  const between = (least: number, most: number) => least + stream.uniform() * (most - least);
  const other = (at: number): Move => {
    switch (at % 8) {
      case 0:
      case 2:
      case 4:
      case 6: {
        const from = place();
        const [long, turn] = [between(0.1, 0.5) * size_m, between(0, 2 * Math.PI)];
        const to: Place = [from[0] + long * Math.cos(turn), from[1] + long * Math.sin(turn)];
        return { kind: 'stroke', from, to, width_m: between(0.02, 0.05), depth: between(0.3, 1) };
      }
      case 1:
      case 5:
        return {
          kind: 'drag',
          through: place(),
          heading_rad: between(0, Math.PI),
          pull_m: between(-0.06, 0.06),
          width_m: between(0.002, 0.02),
          film_m: 0.0015,
          teeth: 1 + stream.below(4),
          pitch_m: between(0.03, 0.08),
        };
      case 3:
        return {
          kind: 'waver',
          amplitude_m: between(0.002, 0.01),
          wavelength_m: between(0.05, 0.2),
          seed: stream.below(1e6),
        };
      default:
        return at % 16 === 7
          ? {
              kind: 'tilt',
              centre: [width_m / 2, depth_m / 2],
              heading_rad: between(0, 3),
              draw: between(0.9, 1.15),
            }
          : { kind: 'swirl', centre: place(), turn_rad: between(-2, 2), reach_m: between(0.02, 0.08) };
    }
  };
  const moves = Array.from({ length: count }, (_, at): Move => {
    if (at % 5 > 2) return other(Math.floor(at / 5) * 2 + (at % 5) - 3);
    return {
      kind: 'puddle',
      colour: 1 + stream.below(4),
      centre: place(),
      radius_m: between(0.03, 0.16) * size_m,
    };
  });
  return { ground: 0, moves };
}
