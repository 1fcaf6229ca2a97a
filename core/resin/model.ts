import type { Figure } from './label.ts';
import type { Observation } from './observations.ts';

/**
 * A resin as the forward model sees it: plain data, SI. Reference temperature of every rate and viscosity is 24 C
 * (REFERENCE_K). Defaults are priors for a room-temperature DGEBA/amine coating mix; where each comes from stands beside
 * it in `cards.ts` and in docs/science/resin.md.
 */
export const REFERENCE_K = 297.15;
export const GAS_CONSTANT_J_molK = 8.314462618;

/** Constants of kinetics, heat, viscosity and glass transition. */
export interface ResinModel {
  /** k1 at 24 C in da/dt = k1 (1 + a/rho)(1 - a)^n. */
  readonly kRef_per_s: number;
  /** rho = k1/k2, the self-acceleration ratio. */
  readonly rho: number;
  /** Reaction order n. */
  readonly order: number;
  readonly activation_J_mol: number;
  /** Heat of full reaction per kg of mix at the prescribed ratio. */
  readonly heat_J_kg: number;
  readonly heatCapacity_J_kgK: number;
  readonly conductivity_W_mK: number;
  /** Density of the mixed liquid. */
  readonly density_kg_m3: number;
  /** Viscosity of the fresh mix at 24 C. */
  readonly viscosityRef_Pa_s: number;
  readonly viscosityActivation_J_mol: number;
  /** Castro-Macosko exponents A + B a. */
  readonly viscosityA: number;
  readonly viscosityB: number;
  readonly gelConversion: number;
  /** DiBenedetto: Tg at conversion 0 and 1, and lambda. */
  readonly tgStart_K: number;
  readonly tgFull_K: number;
  readonly tgLambda: number;
  /** Vitrification: f_d = 1/(1 + exp((Tg - T - offset)/width)). */
  readonly vitrificationOffset_K: number;
  readonly vitrificationWidth_K: number;
  /** Viscosity ratio eta/eta(0, T air) at which a film can no longer be worked. */
  readonly workingRatio: number;
  /** Dry hard when Tg = T + this. */
  readonly dryHardOffset_K: number;
  readonly surfaceTension_N_m: number;
  /** Heat a cup loses against what convection and radiation give; default 1. Not known better than 15 %. */
  readonly cupLossFactor?: number;
}

/** One standard deviation of what is not known about a card; logarithmic where the name says Ln. */
export interface ResinSpread {
  readonly kRefLn: number;
  readonly rhoLn: number;
  readonly order: number;
  readonly activation_J_mol: number;
  readonly heatLn: number;
  readonly viscosityRefLn: number;
  readonly workingRatioLn: number;
  readonly gelConversion: number;
  readonly tgFull_K: number;
  readonly dryHardOffset_K: number;
}

/**
 * What is known of a resin after its label and the shop's observations: a normal distribution over the coordinates of
 * `coordinates.ts`, with all their correlations. Plain data.
 */
export interface ResinPosterior {
  readonly mean: readonly number[];
  /** Lower-triangular L, rows of full length; L L' is the covariance. */
  readonly cholesky: readonly (readonly number[])[];
}

export interface MixRatio {
  /** Parts of A to parts of B by volume. */
  readonly volumeA: number;
  readonly volumeB: number;
  readonly densityA_kg_m3: number;
  readonly densityB_kg_m3: number;
}

/** A figure as printed on a label, kept as typed; what it is measured on decides how it is compared. */
export interface LabelFigure {
  readonly kind:
    | 'working time'
    | 'pot life'
    | 'recoat opens'
    | 'recoat closes'
    | 'dry hard'
    | 'handle'
    | 'full cure'
    | 'viscosity'
    | 'largest film';
  readonly text: string;
}

/** What one label figure or observation tells of a resin, given all the others. */
export interface FigureAccount {
  /** As "working time 52 min". */
  readonly said: string;
  readonly source: 'label' | 'shop';
  /** How far the fit of all others lies above it, in standard deviations of both together. */
  readonly away_sd: number;
  /** Information it adds to the others, bits. */
  readonly bits: number;
  /** Whether it says anything of how the reaction runs. */
  readonly kinetic: boolean;
  /** What it narrows most, in words; null: nothing by more than 2 %. */
  readonly taught: string | null;
  /** Width of that after and before. */
  readonly narrowedTo: number;
}

/** Two figures that do not fit one resin; `against` null: one that does not fit what such resins do. */
export interface Tension {
  readonly said: string;
  readonly against: string | null;
  readonly away_sd: number;
  /** One sentence for people. */
  readonly words: string;
}

/** How the figures of a card stand to its fit. */
export interface CardAccount {
  readonly figures: readonly FigureAccount[];
  readonly tensions: readonly Tension[];
  /** Figures left out because they lie on the plateau: reaction long frozen, any later time fits as well. */
  readonly plateau: readonly string[];
}

/** What a shop keeps of one resin. */
export interface ResinCard {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly model: ResinModel;
  readonly spread: ResinSpread;
  /** From the fit of label and observations; where it is there, draws come from it and not from `spread`. */
  readonly posterior?: ResinPosterior;
  readonly mix: MixRatio;
  readonly label: readonly LabelFigure[];
  /** The label as data; with `observations` what the posterior was fitted to. */
  readonly figures?: readonly Figure[];
  readonly observations?: readonly Observation[];
  readonly account?: CardAccount;
  /** Middle of the prior of the heat of reaction that the fit used. */
  readonly heatPrior_J_kg?: number;
  /** Thickest film the label allows in one pour. */
  readonly largestFilm_m: number;
  /** Total colourant allowed by mass of mix. */
  readonly colourantLimit: number;
}

/**
 * Air temperature against time: piecewise linear between the points, held constant before the first and after the last.
 * Times in seconds on the same clock as the cure (0 = first cup mixed).
 */
export interface AirTemperature {
  readonly time_s: readonly number[];
  readonly temperature_K: readonly number[];
}

/** The board under a film. */
export interface Board {
  readonly thickness_m: number;
  readonly conductivity_W_mK: number;
  readonly density_kg_m3: number;
  readonly heatCapacity_J_kgK: number;
}

/** Where a body starts: conversion and temperature. */
export interface CureState {
  readonly conversion: number;
  readonly temperature_K: number;
}

/**
 * A body's cure as computed: depth-mean state at the accepted steps of the integrator, with slopes so that states between
 * are read by cubic Hermite interpolation (`readState`). `theta_per_Pa` is the flow budget spent since the start.
 */
export interface CureHistory {
  readonly time_s: Float64Array;
  readonly conversion: Float64Array;
  readonly temperature_K: Float64Array;
  readonly conversionRate_per_s: Float64Array;
  readonly temperatureRate_K_s: Float64Array;
  /** Hottest point of the body (film: hottest node; cup: mean + the centre allowance). */
  readonly hottest_K: Float64Array;
  readonly viscosity_Pa_s: Float64Array;
  readonly tg_K: Float64Array;
  readonly theta_per_Pa: Float64Array;
}

/** A time with its 5, 50 and 95 % quantiles; Infinity is never stored: `never` says the body does not get there in the span. */
export interface TimeRange {
  readonly low_s: number;
  readonly mid_s: number;
  readonly high_s: number;
}
