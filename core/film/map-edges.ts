/** How each border of a top treats the film: dammed, wetted over, or dry and holding by itself. */
import { cutOutPath } from '#core/piece/outline.ts';
import type { Piece } from '#core/piece/piece.ts';
import { arrisRadius_m } from '#core/piece/profile.ts';
import { notNegative, positive, within } from '#core/quantity/domain.ts';
import { arrisShare } from './arris.ts';
import { DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { EDGE_LOSS_CONSTANT, edgeLossConstant } from './edge-profile.ts';
import { DRY_ARRIS_ANGLE_deg, pinnedOnRoundArris } from './self-damming.ts';

export type EdgeFlow =
  /** No flow: tape, a dam, a wall, a joint. */
  | { readonly kind: 'dam' }
  /** Wiped over: the film runs off above the film that stays on the arris (0 when left out), m; dry until it is worked, if that is told. */
  | { readonly kind: 'wetted'; readonly heldFilm_m?: number; readonly dryUntil?: DryUntil }
  /** Dry arris: holds until the film beside it is thicker than this, m; there it then lets go for good, like a wiped one. */
  | { readonly kind: 'dry'; readonly holds_m: number; readonly heldFilm_m?: number };

/** An edge that is worked later: until then it holds, and lets go, as a dry one. */
export interface DryUntil {
  /** Flow budget from the start of the map until the edge is worked, 1/Pa, from 0. */
  readonly theta_per_Pa: number;
  readonly holds_m: number;
}

/**
 * Film on the arris, as a share of the film poured, at which an edge loses a share of the free-edge loss: inverse of edgeLossConstant.
 * Lets a map with no surface tension lose what the arris table says. Worked: share 0.68 -> 0.69.
 * @param share 0 to 1
 * @throws RangeError outside this.
 */
export function heldShareFor(share: number): number {
  const wanted = within('share', share, 0, 1, '') * EDGE_LOSS_CONSTANT;
  let low = 0;
  let high = 1;
  while (high - low > 1e-13) {
    const middle = (low + high) / 2;
    if (edgeLossConstant(middle) > wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export interface EdgeFlowRequest {
  readonly piece: Piece;
  /** Finished edges and wrapped rims are wiped over; otherwise they stay dry and hold by themselves. */
  readonly wrapped: boolean;
  /** Flow budget from the start of the map until they are wiped over, 1/Pa, from 0; 0 when left out. */
  readonly thetaDry_per_Pa?: number;
  /** Film poured, m, above 0. */
  readonly film_m: number;
  /** Flow budget from wiping over (of dry edges: from the start) to gel, 1/Pa, from 0. */
  readonly theta_per_Pa: number;
  /** Advancing contact angle of the resin on the body, degrees, 0 to 90; 20 when left out (common practice, no source). */
  readonly contactAngle_deg?: number;
  readonly liquid?: Liquid;
}

/**
 * The borders of a piece for {@link filmMap}: walls, joints and dammed rims hold, finished edges and wrapped rims are wetted with the
 * film that makes them lose what the arris table says, at once or once they are worked, or are dry and hold what their radius pins.
 * @throws RangeError outside the ranges of {@link EdgeFlowRequest}.
 */
export function edgeFlowsOf(request: EdgeFlowRequest): Record<string, EdgeFlow> {
  const { piece, wrapped, theta_per_Pa } = request;
  const film_m = positive('film_m', request.film_m, 'm');
  const liquid = request.liquid ?? DEFAULT_LIQUID;
  const angle = within('contactAngle_deg', request.contactAngle_deg ?? DRY_ARRIS_ANGLE_deg, 0, 90, 'degrees');
  const thetaDry_per_Pa = notNegative('thetaDry_per_Pa', request.thetaDry_per_Pa ?? 0, '1/Pa');
  const open = (radius_m: number): EdgeFlow => {
    const heldFilm_m = film_m * heldShareFor(arrisShare(film_m, radius_m, liquid, theta_per_Pa));
    const holds_m = pinnedOnRoundArris(angle, radius_m, liquid).thickness_m;
    if (!wrapped) return { kind: 'dry', holds_m, heldFilm_m };
    if (thetaDry_per_Pa === 0) return { kind: 'wetted', heldFilm_m };
    return { kind: 'wetted', heldFilm_m, dryUntil: { theta_per_Pa: thetaDry_per_Pa, holds_m } };
  };
  const flows: Record<string, EdgeFlow> = {};
  for (const [name, edge] of Object.entries(piece.edges))
    flows[name] = edge.kind === 'finished' ? open(arrisRadius_m(edge)) : { kind: 'dam' };
  for (const hole of piece.cutOuts) {
    const name = cutOutPath(hole)[0]!.edge;
    const faceHeight_m = hole.faceHeight_m ?? piece.bodyThickness_m;
    const profile = hole.profile ?? { kind: 'square eased', radius_m: Math.min(0.003, faceHeight_m) };
    flows[name] = hole.rim === 'wrapped' ? open(arrisRadius_m({ faceHeight_m, profile })) : { kind: 'dam' };
  }
  return flows;
}
