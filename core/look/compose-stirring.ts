/** What is done to the puddles of a composed look: natural edges, pulls with a tool, a comb, turns. */
import type { RandomStream } from '#core/numeric/random.ts';
import type { LookBrief } from './brief.ts';
import { anyPlace, type Ground } from './compose-places.ts';
import type { LookMoveDocument } from './look-document.ts';

type Move = LookMoveDocument;

/** Heading of the pattern, radians from x: along the front, across it, rising or falling to the right. */
export const HEADINGS: Readonly<Record<Exclude<LookBrief['direction'], 'none'>, number>> = {
  along: 0,
  across: Math.PI / 2,
  rising: Math.PI / 5,
  falling: -Math.PI / 5,
};

/** By how much edges wander, and how many pulls there are for each puddle: shop defaults, no source. */
const MELD = {
  crisp: { wander: 0.05, pulls: 0, depth: 0.5 },
  soft: { wander: 0.1, pulls: 0.35, depth: 0.6 },
  melded: { wander: 0.16, pulls: 0.8, depth: 0.85 },
} as const;

/** The moves after the puddles, most of them pulls along the brief's direction, or every way when it has none. */
export function stirring(brief: LookBrief, puddles: number, ground: Ground, stream: RandomStream): Move[] {
  const { wander, pulls, depth } = MELD[brief.meld];
  const block = brief.blockSize_m;
  const moves: Move[] = [];
  const step = (what: string) => ({ id: `${what}-${moves.length + 1}`, kept: true, name: '' });
  const waver = (share: number, wavelength: number) =>
    moves.push({
      kind: 'waver',
      ...step('waver'),
      amplitude_m: clamp(block * share, 0.0005, 0.5),
      wavelength_m: clamp(block * wavelength, 0.005, 5),
      seed: stream.below(2 ** 31),
    });
  waver(wander * (0.7 + brief.restless), 1.6);
  for (
    let at = 0, count = Math.round(pulls * puddles * (0.5 + brief.restless));
    at < Math.min(24, count);
    at++
  ) {
    const from = anyPlace(ground, stream);
    if (from === undefined) break;
    const spread = brief.direction === 'none' ? Math.PI : 0.15 + 0.7 * brief.restless;
    const heading =
      (brief.direction === 'none' ? 0 : HEADINGS[brief.direction]) + spread * (2 * stream.uniform() - 1);
    const way = stream.uniform() < 0.5 ? -1 : 1;
    const long = block * (0.8 + 1.2 * stream.uniform());
    const to: [number, number] = [
      from[0] + way * long * Math.cos(heading),
      from[1] + way * long * Math.sin(heading),
    ];
    if (ground.taken(to)) continue;
    moves.push({
      kind: 'stroke',
      ...step('pull'),
      path: [[from[0], from[1]], to],
      width_m: clamp(block * (0.2 + 0.25 * stream.uniform()), 0.004, 0.3),
      depth: depth * (0.75 + 0.25 * stream.uniform()),
    });
  }
  for (let at = 0, turns = Math.round(brief.restless ** 2 * 6); at < turns; at++) {
    const centre = anyPlace(ground, stream);
    if (centre === undefined) break;
    moves.push({
      kind: 'swirl',
      ...step('turn'),
      centre: [centre[0], centre[1]],
      turn_rad: (1 + 2 * brief.restless) * (stream.uniform() < 0.5 ? -1 : 1),
      reach_m: clamp(block * (0.4 + 0.4 * stream.uniform()), 0.005, 2),
    });
  }
  // A last fine waver: no tool leaves a perfectly smooth line.
  waver(wander * 0.35, 0.45);
  return moves;
}

const clamp = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value));
