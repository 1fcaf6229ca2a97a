/** The example job files, read once: the README, the demo shop, the command line's tests and the benchmarks use the same ones. */
import { JobDocument } from '#core/job/document.ts';
import counter from './counter-and-shelf.json' with { type: 'json' };
import ell from './ell-counter.json' with { type: 'json' };
import hall from './hall-table.json' with { type: 'json' };
import round from './round-table.json' with { type: 'json' };
import vanity from './vanity-vessel-sink.json' with { type: 'json' };

export const vanityVesselSink = JobDocument.parse(vanity);
export const ellCounter = JobDocument.parse(ell);
export const roundTable = JobDocument.parse(round);
/** Two pieces: one colour coat over both, a flood coat for each. */
export const counterAndShelf = JobDocument.parse(counter);
/** An enquiry: most of it is still open. */
export const hallTable = JobDocument.parse(hall);
