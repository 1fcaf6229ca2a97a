import type { Body, Seen, Watch } from './follow.ts';
import { tgOf } from './kinetics.ts';
import type { ResinModel } from './model.ts';
import { fluidityOf, freshViscosity } from './viscosity.ts';

/**
 * One thing known about a resin, as the fit sees it: what to follow, and how far a model is from it in standard deviations. Terms
 * on the same body share one run.
 */
export interface Term {
  /** In words, as "working time 52 min". */
  readonly said: string;
  /** null: told by the model alone (viscosity). */
  readonly body: Body | null;
  readonly watches: (model: ResinModel) => readonly Watch[];
  readonly samples_s: readonly number[];
  readonly peak: boolean;
  readonly limit_s: number;
  /** How many residuals it has. */
  readonly count: number;
  /** The time said and the deviation of its logarithm, where the term is one time. */
  readonly told?: { readonly time_s: number; readonly sdLn: number };
  /** Residuals in standard deviations, (model - said)/sd; `seen` holds only this term's own watches and samples. */
  readonly residuals: (model: ResinModel, seen: Seen) => readonly number[];
}

const clip = (a: number): number => Math.min(1, Math.max(0, a));

/** The viscosity is `ratio` times that of the fresh mix at `fresh_K`. */
export function thickened(model: ResinModel, ratio: number, fresh_K: number): Watch {
  const fluidity = fluidityOf(model);
  const fresh = freshViscosity(model, fresh_K);
  return { quantity: (a, T) => -fresh * fluidity(clip(a), T), level: -1 / ratio, slowest: 0.02 };
}

export function convertedTo(conversion: number): Watch {
  return { quantity: (a) => a, level: conversion, slowest: 0.02 };
}

/** The glass transition is `offset_K` above the body. */
export function hardened(model: ResinModel, offset_K: number): Watch {
  return { quantity: (a, T) => tgOf(model, clip(a)) - T, level: offset_K, slowest: 1 };
}

export function warmedTo(temperature_K: number): Watch {
  return { quantity: (_a, T) => T, level: temperature_K, slowest: 5 };
}
