/**
 * Every property test draws the same examples on every run, so that a failure is a change in the code and not in the dice. FC_SEED=<whole
 * number> draws others.
 */
import fc from 'fast-check';

const seed = Number(process.env.FC_SEED ?? 20_261_125);
if (!Number.isInteger(seed))
  throw new RangeError(`FC_SEED is ${process.env.FC_SEED}; allowed: a whole number`);
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed });
