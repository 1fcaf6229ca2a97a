/** From a look document to a look ready to paint, or what is wrong with it, where, and what is allowed. */
import { formatVolume } from '#core/quantity/format.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import type { Fog, Look, LookColour, Panel } from './look.ts';
import type { LookDocument } from './look-document.ts';
import { lookMaps } from './look-maps.ts';
import type { Place } from './move.ts';
import type { LaidEdge } from './panels.ts';
import { linearOfHex } from './srgb.ts';

/** What the coat and the pieces say: how the colours look, the film, and what there is to pour on. */
export interface LookSetting {
  readonly colours: readonly LookColour[];
  /** Above 0. */
  readonly film_m: number;
  /** One or more. */
  readonly panels: readonly Panel[];
  readonly edges: readonly LaidEdge[];
  /** Units in which amounts are told. */
  readonly system?: System;
}

/** The poured film in the plane, m2: every panel by its film. */
export function planeArea_m2(panels: readonly Pick<Panel, 'area_m2' | 'film'>[]): number {
  return panels.reduce((sum, panel) => sum + panel.area_m2 * panel.film, 0);
}

/** The box round the tops: its middle, through which run the lines of symmetry, and its half sizes, m. */
export function boxOf(panels: readonly Panel[]): { readonly middle: Place; readonly half_m: Place } {
  const corners = panels.filter((panel) => panel.kind === 'top' || panel.kind === 'piece').flatMap(cornersOf);
  if (corners.length === 0) throw new RangeError('a look needs a top to lie on');
  const xs = corners.map((c) => c[0]);
  const ys = corners.map((c) => c[1]);
  const [left, right, front, back] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return {
    middle: [(left + right) / 2, (front + back) / 2],
    half_m: [(right - left) / 2, (back - front) / 2],
  };
}

function cornersOf(panel: Panel): Place[] {
  const us = [panel.left_m, panel.left_m + panel.width_m];
  const vs = [panel.front_m, panel.front_m + panel.depth_m];
  return us.flatMap((u) => vs.map((v) => panel.toPlane(u, v)));
}

/** Place in the list of the colour poured all over first; -1 when its key is not there. */
export function groundOf(
  document: Pick<LookDocument, 'ground'>,
  colours: readonly { readonly key: string }[],
): number {
  return document.ground === ''
    ? Math.min(0, colours.length - 1)
    : colours.findIndex((c) => c.key === document.ground);
}

/**
 * The look ready to paint. Paths of problems are relative to the look (`moves.3.colour`). Problems: a colour the coat does not
 * have, two moves with one id, more poured than the coat holds, a fog on an edge that is not there. Warnings: a puddle
 * poured beside the work. Never throws on a document of the right shape and a setting in its range.
 */
export function readLook(document: LookDocument, setting: LookSetting): Result<Look> {
  const { colours, film_m, panels, edges, system = 'us' } = setting;
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const keys = new Map(colours.map((colour, at) => [colour.key, at]));
  const names =
    colours.map((colour) => colour.name || colour.key).join(', ') || 'no colour: the coat has none yet';
  const unknown = (path: string, key: string) =>
    problems.push({
      path,
      code: 'look.colour',
      message: 'The coat has no such colour.',
      read: key === '' ? 'nothing' : key,
      allowed: names,
    });
  const ground = groundOf(document, colours);
  if (ground < 0) unknown('ground', document.ground);
  const ids = new Set<string>();
  const edgeNames = new Set(edges.map((edge) => edge.name));
  const area_m2 = planeArea_m2(panels);
  const whole_m3 = area_m2 * film_m;
  let poured_m3 = 0;
  document.moves.forEach((move, at) => {
    const path = `moves.${at}`;
    if (ids.has(move.id))
      problems.push({
        path: `${path}.id`,
        code: 'look.same-id',
        message: 'Two moves have the same id.',
        read: move.id,
        allowed: 'an id of its own for each move',
      });
    ids.add(move.id);
    if (move.kind === 'puddle') {
      if (!keys.has(move.colour)) unknown(`${path}.colour`, move.colour);
      if (move.kept) poured_m3 += move.volume_m3;
      if (move.kept && !move.path.some((p) => nearWork(p, panels)))
        warnings.push({
          path: `${path}.path`,
          code: 'warning.look-beside',
          message: 'This puddle is poured beside the work.',
          read: move.path[0]!.map((m) => m.toFixed(3)).join(', '),
          allowed: 'a place on the top',
        });
    }
    if (move.kind === 'fogged edge')
      move.edges.forEach((name, i) => {
        if (!edgeNames.has(name))
          problems.push({
            path: `${path}.edges.${i}`,
            code: 'look.edge',
            message: 'The piece has no such edge.',
            read: name,
            allowed: [...edgeNames].join(', ') || 'none',
          });
      });
  });
  if (poured_m3 > whole_m3 * (1 + 1e-9))
    problems.push({
      path: 'moves',
      code: 'look.too-much',
      message: 'The puddles hold more than the film on the work.',
      read: formatVolume(poured_m3, system),
      allowed: `up to ${formatVolume(whole_m3, system)}`,
    });
  if (problems.length > 0) return bad(...problems);
  const { middle, half_m } = boxOf(panels);
  const moves = lookMaps(document.moves, {
    film_m,
    area_m2,
    middle,
    half_m,
    symmetry: document.symmetry,
    colourOf: (key) => keys.get(key)!,
  });
  return good(
    {
      seed: document.seed,
      film_m,
      area_m2,
      middle,
      colours,
      ground,
      moves,
      fogs: readFogs(document, edges),
      undercoat: linearOfHex(document.undercoat),
      panels,
    },
    warnings,
  );
}

function readFogs(document: LookDocument, edges: readonly LaidEdge[]): Fog[] {
  return document.moves.flatMap((move): Fog[] => {
    if (move.kind !== 'fogged edge' || !move.kept) return [];
    const meant = edges.filter((edge) =>
      move.edges.length === 0 ? edge.finished : move.edges.includes(edge.name),
    );
    return [
      {
        id: move.id,
        light: linearOfHex(move.colour),
        reach_m: move.reach_m,
        strength: move.strength,
        lines: meant.map((edge) => edge.line),
      },
    ];
  });
}

/** Whether a place lies in the box of any panel, a hand's breadth around it counted in. */
function nearWork([x, y]: Place, panels: readonly Panel[]): boolean {
  const slack = 0.1;
  return panels.some((panel) => {
    const corners = cornersOf(panel);
    const xs = corners.map((c) => c[0]);
    const ys = corners.map((c) => c[1]);
    return (
      x >= Math.min(...xs) - slack &&
      x <= Math.max(...xs) + slack &&
      y >= Math.min(...ys) - slack &&
      y <= Math.max(...ys) + slack
    );
  });
}
