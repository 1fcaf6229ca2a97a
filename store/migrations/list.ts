import { jobs } from './0001-jobs.ts';
import { shop } from './0002-shop.ts';
import { resins } from './0003-resins.ts';
import { offcuts } from './0004-offcuts.ts';
import { runs } from './0005-runs.ts';
import { shopSpreads } from './0006-shop-spreads.ts';
import type { Migration } from './migration.ts';

/** In the order they run; numbers 1, 2, 3 ... New ones are added at the end. */
export const MIGRATIONS: readonly Migration[] = [jobs, shop, resins, offcuts, runs, shopSpreads];
