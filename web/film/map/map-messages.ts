/** What the page and the map's worker say to each other. */
import type { FilmMapRequest } from '#core/film/film-map.ts';
import type { FilmMapResult } from '#core/film/map-result.ts';

export type MapAsk =
  | { readonly kind: 'draw'; readonly number: number; readonly request: FilmMapRequest }
  | { readonly kind: 'cancel' };

export type MapReply =
  | { readonly kind: 'progress'; readonly number: number; readonly share: number }
  | { readonly kind: 'done'; readonly number: number; readonly result: FilmMapResult }
  | { readonly kind: 'cancelled'; readonly number: number }
  | { readonly kind: 'failed'; readonly number: number; readonly message: string };
