/**
 * How fast this shop works. Every figure is a shop default a maker edits, never a fact: common practice, no source.
 * The shop's own logged times replace them.
 */
import { PIECE_RULES, type PieceRules } from '#core/piece/piece-rules.ts';

/** With how much wood it leaves beside what it cuts out. */
export interface ShopRates extends PieceRules {
  /** Combining A and B and mixing one cup up to 2 kg, scraped and moved to a clean cup. */
  readonly mix_s: number;
  /** Added per kg beyond 2 kg. */
  readonly mixExtra_s_per_kg: number;
  readonly tint_s: number;
  /** Getting resin out of the cup onto the piece. */
  readonly pour_kg_per_s: number;
  /** Spreading by trowel or hand. */
  readonly spread_m2_per_s: number;
  readonly meld_s_per_m2: number;
  readonly leastMeld_s: number;
  readonly wrap_m_per_s: number;
  /** Longest wait for the best minute to work the edges; 0: always at once. */
  readonly wrapPatience_s: number;
  readonly torch_m2_per_s: number;
  readonly leastTorch_s: number;
  /** Drips are scraped this often after spreading, and take this long per metre of edge. */
  readonly scrapeEvery_s: number;
  readonly scrape_m_per_s: number;
  readonly scaleStep_kg: number;
  /** Left behind in each cup: a share of its mass, at least this much. */
  readonly cupFilmShare: number;
  readonly leastCupFilm_kg: number;
  /** Slack under which a pour that fits is called tight. */
  readonly tightUnder_s: number;
}

export const SHOP_DEFAULTS: ShopRates = {
  ...PIECE_RULES,
  mix_s: 150,
  mixExtra_s_per_kg: 30,
  tint_s: 45,
  pour_kg_per_s: 0.05,
  spread_m2_per_s: 0.01,
  meld_s_per_m2: 240,
  leastMeld_s: 120,
  wrap_m_per_s: 0.03,
  wrapPatience_s: 1800,
  torch_m2_per_s: 0.02,
  leastTorch_s: 45,
  scrapeEvery_s: 1200,
  scrape_m_per_s: 0.08,
  scaleStep_kg: 0.001,
  cupFilmShare: 0.025,
  leastCupFilm_kg: 0.015,
  tightUnder_s: 120,
};
